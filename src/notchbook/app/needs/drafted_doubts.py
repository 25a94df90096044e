"""What a draft has to ask about its measures: what a sound body may well have is not asked.

The usual ranges are those of adults. Held against them every sound measure of a child is an alarm, and the
one that is a slip drowns among them.
"""

from dataclasses import dataclass
from typing import Final

from notchbook.body import Doubt, MeasureSet, check_consistent, measure_entry
from notchbook.body.doubts.child import is_child
from notchbook.body.quantity_words import said_key
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.recipe import Replay
from notchbook.units import LengthStyle

_UNUSUAL: Final = "measure-unusual"

_SEVERAL: Final = 2
"""So many values below those of adults, in a set that says of nobody that it is hers or his, may be a child's
(own judgment); one alone is a slip."""


@dataclass(frozen=True, slots=True)
class DraftedDoubts:
    """What is to be asked about the measures of a draft; ``note`` stands for the ranges that were left out,
    None where none were."""

    doubts: tuple[Doubt, ...]
    note: InputError | None = None


def doubts_of_draft(run: Replay, style: LengthStyle) -> DraftedDoubts:
    """The doubts about the measures of a run, with one note in place of the alarms of adults on a child."""
    measures = run.measures
    doubts = check_consistent(measures, style)
    unusual = tuple(doubt for doubt in doubts if doubt.code == _UNUSUAL)
    if not unusual:
        return DraftedDoubts(doubts)
    rest = tuple(doubt for doubt in doubts if doubt.code != _UNUSUAL)
    if _is_for_child(run):
        return DraftedDoubts(rest, InputError("ranges-of-adults-left-out", where=""))
    if measures.population is None and len(unusual) >= _SEVERAL and _are_small(unusual, measures):
        said = tuple(said_key(plain_key(doubt.keys[0]), None) for doubt in unusual)
        return DraftedDoubts(rest, InputError("smaller-than-adults", measures=said, where=""))
    return DraftedDoubts(doubts)


def _is_for_child(run: Replay) -> bool:
    """Whether a block was drafted for a child, or the measures are a child's."""
    stated = any(record.parameters.get("wearer") == "children" for record in run.recipe.steps)
    return stated or is_child(run.measures)


def _are_small(unusual: tuple[Doubt, ...], measures: MeasureSet) -> bool:
    return all(
        measures.values[key].value < measure_entry(plain_key(key)).usual_at(measures.drop_below_natural)[0]
        for doubt in unusual
        for key in doubt.keys
    )
