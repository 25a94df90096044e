"""Drill holes: before dart points, beside the mouths of inner darts, and where the pattern marks one."""

from notchbook.finish.cloth import Cloth
from notchbook.finish.cut_piece import DartLines, DrillHole
from notchbook.finish.dart_cap import is_open, middle_direction
from notchbook.finish.house_table import HouseTable
from notchbook.finish.inner_darts import inner_dart_lines, inner_holes
from notchbook.geometry import Path
from notchbook.pattern import Piece


def drill_holes(piece: Piece, house: HouseTable, cloth: Cloth) -> tuple[DrillHole, ...]:
    """One hole for each open dart, on its fold before the point (so that the stitches cover it), and one
    for each mark that is drilled. In a dart shorter than twice the distance it sits halfway. A dart inside
    the piece has no notches: it gets one hole before each of its points and one beside each mouth."""
    diameter = house.mark("drill_diameter")
    before = house.mark("drill_before_point")
    if cloth.drill_before_point is not None:
        before = cloth.drill_before_point
    holes = []
    for intake in piece.darts:
        if is_open(piece, intake):
            leg = piece.edge(intake.first_leg)
            back = min(before, leg.length / 2.0)
            position = leg.path.end + middle_direction(piece, intake) * back
            holes.append(DrillHole(intake.name, position, diameter))
    inner = [hole for dart in piece.inner_darts for hole in inner_holes(piece, dart, house, before)]
    marked = [DrillHole(mark.name, mark.position, diameter) for mark in piece.marks if mark.kind == "drill"]
    return (*holes, *inner, *marked)


def dart_lines(piece: Piece) -> tuple[DartLines, ...]:
    """The stitching lines and the fold of each open dart, those inside the piece last."""
    found = []
    for intake in piece.darts:
        if is_open(piece, intake):
            first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
            mouth = first.start.lerp(second.end, 0.5)
            found.append(DartLines(intake.name, first, second, Path.line(mouth, first.end)))
    return (*found, *inner_dart_lines(piece))
