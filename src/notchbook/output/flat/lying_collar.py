"""A collar that lies on the body in the flat: its piece laid to the neck, as far as this view shows it."""

from collections.abc import Iterator, Sequence
from typing import Final

from shapely.geometry import Polygon, box

from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Edge, Piece
from notchbook.pattern.names import last_word, split_side

_COLLARS: Final = frozenset({"collar", "undercollar"})
_FAR: Final = 2000.0

_ALONG = 15.0
"""mm along the neck from the center by which the direction of collar and neck is taken. Own judgment."""

_AT_CENTER = 0.5
"""mm from the center within which a line lies along it."""

_AT_TIP = 3.0
"""mm within which a shoulder ends where the neck does."""


def lies_flat(piece: Piece) -> bool:
    """Whether the piece is a collar that does not turn over along a line of its own."""
    return _is_collar(piece) and _edge(piece, "neck_edge") is not None and roll_of(piece) is None


def _is_collar(piece: Piece) -> bool:
    return split_side(last_word(piece.name))[0] in _COLLARS


def roll_of(piece: Piece) -> Path | None:
    """The line along which a collar in one piece turns over."""
    if not _is_collar(piece):
        return None
    return next((line.path for line in piece.lines if line.kind == "roll_line"), None)


def roll_stand(piece: Piece) -> float:
    """How high a collar in one piece stands at the center back, mm."""
    roll, neck, center = roll_of(piece), _edge(piece, "neck_edge"), _edge(piece, "center_back")
    if roll is None or neck is None or center is None:
        return 0.0
    behind = min((roll.start, roll.end), key=lambda end: center.path.nearest(end).gap)
    return neck.path.nearest(behind).gap


def lying_collar(
    piece: Piece,
    run: Sequence[Point],
    shoulder: tuple[Point, Point] | None,
    *,
    is_front: bool,
    goes_on: bool,
) -> Iterator[FlatShape]:
    """The collar on the ``run`` of the neck in this view, cut off where it goes over the ``shoulder`` (its
    ends in the view, that at the neck first); ``goes_on``: over the center to the other side, without a
    seam."""
    neck = _edge(piece, "neck_edge")
    if neck is None or shoulder is None:
        return
    places = list(run) if abs(run[0].x) <= abs(run[-1].x) else list(run)[::-1]
    with_outline = (last_word(neck.start) == "neck_end") is is_front
    path = neck.path if with_outline else neck.path.reversed()
    way = (path.point_at(min(_ALONG, path.length)) - path.start).unit()
    ahead = (Path.polyline(places).point_at(_ALONG) - places[0]).unit()
    laid = Transform.carrying(path.start, path.start + way, places[0], places[0] + ahead)
    outline = [laid.apply(place) for place in piece.sew_line.flattened(1.0)]
    side = 1.0 if places[-1].x > 0.0 else -1.0
    if with_outline is (
        side > 0.0
    ):  # the cloth lies left of an outline; the body right of a neck that goes right
        mirror = Transform.reflection(places[0], places[0] + ahead)
        outline = [mirror.apply(place) for place in outline]
    seen = Polygon([(place.x, place.y) for place in outline]).buffer(0.0).intersection(_below(shoulder))
    seen = seen.intersection(box(min(0.0, side * _FAR), -_FAR, max(0.0, side * _FAR), _FAR))
    parts = [
        part for part in getattr(seen, "geoms", [seen]) if part.geom_type == "Polygon" and not part.is_empty
    ]
    if parts:
        largest = max(parts, key=lambda part: part.area)
        corners = [Point(x, y) for x, y in largest.exterior.coords[:-1]]
        fill = Path.polyline(corners, closed=True)
        yield FlatShape(fill, tuple(_but_center(corners)) if goes_on else (fill,))


def _but_center(corners: Sequence[Point]) -> Iterator[Path]:
    """The outline without what lies along the center."""
    chain: list[Point] = []
    for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
        if max(abs(one.x), abs(other.x)) > _AT_CENTER:
            chain = [*(chain or [one]), other]
        elif chain:
            yield Path.polyline(chain)
            chain = []
    if chain:
        yield Path.polyline(chain)


def shoulder_at(piece: Piece, ends: Sequence[tuple[Point, Point]], neck: Point) -> tuple[Point, Point] | None:
    """The shoulder of a piece that ends at a place of the neck, from there; ``ends`` are those of its edges
    in the view, in their order."""
    for edge, (one, other) in zip(piece.outline, ends, strict=True):
        if "shoulder" in split_side(edge.name)[0].split("/")[1:]:
            for near, far in ((one, other), (other, one)):
                if near.distance_to(neck) <= _AT_TIP:
                    return near, far
    return None


def _edge(piece: Piece, word: str) -> Edge | None:
    return next((edge for edge in piece.outline if last_word(edge.name) == word), None)


def _below(shoulder: tuple[Point, Point]) -> Polygon:
    """All that lies below the line of the shoulder."""
    start, tip = shoulder
    along = (tip - start).unit() * _FAR
    ends = start - along, start + along
    down = Point(0.0, -_FAR)
    return Polygon([(place.x, place.y) for place in (*ends, ends[1] + down, ends[0] + down)])
