"""The pattern steps, read like a written order."""

from collections.abc import Iterator, Mapping
from string import Formatter
from typing import Any, Final, Literal

from notchbook.app.curing import offered_cures
from notchbook.errors import InputError
from notchbook.pattern import Side, spoken
from notchbook.pattern.names import is_name, is_slug
from notchbook.recipe import Recipe, Replay, StepRecord, Suspension, definition
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.asked.amounts import written
from notchbook.workroom.asked.schema import step_form
from notchbook.workroom.reader import Reader

_SPELLED: Final = {"french": "French", "t_shirt": "T-shirt", "three_quarter": "three-quarter"}
"""Choices that are not said as they are written."""

StepStanding = Literal["done", "stopped", "waiting"]
StopKind = Literal["gone", "several", "refused"]


class Stop(Answer):
    """Why a step stopped: its edge is gone, two edges fit, or it was refused; what she may choose."""

    kind: StopKind
    refusal: Refusal
    name: Named | None
    candidates: tuple[Named, ...]
    taken_by: str


class StepLine(Answer):
    """One step: its title and sentence, how it stands, and its values in the reader's unit."""

    id: str
    operation: str
    title: str
    sentence: str
    side: Side
    phase: str
    standing: StepStanding
    stop: Stop | None
    values: dict[str, Any]


def step_lines(replay: Replay, reader: Reader) -> tuple[StepLine, ...]:
    """The steps in the order in which they run."""
    stopped = replay.suspended
    return tuple(_line(record, replay, stopped, reader) for record in replay.recipe.ordered())


def _line(record: StepRecord, replay: Replay, stopped: Suspension | None, reader: Reader) -> StepLine:
    step = definition(record.operation)
    values = _values(record, reader)
    standing: StepStanding = "done"
    if stopped is not None and record.id == stopped.step:
        standing = "stopped"
    elif stopped is not None and (
        record.id in stopped.waiting or _comes_after(record, replay.recipe, stopped)
    ):
        standing = "waiting"
    return StepLine(
        id=record.id,
        operation=record.operation,
        title=record.title or step.title,
        sentence=_sentence(step.sentence, values),
        side=record.side,
        phase=record.phase,
        standing=standing,
        stop=_stop(stopped, replay, reader) if standing == "stopped" and stopped else None,
        values=values,
    )


def _comes_after(record: StepRecord, recipe: Recipe, stopped: Suspension) -> bool:
    """Whether a step of the whole garment waits for a side that has stopped."""
    order = [step.id for step in recipe.ordered()]
    return stopped.step in order and order.index(record.id) > order.index(stopped.step)


def _stop(stopped: Suspension, replay: Replay, reader: Reader) -> Stop:
    kinds: dict[str, StopKind] = {"name-ambiguous": "several", "name-lost": "gone", "end-lost": "gone"}
    titles = {record.id: record.title for record in replay.recipe.steps}
    name = stopped.name or ""
    return Stop(
        kind=kinds.get(stopped.error.code, "refused"),
        refusal=refusal(stopped.error, reader, replay.measures, offered_cures(replay)),
        name=Named(name=name, said=spoken(name)) if is_name(name) else None,
        candidates=tuple(Named(name=one, said=spoken(one)) for one in stopped.candidates if is_name(one)),
        taken_by=titles.get(stopped.taken_by, ""),
    )


def _values(record: StepRecord, reader: Reader) -> dict[str, Any]:
    try:
        values = written(step_form(record.operation), record.parameters, reader)
    except InputError:
        return dict(record.parameters)  # an amount of a stopped step that cannot be read: shown as it is
    return dict(values)


def _sentence(template: str, values: Mapping[str, Any]) -> str:
    """The order with its values; a part of it, between commas, that states nothing is left out."""
    said = _Blank({name: _said(value) for name, value in values.items()})
    parts = [part for part in template.split(", ") if "{" not in part or any(_stated(part, said))]
    return ", ".join(part.format_map(said).strip() for part in parts)


def _stated(part: str, said: Mapping[str, str]) -> Iterator[bool]:
    for _, name, _, _ in Formatter().parse(part):
        if name is not None:
            yield bool(said[name])


class _Blank(dict[str, str]):
    """Leaves out what a step does not state."""

    def __missing__(self, key: str) -> str:
        return ""


def _said(value: Any) -> str:
    """A value in words: names as they are said, lists with commas, a group by its edges."""
    if isinstance(value, (list, tuple)):
        return "; ".join(map(_said, value)) if any(isinstance(v, dict) for v in value) else _listed(value)
    if isinstance(value, Mapping):
        edges = [_said(part) for part in value.values() if isinstance(part, Mapping)]
        return " to ".join(edges) if edges else _said(value.get("edge", ""))
    if value is None:
        return ""
    if isinstance(value, str) and is_name(value):
        return spoken(value)
    return _chosen(value) if isinstance(value, str) and is_slug(value) else str(value)


def _chosen(value: str) -> str:
    """A choice as it is said."""
    return _SPELLED.get(value, value.replace("_", " "))


def _listed(values: list[Any] | tuple[Any, ...]) -> str:
    return " and ".join(map(_said, values))
