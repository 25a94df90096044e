"""The nearest place of a segment to a point."""

from dataclasses import dataclass

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.segment import Segment


@dataclass(frozen=True, slots=True)
class Nearest:
    """The nearest place of a path: how far along it, the point there, and the gap (all mm)."""

    distance_along: float
    point: Point
    gap: float


def nearest_parameter(segment: Segment, point: Point) -> tuple[float, float]:
    """The parameter of the place nearest to the point, and the gap in mm; the first place when equal."""
    if isinstance(segment, Line):
        return _nearest_on_line(segment, point)
    return min(
        ((t, segment.at(t).distance_to(point)) for t in (0.0, *_square_places(segment, point), 1.0)),
        key=lambda found: found[1],
    )


def _nearest_on_line(line: Line, point: Point) -> tuple[float, float]:
    along = line.end - line.start
    size = along.dot(along)
    t = min(1.0, max(0.0, (point - line.start).dot(along) / size)) if size else 0.0
    return t, line.at(t).distance_to(point)


def _square_places(cubic: Cubic, point: Point) -> list[float]:
    """Where the line to the point stands square on the curve: the roots of (B - P) . B', a quintic."""
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    x0, y0 = cubic.start.x - point.x, cubic.start.y - point.y
    return unit_roots(
        (
            x0 * x1 + y0 * y1,
            x1 * x1 + 2.0 * x0 * x2 + y1 * y1 + 2.0 * y0 * y2,
            3.0 * (x1 * x2 + x0 * x3 + y1 * y2 + y0 * y3),
            2.0 * (x2 * x2 + y2 * y2) + 4.0 * (x1 * x3 + y1 * y3),
            5.0 * (x2 * x3 + y2 * y3),
            3.0 * (x3 * x3 + y3 * y3),
        )
    )
