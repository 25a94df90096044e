"""The pattern steps, read like a written order."""

from typing import Any, Literal

from notchbook.app.curing import offered_cures
from notchbook.app.step_sentence import sentence
from notchbook.errors import InputError
from notchbook.pattern import Side, spoken
from notchbook.pattern.names import is_name
from notchbook.recipe import Recipe, Replay, StepRecord, Suspension, definition
from notchbook.workroom.answers.form import Answer, Named
from notchbook.workroom.answers.kept_wishes import KeptWish, kept_wishes
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.asked.amounts import written
from notchbook.workroom.asked.schema import step_form
from notchbook.workroom.reader import Reader

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
    """One step: its title and sentence, how it stands, its values in the reader's unit.

    ``wishes`` are what its numbers were made to measure.
    """

    id: str
    operation: str
    title: str
    sentence: str
    side: Side
    phase: str
    standing: StepStanding
    stop: Stop | None
    values: dict[str, Any]
    wishes: tuple[KeptWish, ...]


def step_lines(replay: Replay, reader: Reader) -> tuple[StepLine, ...]:
    """The steps in the order in which they run."""
    stopped = replay.suspended
    wishes = kept_wishes(replay, reader)
    return tuple(
        _line(record, replay, stopped, reader, wishes.get(record.id, ()))
        for record in replay.recipe.ordered()
    )


def _line(
    record: StepRecord,
    replay: Replay,
    stopped: Suspension | None,
    reader: Reader,
    wishes: tuple[KeptWish, ...],
) -> StepLine:
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
        sentence=sentence(step.sentence, values),
        side=record.side,
        phase=record.phase,
        standing=standing,
        stop=_stop(stopped, replay, reader) if standing == "stopped" and stopped else None,
        values=values,
        wishes=wishes,
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
