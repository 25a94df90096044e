"""Naming what does not go together, by what a population lets expect: the pair, and what would explain it.

Loads the numbers of the population.
"""

import math
from collections.abc import Sequence
from typing import Final

from notchbook.blocks.upper_measures.agreement_table import Pair, judge, pairs
from notchbook.blocks.upper_measures.causes import WAIST_LENGTHS, Cause, causes
from notchbook.blocks.upper_measures.common_body import common_body
from notchbook.blocks.upper_measures.disagreement import Disagreement, Kind
from notchbook.blocks.upper_measures.read_again import read_again
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures
from notchbook.blocks.upper_measures.usual_dart import DART_KEYS, FOUR, dart_change
from notchbook.body.doubts.together import Together

MOST_NAMED: Final = 3
"""So many disagreements are named at most: a body with more is another body, or in another unit."""

NEARLY_AS_WELL: Final = math.log(4.0)
"""A second measure is named when it explains at least a quarter as well (own judgment)."""


def named_disagreements(measures: UpperMeasures) -> list[Disagreement]:
    """The causes that make the taken measures agree, the likeliest first, each named as a pair."""
    whole = common_body(measures)
    if whole is None or measures.population is None:
        return []
    asks_from = judge(measures.population).asks_from
    found: list[Disagreement] = []
    out: set[str] = set()
    while len(found) < MOST_NAMED:
        rest = whole.keeping(out) if out else whole
        if len(rest.keys) < 2:
            break
        ranked = causes(measures, rest, measures.population)
        named = next((one for one in ranked if _can_be_named(one, rest)), None)
        if named is None or named.gain < asks_from:
            break
        found.append(_disagreement(measures, rest, named, ranked))
        out |= set(named.keys)
    return found


def _can_be_named(cause: Cause, body: Together) -> bool:
    """Whether one of the pairs speaks of it with a partner that is not in doubt itself."""
    return bool(_partners(cause, body))


def _partners(cause: Cause, body: Together) -> list[tuple[Pair, str]]:
    """The pairs of a measure of the cause with one that was taken and is not of the cause.

    Of another waist, first of all those with another length to the waist.
    """
    found = [
        (pair, key)
        for pair in pairs()
        for key in cause.keys
        if key in pair and pair.other(key) in body.keys and pair.other(key) not in cause.keys
    ]
    lengths = [(pair, key) for pair, key in found if pair.other(key) in WAIST_LENGTHS]
    return lengths if cause.is_waist and lengths else found


def _disagreement(
    measures: UpperMeasures, body: Together, cause: Cause, ranked: Sequence[Cause]
) -> Disagreement:
    partners = _partners(cause, body)
    # Of lengths to two waists the pair that stands first in the table is the one that she knows best.
    pair, key = partners[0] if cause.is_waist else max(partners, key=lambda one: _strength(body, *one))
    standing = body.standings(cause.keys)[key]
    other = next((one for one in ranked if not set(one.keys) & set(cause.keys)), None)
    nearly = other is not None and other.gain >= cause.gain - NEARLY_AS_WELL
    second = other.keys[0] if other is not None and nearly else None
    changed = measures.with_value(key, standing.expected)
    return Disagreement(
        kind=_kind(cause, pair.other(key)),
        pair=pair,
        key=key,
        keys=cause.keys,
        given=measures.taken[key],
        explaining=standing.expected,
        read_again=read_again(measures, key, pair),
        deviations=abs(standing.z),
        other=second,
        lower=cause.lower,
        dart=dart_change(measures, changed) if key in DART_KEYS else None,
    )


def _kind(cause: Cause, partner: str) -> Kind:
    if not cause.is_waist:
        return "pair"
    return "two-waists" if partner in WAIST_LENGTHS else "other-waist"


def _strength(body: Together, pair: Pair, key: str) -> float:
    """How far the measure lies off what its partner lets expect, beside the girths and the height; SD."""
    seen = {*FOUR, pair.first, pair.second}
    return abs(body.keeping([one for one in body.keys if one not in seen]).standings()[key].z)
