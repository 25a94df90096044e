"""Estimating what is missing in a set from what was taken."""

import math
from collections.abc import Collection, Iterable
from functools import cache
from typing import Final

from notchbook.body.estimating.estimate import Estimate, Estimates, NotEstimable
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.population import Expected, Population, population
from notchbook.body.quantity_words import said_key
from notchbook.errors import InputError

SHARE: Final = 0.9
"""Nine bodies of ten lie within the ± of an estimate."""

_ONE_IN_10000: Final = 3.719
"""Standard deviations that one of 10,000 passes (normal distribution, one-sided)."""

_SURVEY: Final = "ANSUR II (2012)"

_STEPS: Final = {"mm": 1.0, "deg": 0.1, "kg": 0.1}
"""What estimates are rounded to: finer would pretend to a precision that they have not."""


def estimate(measures: MeasureSet, keys: Iterable[str] | None = None) -> Estimates:
    """Estimates for the measures of a set that nobody took; for all that are missing when ``keys`` is None.

    A measure that was taken is left as it is and said to be so. A side alone is no whole measure: the
    estimate is for both, and a side that was taken stays. Refused with InputError: a set that names no
    population (``estimate-no-population``), a set in which nothing was measured
    (``estimate-nothing-measured``), unknown keys.
    """
    people = population_of(measures)
    refuse_without_measures(measures)
    asked = missing_keys(measures) if keys is None else _in_order(keys)
    found: dict[str, Estimate] = {}
    left_out: list[NotEstimable] = []
    for key in asked:
        one = _estimate(people, key, measures)
        if isinstance(one, Estimate):
            found[key] = one
        else:
            left_out.append(one)
    return Estimates(found, tuple(left_out), people.words, cautions_for(measures, people))


def with_estimates(measures: MeasureSet, keys: Iterable[str] | None = None) -> MeasureSet:
    """The set with :func:`estimate` written into it as status ``estimated``; nothing measured is touched."""
    filled = measures
    for key, one in estimate(measures, keys).found.items():
        filled = filled.with_value(key, one.measure())
    return filled


def population_of(measures: MeasureSet) -> Population:
    """The population that the set names; InputError ``estimate-no-population`` when it names none."""
    if measures.population is None:
        raise InputError("estimate-no-population", name=measures.name)
    return population(measures.population)


def in_short(people: Population) -> str:
    """Who they are, short enough to stand beside a value: ``993 women of ANSUR II (2012)``."""
    return f"{people.size:,} {people.name} of {_SURVEY}"


def missing_keys(measures: MeasureSet) -> tuple[str, ...]:
    """The keys of the table that the set does not have for both sides, in its order."""
    return tuple(key for key in measure_table() if not measures.has(key))


def estimate_from(expected: Expected | None, key: str, people: str) -> Estimate | NotEstimable:
    """What a population expects as an estimate: rounded, its ± rounded up so that it holds no less."""
    if expected is None:
        return NotEstimable(key, InputError("estimate-not-known", measure=said_key(key), people=people))
    entry = measure_entry(key)
    low, high = entry.possible
    if not low <= expected.value <= high:
        given = [said_key(name) for name in expected.given[:3]]
        problem = InputError("estimate-not-possible", measure=said_key(key), given=given)
        return NotEstimable(key, problem)
    step = _STEPS[entry.unit]
    value = round(round(expected.value / step) * step, 6)
    error = math.ceil(expected.half_width(SHARE) / step - 1e-9) * step
    return Estimate(key, value, max(round(error, 6), step), expected.given, people)


def _estimate(people: Population, key: str, measures: MeasureSet) -> Estimate | NotEstimable:
    if _is_taken(measures, key):
        return NotEstimable(key, InputError("estimate-not-needed", measure=said_key(key)))
    return estimate_from(people.expect(key, measures), key, in_short(people))


def refuse_without_measures(measures: MeasureSet) -> None:
    """InputError ``estimate-nothing-measured`` where the set holds estimates alone, or nothing."""
    if not any(measure.status != "estimated" for measure in measures.values.values()):
        raise InputError("estimate-nothing-measured", name=measures.name)


def _is_taken(measures: MeasureSet, key: str) -> bool:
    sides = (measures.find(key, "left"), measures.find(key, "right"))
    return all(found is not None and found.status != "estimated" for found in sides)


def _in_order(keys: Iterable[str]) -> tuple[str, ...]:
    asked: Collection[str] = {measure_entry(key).key for key in keys}
    return tuple(key for key in measure_table() if key in asked)


def cautions_for(measures: MeasureSet, people: Population) -> tuple[InputError, ...]:
    """Why the ± may not hold for this set; nothing for a body like those of the population."""
    short = in_short(people)
    found = []
    if measures.kind != "body":
        what = "dress form" if measures.kind == "form" else "size of a chart"
        found.append(InputError("estimate-of-no-body", what=what, people=short))
    if people.distance(measures) > _farthest(len(measures.measure_keys())):
        found.append(InputError("estimate-far-outside", name=measures.name, people=short))
    return tuple(found)


@cache
def _farthest(count: int) -> float:
    """The distance (standard deviations) that one body in 10,000 passes with so many measures.

    The square of it is distributed as chi-square; its quantile after Wilson and Hilferty (1931).
    """
    spread = 2.0 / (9.0 * count)
    return math.sqrt(count * (1.0 - spread + _ONE_IN_10000 * math.sqrt(spread)) ** 3)
