"""A lapel in the flat: what lies beyond the roll line is turned over, its collar laid to it at the gorge."""

from collections.abc import Iterator

from shapely.geometry import Polygon

from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.collar_back import back_of_collar
from notchbook.output.flat.joined import center_x
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Edge, Pattern, Piece
from notchbook.pattern.names import last_word

_FAR = 5000.0

_ON_SHOULDER = 18.0
"""mm beside the neck where the outer edge of the collar crosses the shoulder. Own judgment: a picture."""

_RISES = Point(10.0, 28.0)
"""mm inward and up from the side-neck point to where the collar rolls over there. Own judgment: a picture."""


def has_lapel(piece: Piece) -> bool:
    """Whether the piece is a front with a lapel and a gorge for its collar."""
    return all(_edge(piece, word) for word in ("gorge", "shoulder")) and _roll(piece) is not None


def turned_over(pattern: Pattern, piece: Piece, shape: FlatShape) -> Iterator[FlatShape]:
    """The front without its lapel, the collar, and the lapel over both, in the frame of the front."""
    roll = _roll(piece)
    if roll is None:
        return
    outline = Polygon([(place.x, place.y) for place in shape.fill.flattened(1.0)]).buffer(0.0)
    along = (roll.end - roll.start).unit()
    start, end = roll.start - along * _FAR, roll.end + along * _FAR
    square = along.perpendicular() * _FAR
    parts = []
    for way in (square, square * -1.0):
        half = Polygon([(place.x, place.y) for place in (start, end, end + way, start + way)])
        rest = outline.intersection(half)
        parts.append(max(getattr(rest, "geoms", [rest]), key=lambda part: part.area))
    parts.sort(key=lambda part: part.area)
    lapel, body = (
        Path.polyline([Point(x, y) for x, y in part.exterior.coords[:-1]], closed=True) for part in parts
    )
    inner = tuple(path for path in shape.fine if path.start.distance_to(roll.start) > 1.0)
    yield FlatShape(body, (body,), inner, shape.buttons)
    over = Transform.reflection(roll.start, roll.end)
    yield from _collar(pattern, piece, roll.end, over)
    turned = lapel.transformed(over)
    yield FlatShape(turned, (turned,))


def _collar(pattern: Pattern, piece: Piece, roll_end: Point, over: Transform) -> Iterator[FlatShape]:
    """The collar from the gorge to the shoulder, where it goes round to the back."""
    gorge, shoulder = _edge(piece, "gorge"), _edge(piece, "shoulder")
    slug = gorge.name.split(".", 1)[0] if gorge else ""
    collar = pattern.pieces.get(f"{slug}.collar")
    own, end = (_edge(collar, word) if collar else None for word in ("gorge", "end"))
    if gorge is None or shoulder is None or own is None or end is None:
        return
    neck, tip = sorted((shoulder.path.start, shoulder.path.end), key=lambda place: -place.y)
    laid = Transform.carrying(own.path.start, own.path.end, gorge.path.start, gorge.path.end)
    along, low = gorge.path.end - gorge.path.start, Point(tip.x, piece.bounds.min_y)
    sides = (along.cross(laid.apply(end.path.start) - gorge.path.start), along.cross(low - gorge.path.start))
    if sides[0] * sides[1] > 0.0:  # the half of the collar is drawn for the other side
        laid = laid.then(Transform.reflection(gorge.path.start, gorge.path.end))
    laid = laid.then(over)
    inward = 1.0 if tip.x < neck.x else -1.0
    places = [
        over.apply(gorge.path.start),
        laid.apply(end.path.start),
        neck + (tip - neck).unit() * _ON_SHOULDER,
        neck + Point(inward * _RISES.x, _RISES.y),
        roll_end,
    ]
    center = center_x(piece)
    from_center = Transform.translation(center, 0.0)
    back = back_of_collar(neck - Point(center, 0.0), places[3] - Point(center, 0.0))
    yield back.transformed(from_center)
    fill = Path.polyline(places, closed=True)
    yield FlatShape(fill, (fill,))


def _edge(piece: Piece, word: str) -> Edge | None:
    return next((edge for edge in piece.outline if last_word(edge.name) == word), None)


def _roll(piece: Piece) -> Path | None:
    return next((line.path for line in piece.lines if line.kind == "roll_line"), None)
