"""Tucks and pleats on the paper: which way each is laid, and how far it is stitched down."""

from notchbook.finish.cut_piece import FoldLines
from notchbook.finish.dart_cap import is_open
from notchbook.geometry import Path
from notchbook.pattern import Piece

_ARROW_AT = 25.0
"""mm from the mouth at which the arrow stands, at most half way along the shorter line: in the free part of
the fold, clear of the seam. Own judgment."""


def fold_lines(piece: Piece) -> tuple[FoldLines, ...]:
    """The arrow from the fold line to the placement line of each open fold, and its lines of stitches."""
    found = []
    for intake in piece.intakes:
        if not intake.is_folded or not is_open(piece, intake):
            continue
        first, second = piece.line(intake.first_line).path, piece.line(intake.second_line).path
        to_first = intake.fold_toward == "first_leg"
        fold, placement = (first, second) if to_first else (second, first)
        along = min(_ARROW_AT, fold.length / 2.0, placement.length / 2.0)
        stitches = tuple(
            line.between(0.0, min(intake.stitched, line.length))
            for line in (first, second)
            if intake.stitched
        )
        arrow = Path.line(fold.point_at(along), placement.point_at(along))
        lies_on = intake.second_line if to_first else intake.first_line
        found.append(FoldLines(intake.name, arrow, stitches, lies_on))
    return tuple(found)
