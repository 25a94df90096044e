"""A hood in the flat, worn up: its outline over the head, and in front the opening for the face."""

from collections.abc import Iterator, Sequence
from typing import Final

from notchbook.geometry import Path, Point, fair_curve
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Piece
from notchbook.pattern.names import last_word, split_side

_OUTER: Final = ((0.50, 0.30), (0.52, 0.55), (0.38, 0.84))
_TOP: Final = 0.97
_FACE: Final = ((0.33, 0.36), (0.28, 0.66))
_FACE_TOP: Final = 0.82
"""Where the outline and the edge round the face run: shares of the depth of the hood beside the center, and
of its height over the side of the neck. Own judgment: a picture."""


def is_hood(piece: Piece) -> bool:
    """Whether the piece is a hood or its side."""
    return split_side(last_word(piece.name))[0] == "hood"


def hood_half(piece: Piece, run: Sequence[Point], middle: float, *, is_front: bool) -> Iterator[FlatShape]:
    """Half of the hood over the ``run`` of the neck in this view; ``middle`` mm wide is the panel over the
    head, 0 where a seam runs there."""
    ends = sorted((run[0], run[-1]), key=lambda place: abs(place.x))
    center, side = Point(0.0, ends[0].y), ends[1]
    face = next((edge for edge in piece.outline if last_word(edge.name) == "face"), None)
    if face is None:
        return
    size = Point(piece.bounds.width * (1.0 if side.x > 0.0 else -1.0), face.length)

    def at(share: tuple[float, float]) -> Point:
        return Point(share[0] * size.x, side.y + share[1] * size.y)

    level = 180.0 if side.x > 0.0 else 0.0
    outer = fair_curve([side, *map(at, _OUTER), at((0.0, _TOP))], None, level).path.flattened(0.5)
    places = run if abs(run[0].x) <= abs(run[-1].x) else run[::-1]
    if is_front:
        opening = fair_curve([center, *map(at, _FACE), at((0.0, _FACE_TOP))], None, level).path.flattened(0.5)
        fill = Path.polyline([*outer, *reversed(opening), *places], closed=True)
        yield FlatShape(fill, (Path.polyline(outer), Path.polyline(opening), Path.polyline(places)))
        return
    fill = Path.polyline([center, *places, *outer], closed=True)
    beside = middle / 2.0 * (1.0 if side.x > 0.0 else -1.0)
    seam = Path.line(Point(beside, center.y), Point(beside, outer[-1].y - (8.0 if middle else 0.0)))
    yield FlatShape(fill, (Path.polyline(outer), Path.polyline(places), seam))
