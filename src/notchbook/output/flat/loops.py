"""Belt loops in the flat: upright over the band, where the waist is notched for them."""

from collections.abc import Iterator, Mapping
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.output.flat.joined import Placing, center_x, pieces_of
from notchbook.output.flat.laid import laying
from notchbook.output.flat.outer import ViewWord, strip_pieces, words_of
from notchbook.output.flat.shapes import FlatShape
from notchbook.output.flat.strips import strip_depth
from notchbook.pattern import Pattern, locate, run_of

_PURPOSE: Final = "belt loop"

_WIDTH: Final = 10.0
"""mm that a loop is drawn wide; it is made about so wide, and a flat is small."""

_BEYOND: Final = 3.0
"""mm that a loop reaches over the upper edge of its band. Own judgment: a picture."""


def loop_shapes(pattern: Pattern, motions: Mapping[str, Placing], view: ViewWord) -> Iterator[FlatShape]:
    """One rectangle for each notched loop of this view, from the waist to the upper edge of the band."""
    for notch in pattern.notches.values():
        if notch.purpose != _PURPOSE:
            continue
        found = locate(pattern, notch.place)
        piece = pattern.pieces[found.piece]
        if found.piece not in motions or view not in words_of(piece):
            continue
        foot = motions[found.piece](laying(piece, center_x(piece))(found.position))
        yield _loop(foot, _band_depth(pattern, found.edge.name) + _BEYOND)


def _loop(foot: Point, height: float) -> FlatShape:
    across, up = Point(_WIDTH / 2.0, 0.0), Point(0.0, height)
    corners = (foot - across, foot + across, foot + across + up, foot - across + up)
    outline = Path.polyline(corners, closed=True)
    return FlatShape(outline, (), (outline,))


def _band_depth(pattern: Pattern, edge: str) -> float:
    """How wide the band on this edge of the waist is, mm; 0 where it has none."""
    strips = {piece.name for piece in strip_pieces(pattern)}
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            if edge in {step.edge.name for step in run_of(pattern, own)}:
                depth = strip_depth(
                    pattern, other, [one for one in pieces_of(pattern, other) if one in strips]
                )
                if depth > 0.0:
                    return depth
    return 0.0
