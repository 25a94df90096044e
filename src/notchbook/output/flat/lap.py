"""An opening that laps in the flat: which side lies on top, and a facing cut on, turned in."""

import re
from dataclasses import replace
from typing import Final, Literal

from shapely.geometry import LineString, Polygon

from notchbook.geometry import Path, Point
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import Pattern, Piece, part_name
from notchbook.pattern.names import instance_of, last_word

_FAR: Final = 5000.0

_LEAST: Final = 0.1
"""mm; what is left shorter of a line is not drawn."""

_HOLES: Final = "buttonholes"

_ZIP, _STITCHES = "zip", "stitch_line"

_VENT, _VENT_TOP = "vent", "top"
"""How the part of an edge is called that opens as a vent, and the top of its extension."""

_SIDE: Final = re.compile(r"wearer's (right|left) side")


WearerSide = Literal["right", "left"]


def side_on_top(pattern: Pattern, piece: Piece) -> WearerSide | None:
    """The wearer's side of this piece that laps over: where the sewing order has its buttonholes worked; None
    where it says nothing of it."""
    named = (
        _side_named(told.text)
        for told in pattern.operations.values()
        if last_word(told.name) == _HOLES and piece.name in told.at
    )
    return next((side for side in named if side is not None), None)


def lapped_zip_side(pattern: Pattern, line: str) -> WearerSide | None:
    """The wearer's side on which these stitches of a zip show alone: that which laps over it in a seam whose
    two sides are one piece; None for all other lines."""
    told = pattern.operations.get(part_name(instance_of(line), _ZIP))
    is_stitched = last_word(line).startswith(_STITCHES)
    return _side_named(told.text) if told is not None and is_stitched else None


def _side_named(text: str) -> WearerSide | None:
    said = _SIDE.search(text)
    if said is None:
        return None
    return "right" if said[1] == "right" else "left"


def closing_lines(piece: Piece) -> frozenset[str]:
    """The buttonholes of the piece, which the side that lies under has not."""
    return frozenset(line.name for line in piece.lines if line.kind == "buttonhole")


def turned_in(piece: Piece, shape: FlatShape) -> FlatShape:
    """The shape without what is cut on beyond a fold line, a facing or the extension of a vent at the side:
    there lies the edge of the garment. At a center the extension of the side that lies under is seen.

    In the frame of the piece."""
    owners = {instance_of(edge.name) for edge in piece.outline if last_word(edge.name) == "facing_edge"}
    if any(_is_side_vent(edge.name) for edge in piece.outline):
        owners |= {instance_of(edge.name) for edge in piece.outline if last_word(edge.name) == _VENT_TOP}
    for line in piece.lines:
        if last_word(line.name) == "fold_line" and instance_of(line.name) in owners:
            shape = _cut_at(shape, line.path)
    return shape


def _is_side_vent(edge: str) -> bool:
    words = edge.split("@")[0].split("/")[1:]
    return words[-1:] == [_VENT] and not any(word.startswith("center") for word in words)


def _cut_at(shape: FlatShape, fold: Path) -> FlatShape:
    """The larger part of the shape beside a straight line, which becomes its edge."""
    outline = Polygon([(place.x, place.y) for place in shape.fill.flattened(1.0)]).buffer(0.0)
    along = (fold.end - fold.start).unit()
    start, end, square = fold.start - along * _FAR, fold.end + along * _FAR, along.perpendicular() * _FAR
    halves = [
        Polygon([(place.x, place.y) for place in (start, end, end + way, start + way)])
        for way in (square, square * -1.0)
    ]
    half = max(halves, key=lambda one: float(outline.intersection(one).area))
    rest = outline.intersection(half)
    largest = max(getattr(rest, "geoms", [rest]), key=lambda part: float(part.area))
    fill = Path.polyline([Point(x, y) for x, y in largest.exterior.coords[:-1]], closed=True)
    # The fold itself is drawn firm: no longer among the fine lines, which run on it.
    fine = tuple(path for path in shape.fine if not _runs_on(path, fold))
    return replace(
        shape,
        fill=fill,
        lines=(*(part for path in shape.lines for part in _within(path, half)), fold),
        fine=tuple(part for path in fine for part in _within(path, half)),
    )


def _runs_on(path: Path, fold: Path) -> bool:
    return all(fold.nearest(place).gap <= _LEAST for place in (path.start, path.end))


def _within(path: Path, half: Polygon) -> list[Path]:
    """The parts of a path inside the half."""
    line = LineString([(place.x, place.y) for place in path.flattened(0.2)])
    rest = line.intersection(half)
    parts = [part for part in getattr(rest, "geoms", [rest]) if isinstance(part, LineString)]
    return [Path.polyline([Point(x, y) for x, y in part.coords]) for part in parts if part.length > _LEAST]
