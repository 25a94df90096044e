"""What looking over cannot see: how large a slip would have to be."""

from collections.abc import Iterable, Mapping
from typing import Final

from notchbook.body.doubts.looked_over import Unseen
from notchbook.body.doubts.standing import Standing
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.body.noticed_slip import noticed_slip
from notchbook.body.sides import plain_key

ALWAYS_TWICE: Final = frozenset({"bust_girth", "waist_girth", "hip_girth"})
"""Statistics cannot see a slip of 5 cm in these (computed from ANSUR II), so they are taken twice."""

TO_THE_WAIST: Final = ("back_waist_length", "front_waist_length", "center_front_length")
"""Of 100 women whose back and front lengths go to the navel both, about 50 are asked about (computed by
drawing them from the population, with height, bust, waist and hip beside; 58 with twelve measures)."""

LARGE_SLIP: Final = 40.0
"""mm; a measure in which a slip of less than this stays unseen is taken twice as well (own judgment)."""


def unseen_slips(
    measures: MeasureSet, standings: Mapping[str, Standing], look_again: float | None
) -> tuple[Unseen, ...]:
    """For each girth and length that was taken, what would go unnoticed; in the order of the table."""
    found = []
    for text_key, measure in measures.values.items():
        entry = measure_entry(plain_key(text_key))
        if measure.status == "estimated" or not entry.is_length:
            continue
        standing = standings.get(text_key)
        slip = None
        if standing is not None and look_again is not None:
            slip = noticed_slip(look_again) * standing.sd
        readings = max(1, len(measure.readings))
        found.append(Unseen(text_key, slip, readings, readings < 2 and _wants_two(entry, slip)))
    return tuple(found)


def passes_to_one_waist(measures: MeasureSet) -> bool:
    """Whether several lengths of the trunk go to the waist: taken to the navel together, they still agree."""
    return sum(measures.find(key) is not None for key in TO_THE_WAIST) > 1


def worst_first(unseen: Iterable[Unseen]) -> list[Unseen]:
    """Bust, waist and hip before all others, the largest slip first."""
    return sorted(unseen, key=lambda one: (plain_key(one.key) not in ALWAYS_TWICE, -(one.slip or 0.0)))


def _wants_two(entry: MeasureEntry, slip: float | None) -> bool:
    return entry.key in ALWAYS_TWICE or entry.twice or (slip is not None and slip > LARGE_SLIP)
