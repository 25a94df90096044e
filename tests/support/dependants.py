"""Which steps hang on which, told by the ledger alone; and which are lost when one is taken out."""

from __future__ import annotations

from collections.abc import Iterable

from notchbook.errors import NameLost
from notchbook.pattern.names import split_side
from notchbook.recipe import Replay, StepRecord, definition, names_in, remove_step, replay
from notchbook.recipe.track import read_parameters


def dependants(run: Replay, step: str) -> tuple[str, ...]:
    """The later steps that refer to a name that the step made, or to one that such a step made, and so on.

    A name that begins with a made name is one of its parts and hangs on it too.
    """
    made = {state.record.id: set(state.entry.created) for state in run.states}
    lost, gone = [], set(made[step])
    records = [state.record for state in run.states]
    after = records[[record.id for record in records].index(step) + 1 :]
    for record in after:
        if any(_stands_on(name, gone) for name in _names(record)):
            lost.append(record.id)
            gone |= made[record.id]
    return tuple(lost)


def lost_without(run: Replay, step: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is lost when the step is removed, one after another as they are told and taken out too; and the
    steps that stopped for another reason than a name."""
    lost: list[str] = []
    refused: list[str] = []
    recipe = remove_step(run.recipe, step)
    now = replay(recipe, run.measures, run)
    while now.suspended is not None:
        is_lost = isinstance(now.suspended.error, NameLost)
        (lost if is_lost else refused).append(now.suspended.step)
        now = replay(remove_step(now.recipe, now.suspended.step), run.measures, now)
    return tuple(lost), tuple(refused)


def wanted_without(run: Replay, step: str, refused: Iterable[str]) -> frozenset[str]:
    """What must be lost when the step is removed, and nothing else: its dependants, and those of what is then
    refused for another reason (a sleeve without its bodice)."""
    refused = tuple(refused)
    found = {one for gone in (step, *refused) for one in dependants(run, gone)}
    return frozenset(found - set(refused))


def _names(record: StepRecord) -> tuple[str, ...]:
    return names_in(read_parameters(definition(record.operation), record))


def _stands_on(name: str, gone: Iterable[str]) -> bool:
    base, _ = split_side(name)
    known = {split_side(one)[0] for one in gone}
    words = base.split("/")
    return any("/".join(words[:count]) in known for count in range(1, len(words) + 1))
