"""One style against another: what differs in their steps and measures, and by how much on each edge."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from notchbook.app.comparing.length_changes import LEAST_CHANGE, LengthChange, edge_changes, girth_changes
from notchbook.app.why.explaining_names import line_moved
from notchbook.body import Measure
from notchbook.errors import InputError
from notchbook.recipe import Recipe, Replay, StepRecord
from notchbook.recipe.estimated_reads import keys_read
from notchbook.recipe.parameter_paths import SIGN
from notchbook.recipe.parameters import read_amount


@dataclass(frozen=True, slots=True)
class FieldChange:
    """A field of a step that holds something else; None where it is not there."""

    step: str
    title: str
    path: str
    before: Any
    after: Any


@dataclass(frozen=True, slots=True)
class MeasureChange:
    """A measure that the steps read and that differs between the two bodies; None where one lacks it."""

    key: str
    before: Measure | None
    after: Measure | None


@dataclass(frozen=True, slots=True)
class EdgeMoved:
    """An edge that both have, and how far it lies from where it lay, mm, in the frame of its piece."""

    name: str
    moved: float


@dataclass(frozen=True, slots=True)
class StyleDifference:
    """What the second style has otherwise than the first; ``gone`` and ``new`` are edges of one only."""

    added: tuple[StepRecord, ...]
    removed: tuple[StepRecord, ...]
    reordered: tuple[StepRecord, ...]
    fields: tuple[FieldChange, ...]
    measures: tuple[MeasureChange, ...]
    girths: tuple[LengthChange, ...]
    lengths: tuple[LengthChange, ...]
    moved: tuple[EdgeMoved, ...]
    gone: tuple[str, ...]
    new: tuple[str, ...]

    @property
    def is_none(self) -> bool:
        """Whether they are the same."""
        parts = (self.added, self.removed, self.reordered, self.fields, self.measures)
        return not any((*parts, self.lengths, self.moved, self.gone, self.new))


def compare_styles(first: Replay, second: Replay) -> StyleDifference:
    """What the second run has otherwise than the first; steps are the same where their ids are."""
    old = {record.id: record for record in first.recipe.ordered()}
    new = {record.id: record for record in second.recipe.ordered()}
    before, after = first.pattern, second.pattern
    return StyleDifference(
        added=tuple(record for key, record in new.items() if key not in old),
        removed=tuple(record for key, record in old.items() if key not in new),
        reordered=_reordered(first.recipe, second.recipe),
        fields=tuple(change for key in new if key in old for change in _fields(old[key], new[key])),
        measures=tuple(_measures(first, second)),
        girths=girth_changes(first, second),
        lengths=edge_changes(before, after),
        moved=_moved(first, second),
        gone=tuple(name for name in before.edges if name not in after.edges),
        new=tuple(name for name in after.edges if name not in before.edges),
    )


def _moved(first: Replay, second: Replay) -> tuple[EdgeMoved, ...]:
    ways = ((name, line_moved(first.pattern, second.pattern, name)) for name in first.pattern.edges)
    found = [EdgeMoved(name, way) for name, way in ways if way is not None and way > LEAST_CHANGE]
    return tuple(sorted(found, key=lambda one: -one.moved))


_FACTS: Final = ("side", "title", "note")
"""What a step says of itself beside its parameters."""


def _fields(old: StepRecord, new: StepRecord) -> Iterator[FieldChange]:
    title = new.title or new.operation
    before, after = dict(_leaves(old.parameters, ())), dict(_leaves(new.parameters, ()))
    for fact in _FACTS:
        before[fact], after[fact] = getattr(old, fact), getattr(new, fact)
    for path in dict.fromkeys((*before, *after)):
        if _meant(before.get(path)) != _meant(after.get(path)):
            yield FieldChange(new.id, title, path, before.get(path), after.get(path))


def _meant(value: Any) -> Any:
    """An amount by what it means: ``9/20 hip_depth`` and ``0.45 hip_depth`` are one."""
    if not isinstance(value, str):
        return value
    try:
        return read_amount(value)
    except InputError:
        return value


def _leaves(value: Any, path: tuple[str, ...]) -> Iterator[tuple[str, Any]]:
    if isinstance(value, Mapping):
        for key, part in value.items():
            yield from _leaves(part, (*path, str(key)))
    elif isinstance(value, (list, tuple)):
        for index, part in enumerate(value):
            yield from _leaves(part, (*path, str(index)))
    else:
        yield SIGN.join(path), value


def _measures(first: Replay, second: Replay) -> Iterator[MeasureChange]:
    for key in dict.fromkeys((*keys_read(first), *keys_read(second))):
        before, after = first.measures.find(key), second.measures.find(key)
        if _told(before) != _told(after):
            yield MeasureChange(key, before, after)


def _told(measure: Measure | None) -> tuple[object, ...]:
    return () if measure is None else (measure.value, measure.status)


def _reordered(first: Recipe, second: Recipe) -> tuple[StepRecord, ...]:
    """The fewest steps that must be moved to come from one order to the other."""
    old = [record.id for record in first.ordered()]
    new = [record.id for record in second.ordered()]
    kept = _longest_common([key for key in old if key in new], [key for key in new if key in old])
    return tuple(second.step(key) for key in new if key in old and key not in kept)


def _longest_common(first: Sequence[str], second: Sequence[str]) -> frozenset[str]:
    """The longest run of ids that stand in the same order in both."""
    best: list[list[tuple[str, ...]]] = [[()] * (len(second) + 1) for _ in range(len(first) + 1)]
    for i, one in enumerate(first):
        for j, other in enumerate(second):
            longer = max(best[i][j + 1], best[i + 1][j], key=len)
            best[i + 1][j + 1] = (*best[i][j], one) if one == other else longer
    return frozenset(best[-1][-1])
