"""A curve between two places that it meets in given directions, square to what lies there."""

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.path import Path
from notchbook.geometry.point import Point, direction
from notchbook.geometry.velocity import curve_between

_KEPT = 0.2
"""Share of the chord along which a line keeps toward its end direction, at least: it meets a center square
for a hand's breadth, also where it has to bend back for that. Own judgment."""


def met_square(start: tuple[Point, float], end: tuple[Point, float]) -> Path:
    """The curve from a place to a place, each with the direction of travel there (degrees).

    Where the directions hardly leave room for a bend to one side only, it would turn into the one direction
    within a few millimeters, so that no eye and no ruler finds it square there: it becomes a long S instead.
    """
    batten, convex = (curve_between(*start, *end, keep_convex=kept) for kept in (False, True))
    least = _KEPT * start[0].distance_to(end[0])
    first = max(_first(convex), min(_first(batten), least))
    last = max(_last(convex), min(_last(batten), least))
    return Path.of(
        Cubic(start[0], start[0] + direction(start[1]) * first, end[0] - direction(end[1]) * last, end[0])
    )


def _first(curve: Cubic) -> float:
    return curve.start.distance_to(curve.start_handle)


def _last(curve: Cubic) -> float:
    return curve.end.distance_to(curve.end_handle)
