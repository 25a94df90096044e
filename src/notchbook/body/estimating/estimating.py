"""Estimating what is missing in a set from what was taken."""

import math
from collections.abc import Collection, Iterable
from typing import Final

from notchbook.body.doubts.child import is_child
from notchbook.body.estimating.estimate import Estimate, Estimates, NotEstimable
from notchbook.body.estimating.reach import cautions_for, refuse_beyond
from notchbook.body.estimating.source import in_short, source_of
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.population import Expected, Population, population
from notchbook.body.quantity_words import said_key
from notchbook.errors import InputError

SHARE: Final = 0.9
"""Nine bodies of ten lie within the ± of an estimate."""

_STEPS: Final = {"mm": 1.0, "deg": 0.1, "kg": 0.1}
"""What estimates are rounded to: finer would pretend to a precision that they have not."""


def estimate(measures: MeasureSet, keys: Iterable[str] | None = None) -> Estimates:
    """Estimates for the measures of a set that nobody took; for all that are missing when ``keys`` is None.

    A measure that was taken is left as it is and said to be so. A side alone is no whole measure: the
    estimate is for both, and a side that was taken stays. Refused with InputError: a set that names no
    population (``estimate-no-population``), a set in which nothing was measured
    (``estimate-nothing-measured``), a child (``estimate-no-children``), a body far outside
    of the population (``estimate-too-far-outside``), unknown keys.
    """
    people = people_for(measures)
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
    """The population that the set names; InputError ``estimate-no-population`` when it names none,
    ``estimate-no-children`` where no name would help."""
    if measures.population is None:
        if is_child(measures):
            raise InputError("estimate-no-children", name=measures.name)
        raise InputError("estimate-no-population", name=measures.name)
    return population(measures.population)


def people_for(measures: MeasureSet) -> Population:
    """The population from which the set can be estimated; refused as :func:`estimate`."""
    people = population_of(measures)
    refuse_without_measures(measures)
    refuse_beyond(measures, people)
    return people


def missing_keys(measures: MeasureSet) -> tuple[str, ...]:
    """The keys of the table that the set does not have for both sides, in its order: those that are asked
    of such a set."""
    kind, people = measures.kind, measures.population
    return tuple(
        key
        for key, entry in measure_table().items()
        if not measures.has(key) and entry.is_asked(kind, people)
    )


def estimate_from(expected: Expected | None, key: str, people: Population) -> Estimate | NotEstimable:
    """What a population expects as an estimate: rounded, its ± rounded up so that it holds no less."""
    said = said_key(key, people.name)
    if expected is None:
        return NotEstimable(key, InputError("estimate-not-known", measure=said, people=in_short(people)))
    entry = measure_entry(key)
    low, high = entry.possible
    if not low <= expected.value <= high:
        given = [said_key(name, people.name) for name in expected.given[:3]]
        return NotEstimable(key, InputError("estimate-not-possible", measure=said, given=given))
    step = _STEPS[entry.unit]
    value = round(round(expected.value / step) * step, 6)
    error = math.ceil(expected.half_width(SHARE) / step - 1e-9) * step
    source = source_of(people, key)
    return Estimate(key, value, max(round(error, 6), step), expected.given, source, people.name)


def _estimate(people: Population, key: str, measures: MeasureSet) -> Estimate | NotEstimable:
    if _is_taken(measures, key):
        return NotEstimable(key, InputError("estimate-not-needed", measure=said_key(key, people.name)))
    if measures.kind == "form" and not measure_entry(key).on_form:
        return NotEstimable(key, InputError("estimate-not-on-form", measure=said_key(key, people.name)))
    return estimate_from(people.expect(key, measures), key, people)


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
