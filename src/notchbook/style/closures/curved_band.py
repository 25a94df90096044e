"""A straight band bent to a part of a ring, so that one of its edges is longer than the other."""

import math
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.geometry.offset_join import arc_segments
from notchbook.pattern import Edge, Piece
from notchbook.units import TOLERANCES

_MOST_TURN = 300.0
"""Degrees that a band in one piece may go round before its ends come near each other. Own judgment."""


@dataclass(frozen=True, slots=True)
class Bend:
    """The radius of the lower edge, mm: above 0 its center lies above, so that the upper edge is shorter;
    below 0 it is longer; None leaves the band straight."""

    radius: float | None


def bend_of(lower: float, upper: float, depth: float) -> Bend:
    """The bend of a band whose edges are so long, mm.

    Both edges are arcs about one center, as long as their radii times one angle, and the radii differ by the
    depth: radius = depth x lower / (lower - upper) (closed form).
    """
    if abs(lower - upper) <= TOLERANCES.closure:
        return Bend(None)
    return Bend(depth * lower / (lower - upper))


def bent(piece: Piece, bend: Bend) -> Piece:
    """The straight strip bent about the middle of its lower edge. StepRefused ``band-too-round``."""
    radius = bend.radius
    if radius is None:
        return piece
    length = piece.bounds.max_x - piece.bounds.min_x
    turned = abs(math.degrees(length / radius))
    if turned > _MOST_TURN:
        raise StepRefused("band-too-round", degrees=turned)
    middle = piece.bounds.min_x + length / 2.0
    edges = [replace(edge, path=_bent_path(edge.path, radius, middle)) for edge in piece.outline]
    joined = [
        replace(edge, path=edge.path.with_start(before.path.end))
        for before, edge in zip([edges[-1], *edges[:-1]], edges, strict=True)
    ]
    return replace(piece, outline=tuple(_closed(joined)))


def _closed(edges: list[Edge]) -> list[Edge]:
    last = replace(edges[-1], path=edges[-1].path.with_end(edges[0].path.start))
    return [*edges[:-1], last]


def _bent_path(path: Path, radius: float, middle: float) -> Path:
    """A side of the strip: along it an arc, across it a straight line to the center of the ring."""
    start, end = _bent(path.start, radius, middle), _bent(path.end, radius, middle)
    if abs(path.start.y - path.end.y) > TOLERANCES.join:
        return Path.line(start, end)
    degrees = math.degrees((path.end.x - path.start.x) / radius)
    return Path(tuple(arc_segments(Point(0.0, radius), start, degrees)))


def _bent(point: Point, radius: float, middle: float) -> Point:
    angle, reach = (point.x - middle) / radius, radius - point.y
    return Point(reach * math.sin(angle), radius - reach * math.cos(angle))
