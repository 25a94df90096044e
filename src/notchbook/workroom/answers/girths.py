"""The measured strip: each girth as body + ease = pattern, and where the ease is usual."""

from notchbook.app.examining import GirthRow
from notchbook.body import measure_entry
from notchbook.recipe import Replay, definition
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class EaseField(Answer):
    """Where the ease is written: the step and its parameter."""

    step: str
    parameter: str


class Girth(Answer):
    """One girth, mm, and its texts; ``pattern`` is None where the pattern no longer has it.

    ``body_error_text`` is the ± of a girth that is an estimate, empty for one that was taken.
    ``usual_low`` and ``usual_high`` are the usual ease; ``ease_field`` is None when no step states it.
    """

    name: str
    label: str
    measure: str
    body: float
    body_text: str
    body_error_text: str
    ease: float
    ease_text: str
    pattern: float | None
    pattern_text: str | None
    usual_low: float | None
    usual_high: float | None
    usual_text: str
    ease_field: EaseField | None


def girth(row: GirthRow, replay: Replay, reader: Reader) -> Girth:
    """The line of one girth."""
    low, high = row.usual or (None, None)
    return Girth(
        name=row.name,
        label=measure_entry(row.measure).short_name,
        measure=row.measure,
        body=row.body,
        body_text=reader.text(row.body),
        body_error_text="" if row.error is None else f"± {reader.text(row.error)}",
        ease=row.ease,
        ease_text=reader.text(row.shown_ease(reader.style)),
        pattern=row.pattern,
        pattern_text=None if row.pattern is None else reader.text(row.pattern),
        usual_low=low,
        usual_high=high,
        usual_text="" if low is None or high is None else f"{reader.text(low)} to {reader.text(high)}",
        ease_field=_ease_field(row, replay),
    )


def _ease_field(row: GirthRow, replay: Replay) -> EaseField | None:
    """The block that drafted the girth states its ease as ``hip_ease`` for ``hip_girth``."""
    slug = row.name.split("/", 1)[0]
    parameter = f"{row.measure.removesuffix('_girth')}_ease"
    for record in replay.recipe.steps:
        if record.slug == slug and parameter in definition(record.operation).parameters.model_fields:
            return EaseField(step=record.id, parameter=parameter)
    return None
