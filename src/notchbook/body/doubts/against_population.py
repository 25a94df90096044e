"""What does not go together when a set is held against a population.

Loads numpy; imported only where a set is held against one.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.bad_values import bad_values
from notchbook.body.doubts.doubt import Doubt, DoubtLevel, Suspect
from notchbook.body.doubts.file_shift import BesideFile
from notchbook.body.doubts.slips.explanations import Explanation, explanations, log_sum, repairs_of
from notchbook.body.doubts.slips.hypotheses import hypotheses
from notchbook.body.doubts.slips.hypothesis import Hypothesis, Question
from notchbook.body.doubts.slips.likely_enough import LEAST_SHARE
from notchbook.body.doubts.slips.waist_taken import waist_taken
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.statistic_words import doubt_in_words
from notchbook.body.doubts.together import Together, together
from notchbook.body.measure_set import MeasureSet
from notchbook.body.population import Population
from notchbook.body.sides import plain_key
from notchbook.body.waist_drop import DROP_KEY, value_entry
from notchbook.units import LengthStyle, Unit

NEARLY_AS_WELL: Final = math.log(4.0)
"""A second value is named when it explains at least a quarter as well as the first (own judgment)."""

ASKED_AS_WAIST: Final = 0.25
"""From this share on another waist is asked about, though a slip of the digits may be likelier: the question
is soon answered, and a wrong waist is in all lengths (own judgment)."""

SURE: Final = 0.8
"""How likely what is offered must be for a value that is only looked at again: it is often right as it is
(own judgment)."""

PAIR_GAIN: Final = 16.0
"""Squared distance that leaving out two values must save where neither stands out alone: what hides behind
each other. About one record of 500 of the survey reaches it (computed on the rows at hand)."""

WAIST_GAIN: Final = 3.0
"""Logarithm of how much better a set must fit with another waist where no value stands out alone. About one
set of 200 drawn from the population itself reaches it, and two of three whose lengths go to the navel."""


@dataclass(frozen=True, slots=True)
class _Judge:
    """All that a doubt is made from."""

    whole: Together
    population: Population
    question: Question
    style: LengthStyle


def judged_together(population: Population, measures: MeasureSet, beside: BesideFile | None) -> Together:
    """The values of the set with their common distribution, as it is in the file that the set stands in."""
    whole = together(population, measures)
    return whole if beside is None else beside.placed(whole)


def population_doubts(
    population: Population,
    measures: MeasureSet,
    style: LengthStyle,
    unit: Unit,
    widened: Together | None = None,
    *,
    beside: BesideFile | None = None,
    may_exchange: bool = True,
) -> tuple[tuple[Doubt, ...], tuple[Standing, ...]]:
    """The doubts, the worst first, and every value against all others.

    ``style`` writes the words; ``unit`` is the one in which the lengths were typed. ``widened`` is the set as
    it is judged, where that is not as it stands. ``beside`` is what is off in the whole file that the set
    stands in. ``may_exchange``: two values may be said to stand in each other's line.
    """
    whole = widened or judged_together(population, measures, beside)
    standings = _by_text_key(measures, whole)
    if sum(key != DROP_KEY for key in whole.keys) < 2:
        return (), standings
    waist = None if beside and beside.moves_waist else waist_taken(measures, population.name)
    drop = measures.drop_below_natural
    question = Question(unit, waist, drop, _sides(measures, whole), may_exchange)
    judge = _Judge(whole, population, question, style)
    bad = bad_values(whole, population.look_again, question)
    doubts = [_doubt(judge, keys, [other for other in bad if other != keys]) for keys in bad]
    if not bad:
        doubts = _another_waist(judge) or _hidden_pair(judge)
    return tuple(doubts), standings


def _by_text_key(measures: MeasureSet, whole: Together) -> tuple[Standing, ...]:
    """Every value as it was given, left and right too, against what all other measures let expect."""
    standings = whole.standings()
    found = []
    for text_key, measure in measures.values.items():
        one = standings.get(plain_key(text_key))
        if one is not None and measure.status != "estimated":
            z = (measure.value - one.expected) / one.sd
            expected = _possible(one.key, one.expected)
            found.append(Standing(text_key, measure.value, expected, one.sd, z))
    return tuple(found)


def _sides(measures: MeasureSet, whole: Together) -> dict[str, tuple[tuple[str, float], ...]]:
    """The measures of which a side was given: key -> all values that were taken of it."""
    found: dict[str, tuple[tuple[str, float], ...]] = {}
    for text_key, measure in measures.values.items():
        key = plain_key(text_key)
        if key in whole.keys and measure.status != "estimated":
            found[key] = (*found.get(key, ()), (text_key, measure.value))
    return {key: given for key, given in found.items() if any("@" in text_key for text_key, _ in given)}


def _doubt(judge: _Judge, keys: tuple[str, ...], others: Sequence[tuple[str, ...]]) -> Doubt:
    """The doubt about these values, the ``others`` that are wrong as well left out."""
    out = [key for other in others for key in other if key not in keys]
    ranked = explanations(hypotheses(judge.whole, out, judge.question))
    named = next((one for one in ranked if set(one.keys) == set(keys)), ranked[0])
    total = log_sum(one.weight for one in ranked)
    told = [named, *_second(named, ranked)]
    suspects = tuple(
        suspect for one in told for suspect in _suspects(judge, one.keys, out, math.exp(one.weight - total))
    )
    standings = judge.whole.standings(out)
    worst = max(abs(judge.question.as_given(standings[key]).z) for key in named.keys)
    level: DoubtLevel = "stop" if worst >= judge.population.stop_for(len(judge.whole.keys)) else "check"
    repairs = repairs_of(told, total, LEAST_SHARE if level == "stop" else SURE)
    cause = _cause(named, total)
    return doubt_in_words(level, cause, suspects, repairs, judge.population, judge.style)


def _cause(named: Explanation, total: float) -> Hypothesis:
    """The cause that is asked about: another waist, where it is likely enough, goes before any repair."""
    waists = [one for one in named.causes if one.slip == "navel"]
    likely = [one for one in waists if math.exp(one.weight - total) >= ASKED_AS_WAIST]
    return likely[0] if likely else named.causes[0]


def _second(named: Explanation, ranked: Sequence[Explanation]) -> list[Explanation]:
    """The single value that would explain it nearly as well, if there is one."""
    second = next((one for one in ranked if not set(one.keys) & set(named.keys)), None)
    if second is None or len(second.keys) > 1 or len(named.keys) > 1:
        return []
    return [second] if second.weight > named.weight - NEARLY_AS_WELL else []


def _suspects(judge: _Judge, keys: Sequence[str], out: Sequence[str], share: float) -> list[Suspect]:
    """The values with what the rest lets expect, without all of them."""
    standings = judge.whole.standings([*out, *keys])
    found = []
    for key in keys:
        one = judge.question.as_given(standings[key])
        expected, low, high = (_possible(key, value) for value in (one.expected, one.low, one.high))
        found.append(Suspect(one.key, one.value, expected, low, high, one.z, share))
    return found


def _possible(key: str, expected: float) -> float:
    """What is expected, as far as any body has it: far-off values beside it let expect the impossible."""
    low, high = value_entry(key).possible
    return min(max(expected, low), high)


def _another_waist(judge: _Judge) -> list[Doubt]:
    """Lengths that were taken to another waist together, where none of them stands out alone."""
    waist = judge.question.waist
    best: tuple[float, tuple[str, ...]] = (WAIST_GAIN, ())
    for group in waist.groups if waist else ():
        keys = tuple(key for key in judge.whole.keys if key in group)
        if waist and len(keys) > 1:
            directions = {key: waist.directions[key] for key in keys}
            best = max(best, (judge.whole.gain_of_shift(directions, waist.size, waist.spread), keys))
    if not best[1] or waist is None:
        return []
    cause = Hypothesis("navel", waist.question, best[1], (), best[0])
    suspects = _suspects(judge, best[1], (), 1.0)
    return [doubt_in_words("check", cause, suspects, (), judge.population, judge.style)]


def _hidden_pair(judge: _Judge) -> list[Doubt]:
    """Two values that hide behind each other: neither stands out, but without both the rest agrees."""
    found = judge.whole.best_pair()
    if found is None or found[1] < PAIR_GAIN:
        return []
    suspects = _suspects(judge, found[0], (), 0.5)
    if max(abs(one.z) for one in suspects) < judge.population.look_again:
        return []
    cause = Hypothesis("hidden-pair", "", found[0], (), 0.0)
    return [doubt_in_words("check", cause, suspects, (), judge.population, judge.style)]
