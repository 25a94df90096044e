"""Curvature along paths: profiles, inflections, extrema."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from notchbook.errors import GeometryError
from notchbook.geometry.cubic import Cubic
from notchbook.geometry.line import Line
from notchbook.geometry.path import Path
from notchbook.geometry.point import Point
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.tolerance import TOLERANCE

_Changes = Callable[[Cubic], list[float]]
"""Finds the parameters where something about a cubic changes."""


@dataclass(frozen=True, slots=True)
class CurvatureSample:
    """The signed curvature (1/mm, left turns positive) at a distance along a path (mm)."""

    distance: float
    curvature: float


def curvature_profile(path: Path, step_mm: float) -> tuple[CurvatureSample, ...]:
    """The curvature at even steps of at most ``step_mm`` from start to end.

    GeometryError ``tolerance-not-positive`` for a step that is not positive.
    """
    if not step_mm > 0.0:
        raise GeometryError("tolerance-not-positive", value=step_mm)
    count = max(1, math.ceil(path.length / step_mm))
    places = (path.length * index / count for index in range(count + 1))
    return tuple(CurvatureSample(place, path.curvature_at(place)) for place in places)


def inflections(path: Path) -> tuple[float, ...]:
    """The distances where the curve changes from one side to the other, mm.

    Straight stretches between opposite turns count once, at their start. Corners do not count as turns.
    """
    found: list[float] = []
    side, straight_from = 0.0, 0.0
    for low, high in _monotone_stretches(path, _bend_changes):
        bend = path.curvature_at((low + high) / 2.0)
        if abs(bend) <= TOLERANCE.curvature_per_mm:
            continue
        if side and (bend > 0.0) != (side > 0.0):
            found.append(straight_from)
        side, straight_from = bend, high
    return tuple(found)


def curvature_extrema(path: Path, noise_per_mm: float = TOLERANCE.curvature_per_mm) -> tuple[float, ...]:
    """The inner distances where the signed curvature is greatest or least, mm.

    A jump of curvature at a joint counts where the curvature turns back there. Changes of at most
    ``noise_per_mm`` (1/mm) do not count: a cubic along an arc sways by about 0.1 % of the curvature.
    """
    values: list[tuple[float, float]] = []
    for low, high in _monotone_stretches(path, curvature_turns):
        values.append((low, path.curvature_at(low, "after")))
        values.append((high, path.curvature_at(high, "before")))
    return tuple(turn.place for turn in turning_places(values, noise_per_mm))


@dataclass(frozen=True, slots=True)
class Turning:
    """A place where values turn back, and the smaller of the changes before and after it."""

    place: float
    amount: float


def turning_places(values: Sequence[tuple[float, float]], noise: float) -> list[Turning]:
    """Where a series of (place, value) turns back; changes of at most ``noise`` are passed over."""
    found: list[Turning] = []
    if not values:
        return found
    place, extreme = values[0]
    turned_at, trend = extreme, 0
    for next_place, value in values[1:]:
        change = value - extreme
        if math.isnan(change) or ((change * trend < 0.0 or trend == 0) and abs(change) <= noise):
            continue
        if change * trend < 0.0:
            found.append(Turning(place, min(abs(extreme - turned_at), abs(change))))
            turned_at = extreme
        trend = trend if change == 0.0 else int(math.copysign(1.0, change))
        if change != 0.0:
            place, extreme = next_place, value
    return found


def _monotone_stretches(path: Path, changes: _Changes) -> Iterator[tuple[float, float]]:
    """The stretches of the path (distances) between joints and the changes of each cubic."""
    for segment, before in zip(path.segments, path.distances, strict=False):
        if segment.length <= TOLERANCE.join_mm:
            continue
        inner = [] if isinstance(segment, Line) else changes(segment)
        stops = [0.0, *(segment.distance_at(t) for t in inner if 0.0 < t < 1.0), segment.length]
        for low, high in pairwise(stops):
            if high - low > TOLERANCE.join_mm:
                yield before + low, before + high


def _bend_changes(cubic: Cubic) -> list[float]:
    """The parameters where B' x B'' is 0: a quadratic."""
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    return unit_roots(
        (2.0 * (x1 * y2 - y1 * x2), 6.0 * (x1 * y3 - y1 * x3), 6.0 * (x2 * y3 - y2 * x3)),
    )


def curvature_turns(cubic: Cubic) -> list[float]:
    """The parameters where the derivative of the curvature is 0: a quintic.

    From (B' x B''') |B'|² = 3 (B' x B'') (B' . B'').
    """
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    first = (Point(x1, y1), Point(2.0 * x2, 2.0 * y2), Point(3.0 * x3, 3.0 * y3))
    second = (first[1], first[2] * 2.0)
    third = second[1]
    bend = _product([[a.cross(b) for b in second] for a in first])
    change = [a.cross(third) for a in first]
    speed = _product([[a.dot(b) for b in first] for a in first])
    pull = _product([[a.dot(b) for b in second] for a in first])
    left, right = _times(change, speed), _times(bend, pull)
    size = max(len(left), len(right))
    left, right = left + [0.0] * (size - len(left)), right + [0.0] * (size - len(right))
    return unit_roots([a - 3.0 * b for a, b in zip(left, right, strict=True)])


def _times(first: list[float], second: list[float]) -> list[float]:
    return _product([[a * b for b in second] for a in first])


def _product(table: list[list[float]]) -> list[float]:
    """The coefficients of a product of polynomials from the table of products of their terms."""
    sums = [0.0] * (len(table) + len(table[0]) - 1)
    for power, row in enumerate(table):
        for other, value in enumerate(row):
            sums[power + other] += value
    return sums
