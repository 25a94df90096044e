"""What would explain that the measures of a body do not go together: one wrong value, or another waist."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np

from notchbook.blocks.upper_measures.agreement_table import Judge, judge, pairs
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures
from notchbook.body import PopulationName, measure_entry
from notchbook.body.doubts.slips.waist_taken import NAVEL_DROP
from notchbook.body.doubts.together import Together

FRONT: Final = ("front_waist_length", "center_front_length")
BACK: Final = ("back_waist_length",)

WAIST_LENGTHS: Final = (*BACK, *FRONT)
"""The lengths from neck and nape down to the waist."""

WAIST_GROUPS: Final = (BACK, FRONT, *((key,) for key in FRONT), WAIST_LENGTHS)
"""Lengths that are taken in one go, so that one wrong waist is in all of them."""

SURE_PENALTY: Final = 3.0
"""Logarithm of how much less likely a slip is in a value that was read twice (own judgment); to another waist
it can have been read twice."""

KNOWN_DROP_SPREAD: Final = 8.0
"""mm, SD; how surely a drop that was measured is known (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Cause:
    """Measures that would be wrong together, and the logarithm of how much better the rest agrees then.

    ``is_waist``: they went to another waist; ``lower`` tells whether to a lower one.
    """

    keys: tuple[str, ...]
    gain: float
    is_waist: bool = False
    lower: bool = False


def causes(measures: UpperMeasures, body: Together, population: PopulationName) -> list[Cause]:
    """All that could explain a disagreement of this body, the best first."""
    figures = judge(population)
    found = [*_slips(measures, body, figures), *_waists(measures, body, population, figures)]
    return sorted(found, key=lambda one: -one.gain)


def _slips(measures: UpperMeasures, body: Together, figures: Judge) -> Iterator[Cause]:
    """One value wrong by an amount that nobody knows."""
    pull, own = body.precision @ body.off, np.diag(body.precision)
    judged = {key for pair in pairs() for key in (pair.first, pair.second)}
    for place, key in enumerate(body.keys):
        if key in judged:
            spread = _slip_size(key, figures) ** 2
            share = 1.0 + spread * float(own[place])
            gain = 0.5 * (spread * float(pull[place]) ** 2 / share - float(np.log(share)))
            yield Cause((key,), gain - (SURE_PENALTY if key in measures.sure else 0.0))


def _slip_size(key: str, figures: Judge) -> float:
    if key == "height":
        return figures.slip_height
    kind = measure_entry(key).kind
    if kind == "angle":
        return figures.slip_angle
    return figures.slip_girth if kind == "girth" else figures.slip


def _waists(
    measures: UpperMeasures, body: Together, population: PopulationName, figures: Judge
) -> Iterator[Cause]:
    """Lengths that went to another waist than the one that the set names."""
    size, spread = NAVEL_DROP[population]
    if measures.waist_level != "natural":
        spread = KNOWN_DROP_SPREAD if measures.waist_drop else spread
        size = -(measures.waist_drop or size)
    told: set[tuple[str, ...]] = set()
    for group in WAIST_GROUPS:
        keys = tuple(key for key in group if key in body.keys)
        if not keys or keys in told:
            continue
        told.add(keys)
        gain = body.gain_of_shift(dict.fromkeys(keys, 1.0), size, spread)
        yield Cause(keys, gain + figures.waist, is_waist=True, lower=size > 0)
