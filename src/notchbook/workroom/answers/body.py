"""The measures of one body as the form shows them."""

from typing import Literal

from notchbook.app.studio import BodyState
from notchbook.body import (
    Doubt,
    DoubtLevel,
    Measure,
    MeasureEntry,
    MeasureKind,
    MeasureSet,
    PopulationName,
    RiseMethod,
    Side,
    Status,
    WaistLevel,
    check_consistent,
    measure_table,
)
from notchbook.units import format_degrees
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.refusal import Offer, Refusal, offers_for, refusal
from notchbook.workroom.reader import Reader


class MeasureValue(Answer):
    """One value in the reader's unit, and how far it can be trusted; ``readings`` where there are several."""

    side: Side
    text: str
    value: float
    status: Status
    error_text: str
    note: str
    readings: tuple[str, ...]


class Circumstances(Answer):
    """When, by whom and over what she was measured; empty where nothing was said."""

    taken_on: str
    taken_by: str
    undergarment: str
    heel_text: str


class Remark(Answer):
    """Something to look at again beside a measure."""

    level: DoubtLevel
    refusal: Refusal
    offers: tuple[Offer, ...]


class MeasureLine(Answer):
    """One measure of the form, with its values (plain, left, right) and remarks."""

    key: str
    label: str
    definition: str
    kind: MeasureKind
    sided: bool
    usual_text: str
    values: tuple[MeasureValue, ...]
    remarks: tuple[Remark, ...]


class BodyAnswer(Answer):
    """A body's measures in measuring order, all that could be taken.

    ``waist_drop_text`` is empty where no drop was given, so for the natural waist too.
    """

    id: int
    number: str
    name: str
    kind: Literal["body", "form", "chart"]
    label_size: str
    note: str
    circumstances: Circumstances
    population: PopulationName | None
    waist_level: WaistLevel
    waist_drop_text: str
    rise_method: RiseMethod | None
    version: int
    can_undo: bool
    can_redo: bool
    lines: tuple[MeasureLine, ...]
    general: tuple[Remark, ...]


def body_answer(state: BodyState, reader: Reader) -> BodyAnswer:
    """The body in the reader's unit; which slips are likely depends on the unit too."""
    measures = state.measures
    doubts = check_consistent(measures, reader.style)
    return BodyAnswer(
        id=state.id,
        number=state.number,
        name=measures.name,
        kind=measures.kind,
        label_size=measures.label_size,
        note=measures.note,
        circumstances=_circumstances(measures, reader),
        population=measures.population,
        waist_level=measures.waist_level,
        waist_drop_text=reader.text(measures.waist_drop) if measures.waist_drop else "",
        rise_method=measures.rise_method,
        version=state.version,
        can_undo=state.can_undo,
        can_redo=state.can_redo,
        lines=tuple(_line(entry, measures, doubts, reader) for entry in measure_table().values()),
        general=tuple(_remark(doubt, None, measures, reader) for doubt in doubts if not doubt.keys),
    )


def measure_text(entry: MeasureEntry, value: float, reader: Reader) -> str:
    """A value in the unit of its kind."""
    if entry.is_length:
        return reader.text(value)
    return format_degrees(value) if entry.kind == "angle" else f"{value:g} kg"


def _line(
    entry: MeasureEntry, measures: MeasureSet, doubts: tuple[Doubt, ...], reader: Reader
) -> MeasureLine:
    low, high = entry.usual_at(measures.drop_below_natural)
    sides: tuple[tuple[Side, str], ...] = (("both", ""), ("left", "@left"), ("right", "@right"))
    own = [doubt for doubt in doubts if entry.key in {key.partition("@")[0] for key in doubt.keys}]
    return MeasureLine(
        key=entry.key,
        label=entry.label_for(measures.population),
        definition=entry.definition,
        kind=entry.kind,
        sided=entry.sided,
        usual_text=span_text(measure_text(entry, low, reader), measure_text(entry, high, reader)),
        values=tuple(
            _value(entry, side, measures.values[entry.key + mark], reader)
            for side, mark in sides
            if entry.key + mark in measures.values
        ),
        remarks=tuple(_remark(doubt, entry, measures, reader) for doubt in own),
    )


def span_text(low: str, high: str) -> str:
    """``82.0 to 135.0 cm``: the unit once, where it is a word."""
    number, _, word = low.partition(" ")
    return f"{number} to {high}" if word.isalpha() and high.endswith(word) else f"{low} to {high}"


def _value(entry: MeasureEntry, side: Side, measure: Measure, reader: Reader) -> MeasureValue:
    error = "" if measure.error is None else f"± {measure_text(entry, measure.error, reader)}"
    return MeasureValue(
        side=side,
        text=measure_text(entry, measure.value, reader),
        value=measure.value,
        status=measure.status,
        error_text=error,
        note=measure.note,
        readings=tuple(measure_text(entry, reading, reader) for reading in measure.readings),
    )


def _circumstances(measures: MeasureSet, reader: Reader) -> Circumstances:
    said = measures.circumstances
    return Circumstances(
        taken_on=said.taken_on,
        taken_by=said.taken_by,
        undergarment=said.undergarment,
        heel_text=reader.text(said.heel) if said.heel else "",
    )


def _remark(doubt: Doubt, entry: MeasureEntry | None, measures: MeasureSet, reader: Reader) -> Remark:
    """The doubt, with offers when one measure alone is unusual."""
    offers: tuple[Offer, ...] = ()
    if entry is not None and entry.is_length and len(doubt.keys) == 1 and doubt.keys[0] in measures.values:
        value = measures.values[doubt.keys[0]].value
        offers = offers_for(entry.key, value, reader)
    return Remark(level=doubt.level, refusal=refusal(doubt.problem, reader), offers=offers)
