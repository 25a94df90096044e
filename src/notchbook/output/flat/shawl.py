"""A shawl collar in the flat: what lies beyond its roll line is turned over, as far as the shoulder."""

from collections.abc import Iterator
from typing import Final

from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.collar_back import back_of_collar
from notchbook.output.flat.joined import center_x
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Edge, Piece
from notchbook.pattern.names import last_word

_FAR: Final = 5000.0

_ON_SHOULDER = 18.0
"""mm beside the neck where the outer edge of the collar crosses the shoulder. Own judgment: a picture."""

_RISES = Point(10.0, 28.0)
"""mm inward and up from the side-neck point to where the collar rolls over there. Own judgment: a picture."""


def has_shawl(piece: Piece) -> bool:
    """Whether the piece is a front with a collar cut on that turns over with its lapel."""
    is_cut_on = all(edge_of(piece, word) for word in ("lapel", "center_back", "neck_edge", "shoulder"))
    return is_cut_on and shawl_roll(piece) is not None


def shawl_roll(piece: Piece) -> Path | None:
    """Where it turns over, from the break point to the center back."""
    return next((line.path for line in piece.lines if line.kind == "roll_line"), None)


def edge_of(piece: Piece, word: str) -> Edge | None:
    """The edge of the piece with this last word."""
    return next((edge for edge in piece.outline if last_word(edge.name) == word), None)


def shawl_turned(piece: Piece, shape: FlatShape) -> Iterator[FlatShape]:
    """The back of the collar inside the neck, the front without its shawl, and the shawl turned over it."""
    roll, shoulder = shawl_roll(piece), edge_of(piece, "shoulder")
    if roll is None or shoulder is None:
        return
    neck, tip = sorted((shoulder.path.start, shoulder.path.end), key=lambda place: -place.y)
    begin = roll.start if roll.start.y < roll.end.y else roll.end
    beside = roll.point_at(roll.nearest(neck).distance_along)
    inward = 1.0 if tip.x < neck.x else -1.0
    high, low = neck + Point(inward * _RISES.x, _RISES.y), neck + (tip - neck).unit() * _ON_SHOULDER
    outline = Polygon([(place.x, place.y) for place in shape.fill.flattened(1.0)]).buffer(0.0)
    center = center_x(piece)
    back = back_of_collar(neck - Point(center, 0.0), high - Point(center, 0.0))
    yield back.transformed(Transform.translation(center, 0.0))
    body = outline.intersection(_half(begin, beside, tip)).intersection(_half(tip, neck, begin))
    inner = tuple(path for path in shape.fine if path.start.distance_to(roll.start) > 1.0)
    yield from _drawn(body, inner, shape.buttons)
    over = Transform.reflection(begin, beside)
    lapel = outline.intersection(_half(begin, beside, begin + (begin - tip)))
    turned = Polygon([_pair(over.apply(Point(x, y))) for x, y in _largest(lapel).exterior.coords])
    behind = Polygon([_pair(place) for place in (beside, low, high)])
    yield from _drawn(turned.buffer(0.0).intersection(_half(low, high, begin)).union(behind))


def _half(start: Point, end: Point, side: Point) -> Polygon:
    """All on one side of a line: that where the place lies."""
    along = (end - start).unit() * _FAR
    square = along.perpendicular()
    if square.dot(side - start) < 0.0:
        square = square * -1.0
    ends = start - along, start + along
    return Polygon([_pair(place) for place in (*ends, ends[1] + square, ends[0] + square)])


def _pair(place: Point) -> tuple[float, float]:
    return place.x, place.y


def _largest(shape: BaseGeometry) -> Polygon:
    """The largest part; an empty one where nothing is left."""
    parts = [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon)]
    return max(parts, key=lambda part: float(part.area), default=Polygon())


def _drawn(
    shape: BaseGeometry, fine: tuple[Path, ...] = (), buttons: tuple[Point, ...] = ()
) -> Iterator[FlatShape]:
    corners = [Point(x, y) for x, y in _largest(shape).exterior.coords[:-1]]
    if corners:
        fill = Path.polyline(corners, closed=True)
        yield FlatShape(fill, (fill,), fine, buttons)
