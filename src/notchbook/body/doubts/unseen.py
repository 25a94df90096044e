"""What looking over cannot see: how large a slip would have to be."""

import math
from collections.abc import Iterable, Mapping
from functools import cache
from statistics import NormalDist
from typing import Final

from notchbook.body.doubts.looked_over import Unseen
from notchbook.body.doubts.standing import Standing
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import MeasureEntry, measure_entry

ALWAYS_TWICE: Final = frozenset({"bust_girth", "waist_girth", "hip_girth"})
"""Statistics cannot see a slip of 5 cm in these (computed from ANSUR II), so they are taken twice."""

TO_THE_WAIST: Final = ("back_waist_length", "front_waist_length", "center_front_length")
"""Of 100 women whose back and front lengths go to the navel both, about 50 are asked about (computed by
drawing them from the population, with height, bust, waist and hip beside; 58 with twelve measures)."""

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


def passes_to_one_waist(measures: MeasureSet) -> bool:
    """Whether several lengths of the trunk go to the waist: taken to the navel together, they still agree."""
    return sum(measures.find(key) is not None for key in TO_THE_WAIST) > 1


def worst_first(unseen: Iterable[Unseen]) -> list[Unseen]:
    """Bust, waist and hip before all others, the largest slip first."""
    return sorted(unseen, key=lambda one: (one.key.partition("@")[0] not in ALWAYS_TWICE, -(one.slip or 0.0)))


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
