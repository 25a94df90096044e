"""What could have gone wrong with a set whose values do not fit each other, and how likely each of it is.

Loads numpy; imported only where a set is held against a population.
"""

import math
from collections.abc import Collection, Iterator
from typing import Final

from notchbook.body.doubts.slips.another_waist import group_to_another_waist, to_another_waist
from notchbook.body.doubts.slips.exchanged import exchanged
from notchbook.body.doubts.slips.hypothesis import Hypothesis, Question
from notchbook.body.doubts.slips.single import single_slips
from notchbook.body.doubts.slips.slip_table import ANYTHING_ELSE, TAKEN_ELSEWHERE, slip_table
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.together import Together
from notchbook.body.measure_table import MeasureEntry
from notchbook.body.waist_drop import value_entry
from notchbook.units import Unit

MOST_SUSPECTS: Final = 6
"""Values that are looked at; the others fit better by far."""

FAR_LESS_LIKELY: Final = 16.0
"""Difference of squared deviations beyond which a value or a repair needs no look: e^8 times less likely."""

ELSEWHERE: Final = 30.0
"""mm: SD of a length or girth that was taken at a wrong place (common practice, no source)."""

_NORMAL: Final = math.sqrt(2.0 * math.pi)


def hypotheses(set_together: Together, out: Collection[str], question: Question) -> tuple[Hypothesis, ...]:
    """Everything that would explain the values that are not left ``out``, the likeliest first."""
    waist = question.waist
    standings = {key: one for key, one in set_together.standings(out).items() if key not in out}
    suspects = _suspects(standings.values(), question)
    found: list[Hypothesis] = []
    for one in suspects:
        for given in question.each_given(one):
            found.extend(_of_one_value(one.key, given, question.unit))
        if waist is not None:
            found.extend(to_another_waist(one, waist))
    kept = set_together.keeping(out)
    if question.may_exchange:
        found.extend(exchanged(kept, suspects[:3], question))
    if waist is not None:
        found.extend(group_to_another_waist(kept, waist))
    return tuple(sorted(found, key=lambda one: -one.weight))


def _suspects(standings: Collection[Standing], question: Question) -> list[Standing]:
    """The values without which the rest agrees nearly as well as without the worst, that one first."""
    off = {one.key: abs(question.as_given(one).z) for one in standings}
    ranked = sorted(standings, key=lambda one: -off[one.key])[:MOST_SUSPECTS]
    return [one for one in ranked if off[one.key] ** 2 > off[ranked[0].key] ** 2 - FAR_LESS_LIKELY]


def _of_one_value(key: str, one: Standing, unit: Unit) -> Iterator[Hypothesis]:
    """``one`` is the value as it was given; ``key`` is that of the measure, without side."""
    entry = value_entry(key)
    better = one.z**2 / 2.0
    for candidate in single_slips(entry, one.value, unit):
        z = (candidate.value - one.expected) / one.sd
        if z**2 > FAR_LESS_LIKELY:
            continue
        yield Hypothesis(
            candidate.slip,
            candidate.question,
            (key,),
            ((one.key, candidate.value),),
            better - z**2 / 2.0 + math.log(candidate.prior),
            abs(z),
        )
    yield Hypothesis(TAKEN_ELSEWHERE, "", (key,), (), better + _taken_elsewhere(entry, one))
    # Anything else: the value could be any of a body.
    width = entry.possible[1] - entry.possible[0]
    prior = slip_table()[ANYTHING_ELSE].prior * one.sd * _NORMAL / width
    yield Hypothesis(ANYTHING_ELSE, "", (key,), (), better + math.log(prior))


def _taken_elsewhere(entry: MeasureEntry, one: Standing) -> float:
    """Logarithm of how well it explains a value that the tape lay a little off (normal, SD as below)."""
    off = ELSEWHERE if entry.is_length else 3.0 * entry.repeat
    spread = math.hypot(one.sd, off)
    z = one.z * one.sd / spread
    return math.log(slip_table()[TAKEN_ELSEWHERE].prior * one.sd / spread) - z**2 / 2.0
