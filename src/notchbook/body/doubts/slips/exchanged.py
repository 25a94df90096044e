"""Two values that stand in each other's line.

Loads numpy; imported only where a set is held against a population.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from notchbook.body.doubts.slips.hypothesis import Hypothesis, Question
from notchbook.body.doubts.slips.slip_table import slip_table
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.together import Together
from notchbook.body.measure_table import measure_entry

FITS_AT_ALL: Final = 6.0
"""Standard deviations beyond which a value does not fit the other's line. Wide, since what is expected there
rests on the wrong value of the pair as well."""

EACH_LINE_FURTHER: Final = 0.5
"""By this a pair is less likely for each line further apart (own judgment)."""


def exchanged(
    kept: Together, standings: Mapping[str, Standing], suspects: Sequence[Standing], question: Question
) -> Iterator[Hypothesis]:
    """Two values in each other's line; neighbors are likelier the nearer their lines stand."""
    kind = slip_table()["exchanged"]
    keys = [key for key in standings if measure_entry(key).is_length and key not in question.only_sides]
    seen: set[frozenset[str]] = set()
    for one in suspects:
        if one.key not in keys:
            continue
        for place, key in enumerate(keys):
            other = standings[key]
            pair = frozenset((one.key, key))
            if len(pair) < 2 or pair in seen or not _fits(other.value, one):
                continue
            seen.add(pair)
            prior = kind.prior * EACH_LINE_FURTHER ** abs(keys.index(one.key) - place)
            changes = {one.key: other.value, key: one.value}
            weight = kept.gain_of(changes) + math.log(prior)
            yield Hypothesis(kind.name, kind.question, (one.key, key), tuple(changes.items()), weight)


def _fits(value: float, one: Standing) -> bool:
    """Whether the value may stand in this line at all."""
    return abs(value - one.expected) < FITS_AT_ALL * one.sd
