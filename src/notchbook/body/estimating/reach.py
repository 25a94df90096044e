"""How far a population reaches: which bodies are estimated from it, which with a caution, which never."""

from dataclasses import replace
from typing import Final

from notchbook.body.estimating.source import in_short
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import Population
from notchbook.body.population.far_outside import ONE_IN_1000, ONE_IN_10000, farthest
from notchbook.errors import InputError

_NOBODY: Final = 2.0
"""So many times the distance that one body in 10,000 passes, nothing is carried on any more. Large adults
lie up to 1.8 times as far: nothing but growth in girth sets them apart. Own judgment."""


def refuse_beyond(measures: MeasureSet, people: Population) -> None:
    """InputError for a body that this population says nothing about.

    ``estimate-no-children``: one whose height only one adult in 10,000 falls short of, or one that is smaller
    than the mean in every length and girth and lies farther out than one body in 1,000. A child as tall as a
    small adult cannot be told. ``estimate-too-far-outside``: one out of all proportion. Own reasoning.
    """
    distance, count = people.distance(measures), _count(measures)
    is_far = distance > farthest(count, ONE_IN_1000)
    if _is_below_adults(measures, people) or (is_far and _is_small_all_over(measures, people)):
        raise InputError("estimate-no-children", name=measures.name)
    if distance > _NOBODY * farthest(count):
        raise InputError("estimate-too-far-outside", name=measures.name, people=in_short(people))


def cautions_for(measures: MeasureSet, people: Population) -> tuple[InputError, ...]:
    """Why the ± may not hold for this set; nothing for a body like those of the population."""
    short = in_short(people)
    found = []
    if measures.kind != "body":
        what = "dress form" if measures.kind == "form" else "size of a chart"
        found.append(InputError("estimate-of-no-body", what=what, people=short))
    if people.distance(measures) > farthest(_count(measures)):
        found.append(InputError("estimate-far-outside", name=measures.name, people=short))
    return tuple(found)


def _count(measures: MeasureSet) -> int:
    return max(len(measures.measure_keys()), 1)


def _is_below_adults(measures: MeasureSet, people: Population) -> bool:
    off = _off(measures, people, "height")
    return off is not None and off < -ONE_IN_10000


def _is_small_all_over(measures: MeasureSet, people: Population) -> bool:
    off = [
        found
        for key in measures.measure_keys()
        if measure_entry(key).is_length and (found := _off(measures, people, key)) is not None
    ]
    return bool(off) and max(off) < 0.0


def _off(measures: MeasureSet, people: Population, key: str) -> float | None:
    """How many standard deviations a value that was taken lies above the mean; None without one."""
    taken = measures.find(key)
    if taken is None or taken.status == "estimated":
        return None
    expected = people.expect(key, replace(measures, values={}))
    return None if expected is None else (taken.value - expected.value) / expected.sd
