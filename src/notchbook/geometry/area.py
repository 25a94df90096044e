"""Signed areas and winding of closed chains of segments."""

from collections.abc import Iterable
from itertools import pairwise

from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.roots import unit_roots, value_at
from notchbook.geometry.segment import Segment


def swept_area(segments: Iterable[Segment], about: Point) -> float:
    """The area swept by the ray from ``about`` to the segments, mm²; exact, by Green's theorem.

    For a closed chain this is its area, counter-clockwise positive, wherever ``about`` lies.
    """
    return sum(_sector(segment, about) for segment in segments)


def _sector(segment: Segment, about: Point) -> float:
    start, end = segment.start - about, segment.end - about
    if isinstance(segment, Line):
        return start.cross(end) / 2.0
    first, second = segment.start_handle - about, segment.end_handle - about
    # Half the integral of B x B', in terms of the four points.
    return (
        0.3 * (start.cross(first) + second.cross(end))
        + 0.15 * (start.cross(second) + first.cross(second) + first.cross(end))
        + 0.05 * start.cross(end)
    )


def winding(segments: Iterable[Segment], point: Point) -> int:
    """How often the closed chain runs counter-clockwise around the point, which must not lie on it.

    Crossings of the ray to the right are counted, on pieces that rise or fall all the way: a piece
    owns its lower end and not its upper one, so that a shared end counts once.
    """
    turns = 0
    for segment in segments:
        box = segment.bounds()
        if box.min_y > point.y or box.max_y < point.y or box.max_x < point.x:
            continue
        turns += _line_turns(segment, point) if isinstance(segment, Line) else _curve_turns(segment, point)
    return turns


def _line_turns(line: Line, point: Point) -> int:
    rises = line.start.y <= point.y < line.end.y
    if not rises and not line.end.y <= point.y < line.start.y:
        return 0
    is_left = (line.end - line.start).cross(point - line.start) > 0.0
    if rises:
        return 1 if is_left else 0
    return 0 if is_left else -1


def _curve_turns(segment: Segment, point: Point) -> int:
    if isinstance(segment, Line):
        return _line_turns(segment, point)
    _, (one, two, three) = segment.powers
    stops = [0.0, *(t for t in unit_roots((one, 2.0 * two, 3.0 * three)) if 0.0 < t < 1.0), 1.0]
    height = (segment.start.y - point.y, one, two, three)
    turns = 0
    for low, high in pairwise(stops):
        below_low = segment.at(low).y <= point.y
        below_high = segment.at(high).y <= point.y
        if below_low == below_high:
            continue
        t = _level_place(height, low, high)
        if segment.at(t).x > point.x:
            turns += 1 if below_low else -1
    return turns


def _level_place(height: tuple[float, float, float, float], low: float, high: float) -> float:
    """The parameter in a monotone piece where the height is 0; an end where rounding hides the root."""
    inside = [t for t in unit_roots(height) if low <= t <= high]
    if inside:
        return inside[0]
    return low if abs(value_at(height, low)) < abs(value_at(height, high)) else high
