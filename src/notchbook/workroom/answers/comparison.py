"""Two sets of measures side by side, and a style against a client, as the page shows them."""

from notchbook.app.comparing.measures import StyleComparison, StyleGirth
from notchbook.body import measure_entry
from notchbook.body.charts import MeasureDifference, SetComparison
from notchbook.workroom.answers.body import span_text
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.quantities import (
    label_of,
    remarks_of,
    said_difference,
    said_keys,
    said_value,
)
from notchbook.workroom.answers.refusal import Refusal
from notchbook.workroom.reader import Reader


class DifferenceLine(Answer):
    """One measure of both; the difference is second minus first. ``beyond``: more than a tape's readings.

    ``moved``: the second value was brought to the waist level of the first. ``drawn`` (-1 to 1, of the
    largest difference in length) draws the difference, null for an angle or a weight.
    """

    key: str
    label: str
    first_text: str
    second_text: str
    difference_text: str
    beyond: bool
    moved: bool
    drawn: float | None


class ComparisonAnswer(Answer):
    """What two sets have in common, what differs, and what only one of them has."""

    first: str
    second: str
    sentence: str
    lines: tuple[DifferenceLine, ...]
    only_first: tuple[str, ...]
    only_second: tuple[str, ...]
    remarks: tuple[Refusal, ...]


class StyleGirthLine(Answer):
    """One girth of a style: the body drafted for, the client, the finished girth, the ease on each.

    ``short_text`` says by how much the client lacks the least usual ease, ``over_text`` by how much she has
    more than the most that is usual, beyond what two readings of a tape may differ; empty where not.
    """

    name: str
    label: str
    body_text: str
    client_text: str
    finished_text: str
    body_ease_text: str
    client_ease_text: str
    usual_text: str
    short_text: str
    over_text: str


class StyleComparisonAnswer(Answer):
    """A style as drafted against a client; the pattern is not changed by it."""

    style: str
    sentence: str
    girths: tuple[StyleGirthLine, ...]
    measures: ComparisonAnswer


def comparison_answer(compared: SetComparison, reader: Reader) -> ComparisonAnswer:
    """The comparison in the reader's unit."""
    largest = max((abs(row.difference) for row in compared.rows if _is_length(row.key)), default=0.0)
    return ComparisonAnswer(
        first=compared.first,
        second=compared.second,
        sentence=_sentence(compared, reader),
        lines=tuple(_line(row, largest, reader) for row in compared.rows),
        only_first=said_keys(compared.only_first),
        only_second=said_keys(compared.only_second),
        remarks=remarks_of(compared.remarks, reader),
    )


def style_comparison_answer(compared: StyleComparison, reader: Reader) -> StyleComparisonAnswer:
    """The comparison in the reader's unit, with what is too tight said on top."""
    tight = compared.too_tight
    if tight:
        worst = ", ".join(
            f"{said_keys((girth.measure,))[0]} {reader.text(girth.short_by)} short" for girth in tight
        )
        sentence = f"Too tight for {compared.measures.second} as drafted: {worst} of the least usual ease."
    elif any(girth.client_ease is not None for girth in compared.girths):
        sentence = f"No girth of {compared.style} is short of the usual ease on {compared.measures.second}."
    else:
        sentence = f"No girth of this style was measured on {compared.measures.second}."
    return StyleComparisonAnswer(
        style=compared.style,
        sentence=sentence,
        girths=tuple(_girth(girth, reader) for girth in compared.girths),
        measures=comparison_answer(compared.measures, reader),
    )


def _sentence(compared: SetComparison, reader: Reader) -> str:
    if not compared.rows:
        return f"{compared.first} and {compared.second} have no measure in common."
    differing = compared.differing
    if not differing:
        return (
            f"All {len(compared.rows)} measures of both agree within what two readings of a tape may differ."
        )
    lengths = [row for row in differing if _is_length(row.key)]
    most = max(lengths, key=lambda row: abs(row.difference), default=differing[0])
    said = f"{said_keys((most.key,))[0]} {said_difference(most.key, most.difference, reader)}"
    counted = f"{len(differing)} of {len(compared.rows)} measures"
    return f"{counted} differ by more than two readings may; most of all {said}."


def _is_length(key: str) -> bool:
    return measure_entry(key.partition("@")[0]).kind not in ("angle", "weight")


def _line(row: MeasureDifference, largest: float, reader: Reader) -> DifferenceLine:
    return DifferenceLine(
        key=row.key,
        label=label_of(row.key),
        first_text=said_value(row.key, row.first.value, reader),
        second_text=said_value(row.key, row.second.value, reader),
        difference_text=said_difference(row.key, row.difference, reader),
        beyond=row.beyond,
        moved=row.moved,
        drawn=row.difference / largest if largest and _is_length(row.key) else None,
    )


def _over_text(girth: StyleGirth, reader: Reader) -> str:
    if girth.usual is None or girth.client_ease is None:
        return ""
    over = girth.client_ease - girth.usual[1]
    return reader.text(over) if over > measure_entry(girth.measure).repeat else ""


def _girth(girth: StyleGirth, reader: Reader) -> StyleGirthLine:
    key = girth.measure
    usual = "" if girth.usual is None else span_text(*(reader.text(ease) for ease in girth.usual))
    return StyleGirthLine(
        name=girth.name,
        label=label_of(key),
        body_text=said_value(key, girth.body, reader),
        client_text=said_value(key, girth.client, reader),
        finished_text=said_value(key, girth.finished, reader),
        body_ease_text=said_difference(key, girth.body_ease, reader),
        client_ease_text=said_difference(key, girth.client_ease, reader),
        usual_text=usual,
        short_text=reader.text(girth.short_by) if girth.short_by else "",
        over_text=_over_text(girth, reader),
    )
