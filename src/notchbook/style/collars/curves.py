"""The curved edge of a collar that is drawn from its lengths: straight behind, bent toward the front."""

import math
from collections.abc import Iterator

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, direction, fair_curve
from notchbook.geometry.solve import solve_rising
from notchbook.style.collars.laid_neck import as_long

_KNOTS = 4
_STEPS = 160

_MOST_BEND = 100.0
"""Degrees by which the front of a collar may be bent up or down."""


def bent_edge(length: float, straight: float, bend: float) -> Path:
    """An edge of so many mm from the origin to +x: straight for ``straight`` mm, then bent more and more,
    ``bend`` degrees in all (to the left positive). With nothing straight it is bent evenly.
    """
    if abs(bend) < _NO_BEND:
        return Path.line(Point(0.0, 0.0), Point(length, 0.0))
    rest = length - straight
    points = [Point(straight, 0.0)]
    for degrees in _directions(bend, straight):
        points.append(points[-1] + direction(degrees) * (rest / _STEPS))
    chosen = [points[round(number * _STEPS / _KNOTS)] for number in range(_KNOTS + 1)]
    bent = fair_curve(chosen, 0.0, bend).path
    if straight > 0.0:
        bent = Path.line(Point(0.0, 0.0), chosen[0]).joined(bent)
    return as_long(bent, length)


_NO_BEND = 1e-6
"""Degrees below which an edge is straight."""


def _directions(bend: float, straight: float) -> Iterator[float]:
    """The direction in the middle of each step of the bent part, degrees."""
    for number in range(_STEPS):
        share = (number + 0.5) / _STEPS
        yield bend * (share * share if straight > 0.0 else share)


def bend_for_rise(length: float, straight: float, rise: float) -> float:
    """The bend in degrees with which the front end of the edge lies ``rise`` mm higher than its back.

    StepRefused ``collar-rise-steep`` where it cannot rise so far.
    """
    rest = length - straight

    def missing(bend: float) -> float:
        return sum(math.sin(math.radians(one)) for one in _directions(bend, straight)) * rest / _STEPS - rise

    try:
        return solve_rising(missing, math.degrees(2.0 * rise / rest), 2.0, -_MOST_BEND, _MOST_BEND)
    except GeometryError as error:
        raise StepRefused("collar-rise-steep", rise=abs(rise), length=length) from error


def limited_bend(bend: float) -> float:
    """The bend, but no more than a collar can be drawn with, degrees."""
    return min(max(bend, -_MOST_BEND), _MOST_BEND)
