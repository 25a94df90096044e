"""A neighboring measure that was taken in place of the one whose line it stands in.

Loads numpy; imported only where a set is held against a population.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from notchbook.body.doubts.doubt import Doubt, Suspect
from notchbook.body.doubts.standing import NINE_OF_TEN
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.population import Population
from notchbook.body.quantity_words import said_key
from notchbook.body.sides import plain_key
from notchbook.errors import InputError

NEIGHBORS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        "neck_girth": ("neck_base_girth",),
        "neck_base_girth": ("neck_girth",),
        "hip_girth": ("top_hip_girth",),
        "top_hip_girth": ("hip_girth", "waist_girth"),
        "bust_girth": ("upper_bust_girth", "under_bust_girth"),
        "upper_bust_girth": ("bust_girth",),
        "under_bust_girth": ("bust_girth", "upper_bust_girth"),
        "arm_length": ("nape_to_wrist",),
        "nape_to_wrist": ("arm_length",),
    }
)
"""Measure -> those that are taken for it by mistake, since they lie near or begin alike (common practice, no
source)."""


def asking_for_neighbors(
    doubts: Sequence[Doubt], measures: MeasureSet, population: Population
) -> tuple[Doubt, ...]:
    """The doubts about one value, asking about a neighbor that it would fit."""
    return tuple(_asking(doubt, measures, population) for doubt in doubts)


def _asking(doubt: Doubt, measures: MeasureSet, population: Population) -> Doubt:
    if len(doubt.suspects) != 1 or "hint" not in doubt.problem.facts:
        return doubt
    suspect = doubt.suspects[0]
    key = plain_key(suspect.key)
    taken = [other for other in NEIGHBORS.get(key, ()) if _fits(suspect, key, other, measures, population)]
    if not taken:
        return doubt
    question = f"Was the {said_key(taken[0])} taken? "
    facts = {**doubt.problem.facts, "hint": f"{doubt.problem.facts['hint']}{question}"}
    return replace(doubt, problem=InputError(doubt.code, **facts))


def _fits(suspect: Suspect, key: str, other: str, measures: MeasureSet, population: Population) -> bool:
    """Whether the value is what the neighbor has, or what all but these two let expect of it."""
    found = measures.find(other)
    if found is not None and found.status != "estimated":
        return abs(suspect.value - found.value) <= measure_entry(other).repeat
    expected = population.expect(other, measures, without={key})
    return expected is not None and abs(suspect.value - expected.value) <= NINE_OF_TEN * expected.sd
