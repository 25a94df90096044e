"""The nearest size of a chart, on the screen and as data."""

from typing import Any

from notchbook.body import MeasureSet, measure_entry
from notchbook.body.charts import (
    GARMENT_WORDS,
    Garment,
    GoesOver,
    NearestSize,
    SizeChart,
    SizeDeviation,
    SizePosition,
    StandardClasses,
    goes_over_words,
    nearest_size,
    standard_classes,
)
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.cli.answer import answer
from notchbook.cli.measures.show_chart import show_chart_source
from notchbook.cli.measures.show_sets import remark_data, show_remarks, signed
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def answer_nearest(
    measures: MeasureSet,
    chart: SizeChart,
    garment: Garment,
    unit: Unit,
    *,
    with_source: bool,
    as_json: bool,
) -> None:
    """Which size of a chart a set is."""
    found = nearest_size(measures, chart, garment)
    classes = standard_classes(measures, chart.population)
    style = LengthStyle(unit)

    def show(screen: Screen) -> None:
        _show_size(screen, measures, chart, found, style)
        _show_classes(screen, measures, classes)
        _show_deviations(screen, found, style)
        show_remarks(screen, found.remarks, style)
        if found.absent:
            screen.line(f"Not known, would decide too: {', '.join(map(said_key, found.absent))}.")
        _show_source(screen, chart, with_source=with_source)

    data = _size_data(measures, chart, found) | {
        "en_13402_3": _class_labels(classes),
        "en_13402_3_population": None if classes is None else classes.population,
        "decided_by": list(found.decided_by),
        "not_known": list(found.absent),
        "measures": [_deviation_data(one) for one in found.deviations],
        "remarks": remark_data(found.remarks),
    }
    answer(data, show, as_json=as_json, to_check=bool(found.remarks))


def _size_data(measures: MeasureSet, chart: SizeChart, found: NearestSize) -> dict[str, Any]:
    return {
        "kind": "nearest_size",
        "name": measures.name,
        "label_size": measures.label_size,
        "chart": found.chart,
        "chart_source": chart.source,
        "chart_grade": chart.grade,
        "chart_caveat": chart.caveat,
        "garment": found.garment,
        "size": found.size,
        "distance_steps": round(found.distance, 3),
        "runner_up": found.runner_up,
        "runner_up_distance_steps": round(found.runner_up_distance, 3),
        "goes_over": None if found.goes_over is None else _goes_over_data(found.goes_over),
    }


def _goes_over_data(over: GoesOver) -> dict[str, Any]:
    return {
        "key": over.key,
        "size": over.size,
        "short_by": round(over.short_by, 6),
        "off_at_nearest": None if over.off is None else round(over.off, 6),
    }


def _show_size(
    screen: Screen, measures: MeasureSet, chart: SizeChart, found: NearestSize, style: LengthStyle
) -> None:
    label = f" (labeled {measures.label_size})" if measures.label_size else ""
    screen.line(f"{measures.name}{label} in the chart {chart.name}, for {GARMENT_WORDS[found.garment]}:")
    off = f"{found.distance:.1f} sizes off"
    next_one = f"; next {found.runner_up}, {found.runner_up_distance:.1f} off" if found.runner_up else ""
    screen.line(f"nearest size {found.size}, {off}{next_one}")
    screen.line(goes_over_words(found, style))
    if chart.caveat:
        screen.line(chart.caveat)


def _show_classes(screen: Screen, measures: MeasureSet, classes: StandardClasses | None) -> None:
    labels = _class_labels(classes)
    if classes is None:
        screen.line("by EN 13402-3: not known, neither names women or men")
    elif labels:
        by_whom = "as the chart" if measures.population is None else "whatever the chart"
        words = ", ".join(f"{what} {label}" for what, label in labels.items())
        screen.line(f"by EN 13402-3 for {classes.population}, {by_whom}: {words}")
    screen.line()


def _class_labels(found: StandardClasses | None) -> dict[str, str]:
    """The labels of the classes of EN 13402-3 by what they are of; empty where none are known."""
    if found is None:
        return {}
    labels = {said_key(key): one.label for key, one in found.girths}
    return labels if found.letter is None else labels | {"letter": found.letter.label}


def _show_deviations(screen: Screen, found: NearestSize, style: LengthStyle) -> None:
    columns = ("measure", "value", f"size {found.size}", "difference", "±", "alone it would be")
    rows = [
        (
            said_key(one.key),
            quantity_text(measure_entry(one.key), one.value, style),
            quantity_text(measure_entry(one.key), one.size, style),
            signed(one.key, one.difference, style) if one.beyond else "fits",
            "" if one.margin is None else quantity_text(measure_entry(one.key), one.margin, style),
            "" if one.position is None else _place_words(one.position, style),
        )
        for one in found.deviations
    ]
    screen.table(columns, rows, numbers=columns[1:5])
    screen.line()


def _place_words(position: SizePosition, style: LengthStyle) -> str:
    return f"{position.words} by {style.text(position.by)}" if position.beyond else position.words


def _show_source(screen: Screen, chart: SizeChart, *, with_source: bool) -> None:
    if chart.margins:
        screen.line("±: nine of ten lie within; the note of the chart says of whom.")
    if with_source:
        show_chart_source(screen, chart)
    elif chart.source or chart.note:
        screen.line("Where the figures of the chart come from: --source.")


def _deviation_data(one: SizeDeviation) -> dict[str, Any]:
    position = one.position
    return {
        "key": one.key,
        "value": round(one.value, 6),
        "size": one.size,
        "difference": round(one.difference, 6),
        "beyond_tolerance": one.beyond,
        "margin": one.margin,
        "alone": None if position is None else position.words,
        "size_number": None if position is None else position.number,
        "place": None if position is None else round(position.place, 3),
    }
