"""Where two segments meet.

Every function returns pairs of parameters (on the first, on the second). Ends that touch the other
segment within ``crossing_mm`` are always found. Segments that run along each other meet at the ends
of the common stretch: each such end is an end of one of the two.
"""

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.intersect_cubics import cubic_pairs
from notchbook.geometry.line import Line
from notchbook.geometry.nearest import nearest_parameter
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE

Pair = tuple[float, float]

_PARALLEL = 1e-12
"""Sine of the angle under which two lines count as parallel: float noise of a cross product."""


def segment_pairs(first: Segment, second: Segment) -> list[Pair]:
    """All pairs of parameters where the segments meet, touching ends included; not sorted."""
    if not first.bounds().is_near(second.bounds(), TOLERANCE.crossing_mm):
        return []
    found = touching_ends(first, second)
    if isinstance(first, Line):
        if isinstance(second, Line):
            return found + _line_pairs(first, second)
        return found + _line_and_cubic(first, second)
    if isinstance(second, Line):
        return found + [(t, u) for u, t in _line_and_cubic(second, first)]
    return found + cubic_pairs(first, second, found)


def touching_ends(first: Segment, second: Segment) -> list[Pair]:
    """The ends of either segment that lie on the other one."""
    found: list[Pair] = []
    for t in (0.0, 1.0):
        point = first.start if t == 0.0 else first.end
        if second.bounds().gap_to(point) <= TOLERANCE.crossing_mm:
            u, gap = nearest_parameter(second, point)
            if gap <= TOLERANCE.crossing_mm:
                found.append((t, u))
    for u in (0.0, 1.0):
        point = second.start if u == 0.0 else second.end
        if first.bounds().gap_to(point) <= TOLERANCE.crossing_mm:
            t, gap = nearest_parameter(first, point)
            if gap <= TOLERANCE.crossing_mm:
                found.append((t, u))
    return found


def _line_pairs(first: Line, second: Line) -> list[Pair]:
    along, beside = first.end - first.start, second.end - second.start
    turn = along.cross(beside)
    if abs(turn) <= _PARALLEL * first.length * second.length:
        return []
    gap = second.start - first.start
    t, u = gap.cross(beside) / turn, gap.cross(along) / turn
    return [(t, u)] if 0.0 <= t <= 1.0 and 0.0 <= u <= 1.0 else []


def _line_and_cubic(line: Line, cubic: Cubic) -> list[Pair]:
    """Roots of the distance of the cubic from the line; places where it only touches included."""
    if line.length <= TOLERANCE.join_mm:
        return []
    along = (line.end - line.start) / line.length
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    heights = (
        along.cross(cubic.start - line.start),
        along.x * y1 - along.y * x1,
        along.x * y2 - along.y * x2,
        along.x * y3 - along.y * x3,
    )
    if sum(abs(height) for height in heights) <= TOLERANCE.crossing_mm:
        return []
    found: list[Pair] = []
    for u in unit_roots(heights, touch=TOLERANCE.crossing_mm):
        t = along.dot(cubic.at(u) - line.start) / line.length
        if 0.0 <= t <= 1.0:
            found.append((t, u))
    return found


def own_crossing(cubic: Cubic) -> Pair | None:
    """The two parameters of the place where a cubic crosses itself, or None.

    From B(t) = B(u) divided by t - u: with s = t + u and p = t u this is linear in s after a cross
    product with the leading coefficient, then p follows, then t and u.
    """
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    turn = x2 * y3 - y2 * x3
    size = x3 * x3 + y3 * y3
    if turn == 0.0 or size == 0.0:
        return None
    total = -(x1 * y3 - y1 * x3) / turn
    product = total * total + ((x2 * total + x1) * x3 + (y2 * total + y1) * y3) / size
    spread = total * total - 4.0 * product
    if spread <= 0.0:
        return None
    t, u = (total - spread**0.5) / 2.0, (total + spread**0.5) / 2.0
    return (t, u) if t >= 0.0 and u <= 1.0 else None
