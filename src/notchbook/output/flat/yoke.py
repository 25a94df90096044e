"""A yoke that goes over the shoulder: each view shows the part on its side of where the shoulder seam lay."""

import math
from dataclasses import replace

from shapely.geometry import LineString, Polygon

from notchbook.geometry import Path, Point
from notchbook.output.flat.outer import ViewWord, is_outer, is_sleeve, words_of
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Pattern, Piece, split_side
from notchbook.pattern.names import last_word

_FAR = 5000.0

_BACK_CENTER = "center_back"


def yokes(pattern: Pattern) -> tuple[Piece, ...]:
    """The pieces of the body that reach from the front over the shoulder to the back."""
    return tuple(
        piece
        for piece in pattern.pieces.values()
        if is_outer(piece) and not is_sleeve(piece) and not words_of(piece) & {"front", "back"}
        if _shoulder(piece) is not None
    )


def loose_in(piece: Piece, view: ViewWord) -> bool:
    """Whether the center line of the yoke is that of the other side: in this view it is hung by its seam."""
    has_back_center = any(_BACK_CENTER in edge.name for edge in piece.outline)
    return has_back_center == (view == "front")


def shoulder_point(piece: Piece) -> Point | None:
    """Where the shoulder of a yoke ends at the armhole, in its frame; None where the piece is no yoke."""
    ends = _shoulder(piece)
    return None if ends is None else ends[1]


def part_in(piece: Piece, shape: FlatShape, view: ViewWord) -> FlatShape:
    """The part of the yoke that this view shows, in the frame of the piece."""
    ends = _shoulder(piece)
    if ends is None:
        return shape
    neck, tip = ends
    along = (tip - neck).unit()
    start, end = neck - along * _FAR, tip + along * _FAR
    square = along.perpendicular()
    own = _middle_of(piece, view)
    toward = math.copysign(_FAR, (own - neck).dot(square))
    corners = (start, end, end + square * toward, start + square * toward)
    half = Polygon([(place.x, place.y) for place in corners])
    part = _clipped(shape, half)
    return replace(part, lines=(*part.lines, Path.line(neck, tip)))


def run_in(piece: Piece, run: Path, view: ViewWord) -> Path:
    """The part of a run along a yoke that this view shows; of another piece the whole run."""
    ends = _shoulder(piece)
    if ends is None:
        return run
    at = min(run.nearest(ends[0]), run.nearest(ends[1]), key=lambda place: place.gap).distance_along
    if not 0.1 < at < run.length - 0.1:
        return run
    parts = run.between(0.0, at), run.between(at, run.length)
    own = _middle_of(piece, view)
    return min(parts, key=lambda part: part.point_at(part.length / 2.0).distance_to(own))


def _shoulder(piece: Piece) -> tuple[Point, Point] | None:
    """The side-neck and the shoulder point, where the outline has edges of both sides around them."""
    found = {split_side(last_word(name))[0]: place for name, place in piece.points.items()}
    if "side_neck_point" not in found or "shoulder_point" not in found:
        return None
    sides = {word for edge in piece.outline for word in ("front", "back") if _is_of(edge.name, word)}
    return (found["side_neck_point"], found["shoulder_point"]) if len(sides) == 2 else None


def _is_of(edge: str, word: str) -> bool:
    """Whether an edge was drafted on the front or on the back."""
    return edge.split("/", 1)[0].split(".", 1)[-1].split("_")[0] == word


def _middle_of(piece: Piece, view: ViewWord) -> Point:
    """The middle of the middles of the edges of this side."""
    places = [edge.path.point_at(edge.length / 2.0) for edge in piece.outline if _is_of(edge.name, view)]
    return Point(sum(p.x for p in places) / len(places), sum(p.y for p in places) / len(places))


def _clipped(shape: FlatShape, half: Polygon) -> FlatShape:
    outline = Polygon([(place.x, place.y) for place in shape.fill.flattened(1.0)]).buffer(0.0)
    rest = outline.intersection(half)
    largest = max(getattr(rest, "geoms", [rest]), key=lambda part: part.area)
    fill = Path.polyline([Point(x, y) for x, y in largest.exterior.coords[:-1]], closed=True)
    lines = tuple(part for path in shape.lines for part in _within(path, half))
    fine = tuple(part for path in shape.fine for part in _within(path, half))
    return FlatShape(fill, lines, fine, shape.buttons)


def _within(path: Path, half: Polygon) -> list[Path]:
    """The parts of a path inside the half."""
    line = LineString([(place.x, place.y) for place in path.flattened(0.2)])
    rest = line.intersection(half)
    parts = [part for part in getattr(rest, "geoms", [rest]) if isinstance(part, LineString)]
    return [Path.polyline([Point(x, y) for x, y in part.coords]) for part in parts if part.length > 0.1]
