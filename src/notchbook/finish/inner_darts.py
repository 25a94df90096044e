"""Double-ended darts on the paper: their stitching lines, their drill holes, what else is drawn."""

from collections.abc import Iterator

from notchbook.finish.cut_piece import DartLines, DrillHole
from notchbook.finish.house_table import HouseTable
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    InnerDart,
    InternalLine,
    Mark,
    Piece,
    child_name,
    is_open_inside,
    mouth_of,
    split_side,
)


def inner_dart_lines(piece: Piece) -> Iterator[DartLines]:
    """The stitching lines and the fold, from point to point, of each open dart inside the piece."""
    for dart in piece.inner_darts:
        if is_open_inside(piece, dart):
            center, side = piece.line(dart.center_leg).path, piece.line(dart.side_leg).path
            yield DartLines(dart.name, center, side.reversed(), Path.line(center.start, center.end))


def inner_holes(piece: Piece, dart: InnerDart, house: HouseTable, before: float) -> Iterator[DrillHole]:
    """One hole before each point, ``before`` mm from it on the fold, and one inside each mouth; none in a
    dart that takes up nothing. In a short or narrow dart they sit halfway to its middle."""
    if not is_open_inside(piece, dart):
        return
    center, side = piece.line(dart.center_leg).path, piece.line(dart.side_leg).path
    mouths = {"center_mouth": mouth_of(center)[1], "side_mouth": mouth_of(side)[1]}
    middle = mouths["center_mouth"].lerp(mouths["side_mouth"], 0.5)
    diameter = house.mark("drill_diameter")
    for word, point in (("upper_point", center.start), ("lower_point", center.end)):
        yield DrillHole(child_name(dart.name, word), _toward(point, middle, before), diameter)
    for word, mouth in mouths.items():
        place = _toward(mouth, middle, house.mark("drill_inside_mouth"))
        yield DrillHole(child_name(dart.name, word), place, diameter)


def drawn_lines(piece: Piece) -> tuple[InternalLine, ...]:
    """The internal lines apart from the legs of darts, which are drawn as stitching lines."""
    return tuple(line for line in piece.lines if line.kind != "dart_leg")


def drawn_marks(piece: Piece, *, drilled: bool = True) -> tuple[Mark, ...]:
    """The marks that are drawn: points with a cross and their name, and buttons. The corners of a dart inside
    the piece are not: its legs show them. Where nothing is ``drilled``, what would be gets a cross too."""
    owners = tuple(f"{split_side(dart.name)[0]}/" for dart in piece.inner_darts)
    kinds = ("point", "button") if drilled else ("point", "button", "drill")
    return tuple(mark for mark in piece.marks if mark.kind in kinds and not mark.name.startswith(owners))


def _toward(place: Point, middle: Point, distance: float) -> Point:
    """A place moved toward the middle of the dart, at most halfway."""
    away = place.distance_to(middle)
    return place.lerp(middle, min(distance / away, 0.5)) if away > 0.0 else place
