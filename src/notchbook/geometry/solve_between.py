"""Seeking a value of a function that may be refused beyond limits that nobody knows beforehand."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

Function = Callable[[float], "float | None"]
"""The value at a place; None where there is none."""

_GROWTH = 1.7
_MOST_GROWTH = 16.0
_AWAY_GROWTH = 4.0
"""How much longer each step is where the value leads away from 0: there is little to find, and far to go."""

_OVERSHOOT = 1.1
_MOST_STEPS = 60
_MOST_FLAT = 8
"""Steps without any change after which a function is taken not to depend on the place."""

_STILL = 1e-9
"""A change that is arithmetic and no movement."""

_RELATIVE = 1e-15
"""The least share of a place to which the solver of scipy can be told to go."""


_GENEROUS = 4.0
"""So many times as steep as it was a function may still become just before it ends."""


_NEAR_ZERO = 0.5
"""A turning point nearer to 0 than this share of how much the value changes about it is found exactly."""


@dataclass(frozen=True, slots=True)
class Accuracies:
    """How exactly the ``root`` is found; how exactly the ``last`` place with a value, where a root may lie
    beside it; and how exactly it is ``told`` where none can."""

    root: float
    last: float
    told: float


@dataclass(frozen=True, slots=True)
class Place:
    """A place and the value there."""

    at: float
    value: float


@dataclass(frozen=True, slots=True)
class Sought:
    """What came of seeking: ``root`` is where the value is 0, None where it is nowhere.

    ``least`` and ``most`` are the places with the least and the greatest value that were met; ``low`` and
    ``high`` those farthest out; ``below`` and ``above`` the nearest beyond them that were asked for and have
    no value, None where there is none.
    """

    root: float | None
    least: Place
    most: Place
    low: Place
    high: Place
    below: float | None = None
    above: float | None = None


def seek_zero(
    function: Function,
    start: Place,
    step: float,
    limits: tuple[float, float],
    accuracies: "Accuracies",
) -> Sought:
    """Where the function is 0, sought outward from a known place, nearest first.

    ``step`` is the first step, the next grow; where the function has no value, the last place with one is
    found, unless the value leads away from 0: then the last place met will do. No bracket is fixed
    beforehand, so that no shape is asked for that lies farther out than needed. A root is where the value
    changes its sign: the caller sees whether it is 0 there or jumps over 0.
    """
    refused: list[float] = []

    def asked(at: float) -> float | None:
        value = function(at)
        if value is None:
            refused.append(at)
        return value

    places = [start]
    for way in _nearer_first(asked, start, step):
        end = limits[0] if way < 0.0 else limits[1]
        here = start
        for place in _outward(asked, start, way * step, end, accuracies):
            places.append(place)
            if _apart(here, place):
                return _root(asked, here, place, places, accuracies.root)
            here = place
    places.sort(key=_at)
    turned = _turning(asked, places, accuracies)
    if turned is not None:
        near = max((place for place in places if place.at < turned.at), key=_at)
        if _apart(near, turned):
            return _root(asked, near, turned, [*places, turned], accuracies.root)
        places.append(turned)
    found = _sought(None, places)
    below = max((at for at in refused if at < found.low.at), default=None)
    above = min((at for at in refused if at > found.high.at), default=None)
    return replace(found, below=below, above=above)


def _nearer_first(function: Function, start: Place, step: float) -> tuple[float, float]:
    """The two ways, first the one in which the value comes nearer to 0."""
    value = function(start.at + step)
    return (1.0, -1.0) if value is not None and abs(value) <= abs(start.value) else (-1.0, 1.0)


def _outward(
    function: Function, start: Place, step: float, limit: float, accuracies: Accuracies
) -> Iterator[Place]:
    """Places farther and farther out in one way, the last one as far as there are values.

    The next step goes a little farther than where the last two would lead to 0, and never shrinks. A function
    that does not change on its first steps is left alone.
    """
    before = here = start
    is_flat = True
    for taken in range(_MOST_STEPS):
        left = abs(limit - here.at)
        if left <= accuracies.last or (is_flat and taken >= _MOST_FLAT):
            return
        at = limit if abs(step) >= left else here.at + step
        value = function(at)
        if value is None:
            yield from _last_before(function, (before, here), at, accuracies)
            return
        before, here = here, Place(at, value)
        is_flat = is_flat and abs(value - before.value) <= _STILL
        yield here
        growth = _AWAY_GROWTH if _leads_away(before, here) else _GROWTH
        wanted = max(growth * abs(step), _OVERSHOOT * _way_to_zero(before, here))
        step = math.copysign(min(wanted, _MOST_GROWTH * abs(step)), step)


def _way_to_zero(before: Place, here: Place) -> float:
    """How far beyond the second place the line through both comes to 0; 0 where it leads away."""
    gained = abs(before.value) - abs(here.value)
    return abs(here.at - before.at) * abs(here.value) / gained if gained > 0.0 else 0.0


def _last_before(
    function: Function, inner: tuple[Place, Place], outside: float, accuracies: Accuracies
) -> Iterator[Place]:
    """Places nearer and nearer to the last one that has a value; exactly only where a root may lie there, and
    none at all where that cannot be and the value leads away from 0."""
    before, inside = inner
    while abs(outside - inside.at) > accuracies.last:
        is_told = abs(outside - inside.at) <= accuracies.told or _leads_away(before, inside)
        if is_told and not _may_reach(before, inside, outside):
            return
        middle = (inside.at + outside) / 2.0
        value = function(middle)
        if value is None:
            outside = middle
        else:
            before, inside = inside, Place(middle, value)
            yield inside


def _leads_away(before: Place, here: Place) -> bool:
    """Whether the value lies farther from 0 than before, or as far."""
    return before is not here and abs(here.value) >= abs(before.value)


def _may_reach(before: Place, inside: Place, outside: float) -> bool:
    """Whether a value that goes on changing as it did may come to 0 before a place; generously."""
    way = abs(inside.at - before.at)
    if way <= 0.0:
        return True
    slope = abs(inside.value - before.value) / way
    return abs(inside.value) <= _GENEROUS * slope * abs(outside - inside.at)


def _root(function: Function, first: Place, second: Place, places: list[Place], accuracy: float) -> Sought:
    """The root between two places; where the value jumps over 0, or there is none, no root."""
    from scipy.optimize import brentq  # imported here: starting the command line loads no numerics

    low, high = sorted((first, second), key=_at)
    for end in (low, high):
        if end.value == 0.0:
            return _sought(end.at, places)
    try:
        root = brentq(
            lambda at: _required(function, float(at)), low.at, high.at, xtol=accuracy, rtol=_RELATIVE
        )
    except LookupError:
        return _sought(None, places)
    return _sought(float(root), places)


def _required(function: Function, at: float) -> float:
    value = function(at)
    if value is None:
        raise LookupError(at)
    return value


def _turning(function: Function, places: list[Place], accuracies: Accuracies) -> Place | None:
    """Where the value comes nearest to 0 between the places met; None where an end comes nearest.

    It is sought exactly only where it comes near to 0, as a share of how much it changes there.
    """
    best = min(range(len(places)), key=lambda index: abs(places[index].value))
    if best in (0, len(places) - 1):
        return None
    around = places[best - 1 : best + 2]
    found = _nearest_to_zero(function, around, accuracies.told)
    changes = max(abs(place.value) for place in around) - abs(found.value)
    if abs(found.value) > _NEAR_ZERO * changes:
        return found if math.isfinite(found.value) else None
    found = _nearest_to_zero(function, around, accuracies.last)
    return found if math.isfinite(found.value) else None


def _nearest_to_zero(function: Function, around: list[Place], accuracy: float) -> Place:
    """The place between the outer two of three where the value comes nearest to 0; infinite where refused."""
    from scipy.optimize import minimize_scalar

    sign = 1.0 if around[1].value > 0.0 else -1.0

    def away(at: float) -> float:
        value = function(float(at))  # scipy hands over numbers of numpy
        return math.inf if value is None else sign * value

    ends = (around[0].at, around[2].at)
    found = minimize_scalar(away, bounds=ends, method="bounded", options={"xatol": accuracy})
    return Place(float(found.x), sign * float(found.fun))


def _sought(root: float | None, places: list[Place]) -> Sought:
    return Sought(
        root,
        min(places, key=lambda place: place.value),
        max(places, key=lambda place: place.value),
        min(places, key=_at),
        max(places, key=_at),
    )


def _apart(first: Place, second: Place) -> bool:
    """Whether 0 lies between two values or is one of them."""
    return (first.value <= 0.0) != (second.value <= 0.0) or second.value == 0.0


def _at(place: Place) -> float:
    return place.at
