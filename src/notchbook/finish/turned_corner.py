"""A corner at which both allowances are turned in: cut off so that they meet in a miter, without a lump."""

from notchbook.finish.corner import Corner, mitred
from notchbook.finish.strip import Strip, nearest_crossing
from notchbook.geometry import Path, Point

_SEAM = 6.0
"""mm beyond the stitching of the miter: enclosed seams 1/4 in (factory allowance charts)."""

_FLAT = 0.02
"""Sine of an angle below which two lines are one: a miter of two hems at a right angle. Own judgment."""

_SHARPEST = 0.5
"""Sine of the angle between two edges below which no miter is made: 30 degrees. Own judgment."""


def turned_in(first: Strip, second: Strip, limit: float) -> Corner:
    """The allowances as they are sewn to each other across the corner before they are turned.

    Turned in, both lie along the line from the corner to where their raw edges cross inside the piece. Folded
    out again, that line lies twice outside: reflected at either edge (closed form). Both are stitched to
    each other and cut off 6 mm beyond. Where the corner is not a plain outer one, both cut lines run on.
    """
    tip = first.edge.path.end
    along, on = first.end_direction, second.start_direction
    turn = along.cross(on)
    if turn < _SHARPEST or min(first.width, second.width) <= 2.0 * _SEAM:
        return mitred(first, second, limit)
    outward = -along.perpendicular(), -on.perpendicular()
    inner = _inside(outward, (first.width, second.width))
    ends = inner + outward[0] * (2.0 * first.width), inner + outward[1] * (2.0 * second.width)
    middle = (outward[0] + outward[1]).unit()
    lines = [_beyond(tip, end, middle, max(first.first, second.first)) for end in ends]
    leave = nearest_crossing(first.line, lines[0], tip + ends[0])
    enter = nearest_crossing(second.line, lines[1], tip + ends[1])
    if leave is None or enter is None:
        return mitred(first, second, limit)
    bend = _bend(lines[0], lines[1])
    path = [leave.point, *([] if bend is None else [bend]), enter.point]
    return Corner(leave.at_self, enter.at_self, Path.polyline(path))


def _inside(outward: tuple[Point, Point], widths: tuple[float, float]) -> Point:
    """Where lines so far inside both edges cross, from the corner."""
    (one, two), (first, second) = outward, widths
    whole = one.cross(two)
    return Point((-first * two.y + second * one.y) / whole, (-second * one.x + first * two.x) / whole)


def _beyond(tip: Point, end: Point, middle: Point, reach: float) -> Path:
    """The line of the stitching, moved out by its seam and carried on at both ends."""
    along = end.unit()
    across = along.perpendicular()
    across = across if across.dot(middle) > 0.0 else -across
    start = tip + across * _SEAM
    return Path.line(start - along * reach, start + along * (end.norm() + reach))


def _bend(first: Path, second: Path) -> Point | None:
    """Where the two lines cross; None where they are one."""
    if abs(first.tangent_at(0.0).cross(second.tangent_at(0.0))) < _FLAT:
        return None
    crossings = first.intersections(second)
    return crossings[0].point if crossings else None
