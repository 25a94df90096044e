"""Two values that stand in each other's line.

Loads numpy; imported only where a set is held against a population.
"""

import math
from collections.abc import Iterator, Sequence
from typing import Final

from notchbook.body.doubts.likely_slip import within
from notchbook.body.doubts.slips.hypothesis import Hypothesis, Question
from notchbook.body.doubts.slips.slip_table import slip_table
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.together import Together
from notchbook.body.waist_drop import value_entry

FITS_IN_LINE: Final = 2.5758293035489004
"""Standard deviations within which 99 % of a normal distribution lie: further off in the other's line a value
is no better there."""

EACH_LINE_FURTHER: Final = 0.5
"""By this a pair is less likely for each line further apart (own judgment)."""


def exchanged(kept: Together, suspects: Sequence[Standing], question: Question) -> Iterator[Hypothesis]:
    """Two values in each other's line; neighbors are likelier the nearer their lines stand.

    Both must be usual there, and fit what all the others let expect where they are exchanged.
    """
    kind = slip_table()["exchanged"]
    keys = [key for key in kept.keys if value_entry(key).is_length and key not in question.sides]
    seen: set[frozenset[str]] = set()
    for one in suspects:
        for place, key in enumerate(keys):
            pair = frozenset((one.key, key))
            if one.key not in keys or len(pair) < 2 or pair in seen:
                continue
            seen.add(pair)
            changes = {one.key: kept.value_of(key), key: one.value}
            fit = _fit(kept, changes, question.drop)
            if fit is None or fit > FITS_IN_LINE:
                continue
            prior = kind.prior * EACH_LINE_FURTHER ** abs(keys.index(one.key) - place)
            weight = kept.gain_of(changes) + math.log(prior)
            yield Hypothesis(kind.name, kind.question, (one.key, key), tuple(changes.items()), weight, fit)


def _fit(kept: Together, changes: dict[str, float], drop: float) -> float | None:
    """How many SD the worse of the two lies off once they are exchanged; None where one is not usual."""
    if not all(within(value, value_entry(key).usual_at(drop)) for key, value in changes.items()):
        return None
    return max(abs(z) for z in kept.z_after(changes))
