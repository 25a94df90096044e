"""The ease table: each girth and length as body + ease = pattern, and what it is finished."""

from collections import Counter
from collections.abc import Iterator

from notchbook.app.eases.ease_rows import EaseRow
from notchbook.app.eases.ease_words import changed_words
from notchbook.app.eases.row_words import row_words
from notchbook.body import PopulationName, measure_entry
from notchbook.pattern import ExpectationKind
from notchbook.pattern.names import instance_of
from notchbook.recipe import Replay, definition
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class EaseField(Answer):
    """Where the ease is written: the step and its parameter."""

    step: str
    parameter: str


class EaseLine(Answer):
    """One girth or length, mm, and its texts.

    ``pattern`` is what the sew line measures, ``finished`` what the garment does: a line eased into a
    shorter one is as long as that. Both are None where the pattern no longer has the line. ``ease`` was
    drafted or asked for, ``ease_now_text`` is what there is between body and pattern now; ``changed_text``
    says which steps changed it or why it cannot be measured, and is empty for a line as drafted. ``measure``
    is empty where it comes from no measure of the body, ``body_error_text`` unless it is an estimate (±).
    ``usual_low`` and ``usual_high`` are the usual ease; ``ease_field`` is None when no step states it.
    """

    name: str
    label: str
    kind: ExpectationKind
    measure: str
    body: float
    body_text: str
    body_error_text: str
    ease: float
    ease_text: str
    ease_now_text: str | None
    changed_text: str
    pattern: float | None
    pattern_text: str | None
    finished: float | None
    finished_text: str | None
    usual_low: float | None
    usual_high: float | None
    usual_text: str
    ease_field: EaseField | None


def ease_lines(rows: tuple[EaseRow, ...], replay: Replay, reader: Reader) -> tuple[EaseLine, ...]:
    """The lines of the table; a measure that stands in several of them is told apart by the line's name."""
    count = Counter(row.measure for row in rows)
    return tuple(_line(row, replay, reader, alone=count[row.measure] == 1) for row in rows)


def _line(row: EaseRow, replay: Replay, reader: Reader, *, alone: bool) -> EaseLine:
    low, high = row.usual or (None, None)
    return EaseLine(
        name=row.name,
        label=_label(row, replay.measures.population, alone=alone),
        kind=row.kind,
        measure=row.measure,
        body=row.body,
        body_text=reader.text(row.body),
        body_error_text="" if row.error is None else f"± {reader.text(row.error)}",
        ease=row.ease,
        ease_text=reader.text(row.asked_ease(reader.style)),
        ease_now_text=None if row.pattern is None else reader.text(row.shown_ease(reader.style)),
        changed_text=changed_words(row, reader.style),
        pattern=row.pattern,
        pattern_text=None if row.pattern is None else reader.text(row.pattern),
        finished=row.finished,
        finished_text=None if row.finished is None else reader.text(row.finished),
        usual_low=low,
        usual_high=high,
        usual_text="" if low is None or high is None else f"{reader.text(low)} to {reader.text(high)}",
        ease_field=_ease_field(row, replay),
    )


def _label(row: EaseRow, population: PopulationName | None, *, alone: bool) -> str:
    """A line of its own is called by its measure, one of several of that measure by its whole name."""
    if row.measure and alone:
        return measure_entry(row.measure).short_name_for(population)
    return row_words(row.name, population)


def _ease_field(row: EaseRow, replay: Replay) -> EaseField | None:
    """The block that drafted the line states its ease as ``hip_ease`` for ``hip_girth``."""
    slug = instance_of(row.name)
    for record in replay.recipe.steps:
        fields = definition(record.operation).parameters.model_fields if record.slug == slug else {}
        for parameter in _ease_parameters(row.measure):
            if parameter in fields:
                return EaseField(step=record.id, parameter=parameter)
    return None


def _ease_parameters(measure: str) -> Iterator[str]:
    """What a block may call the ease on a measure: ``neck_ease`` for ``neck_base_girth``."""
    if measure:
        plain = measure.removesuffix("_girth")
        yield from (
            f"{word}_ease" for word in (plain, plain.removesuffix("_base"), plain.removesuffix("_depth"))
        )
