"""What looking over cannot see: how large a slip would have to be."""

import math
from collections.abc import Mapping
from functools import cache
from statistics import NormalDist
from typing import Final

from notchbook.body.doubts.looked_over import Unseen
from notchbook.body.doubts.standing import Standing
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import MeasureEntry, measure_entry

ALWAYS_TWICE: Final = frozenset({"bust_girth", "waist_girth", "hip_girth"})
"""Statistics cannot see a slip of 5 cm in these (computed from ANSUR II), so they are taken twice."""

LARGE_SLIP: Final = 40.0
"""mm; a measure in which a slip of less than this stays unseen is taken twice as well (own judgment)."""

_NORMAL: Final = NormalDist()


def unseen_slips(
    measures: MeasureSet, standings: Mapping[str, Standing], look_again: float | None
) -> tuple[Unseen, ...]:
    """For each girth and length that was taken, what would go unnoticed; in the order of the table."""
    found = []
    for text_key, measure in measures.values.items():
        entry = measure_entry(text_key.partition("@")[0])
        if measure.status == "estimated" or not entry.is_length:
            continue
        standing = standings.get(text_key)
        slip = None
        if standing is not None and look_again is not None:
            slip = noticed_at(look_again) * standing.sd
        readings = max(1, len(measure.readings))
        found.append(Unseen(text_key, slip, readings, readings < 2 and _wants_two(entry, slip)))
    return tuple(found)


def _wants_two(entry: MeasureEntry, slip: float | None) -> bool:
    return entry.key in ALWAYS_TWICE or entry.twice or (slip is not None and slip > LARGE_SLIP)


@cache
def noticed_at(look_again: float, chance: float = 0.5) -> float:
    """The slip, in SD of the value given all others, that lifts its |z| over ``look_again`` with this chance.

    The value without the slip is normally distributed, so it may lie on either side.
    """
    low, high = 0.0, look_again + 10.0
    while high - low > 1e-9:
        middle = (low + high) / 2.0
        seen = _NORMAL.cdf(middle - look_again) + _NORMAL.cdf(-middle - look_again)
        low, high = (middle, high) if seen < chance else (low, middle)
    return high if math.isfinite(high) else low
