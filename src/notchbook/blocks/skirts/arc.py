"""Arcs of circles as paths, and level lines that are square to a leaning seam."""

from math import ceil, cos, radians, sin, tan

from notchbook.geometry import Cubic, Path, Point, curve_between, direction

WIDEST_PART = 22.5
"""Degrees of an arc that one cubic draws: off the circle by less than a ten-millionth of its radius."""

NEARLY_STRAIGHT = 1e-3
"""Degrees; an arc that turns less is drawn as one cubic from its ends: its center would lie so far off that
no place on it could be reckoned."""


def arc(center: Point, radius: float, start: float, end: float) -> Path:
    """The arc round ``center`` from one direction to another, degrees, counter-clockwise where ``end`` is
    the greater; radius in mm."""
    count = max(1, ceil(abs(end - start) / WIDEST_PART))
    step = (end - start) / count
    return Path(tuple(_part(center, radius, start + index * step, step) for index in range(count)))


def _part(center: Point, radius: float, start: float, step: float) -> Cubic:
    handle = 4.0 / 3.0 * tan(radians(step) / 4.0) * radius
    first, last = direction(start), direction(start + step)
    begin, end = center + first * radius, center + last * radius
    return Cubic(begin, begin + first.perpendicular() * handle, end - last.perpendicular() * handle, end)


def level_line(end: Point, lean: float, middle: float | None = None) -> Path:
    """The line from the middle of a panel (x = 0) to ``end`` on its seam, square to both.

    ``lean`` is that of the seam against the upright on its way up, degrees, positive toward the middle. It
    is an arc, unless ``middle`` fixes its height at x = 0, mm.
    """
    if middle is not None:
        return Path.of(curve_between(Point(0.0, middle), 0.0, end, lean))
    if abs(lean) < NEARLY_STRAIGHT:
        return level_line(end, lean, end.y - end.x * tan(radians(lean / 2.0)))
    radius = end.x / sin(radians(lean))
    center = Point(0.0, end.y + radius * cos(radians(lean)))
    if lean > 0.0:
        return arc(center, radius, -90.0, -90.0 + lean)
    return arc(center, -radius, 90.0, 90.0 + lean)


def arc_over_chord(lean: float) -> float:
    """How much longer the arc of :func:`level_line` is than the level way to its end, as a factor."""
    angle = radians(lean)
    return angle / sin(angle) if angle else 1.0
