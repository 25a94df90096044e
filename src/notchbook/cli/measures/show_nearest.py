"""The nearest size of a chart, on the screen and as data."""

from typing import Any

from notchbook.body import MeasureSet, measure_entry
from notchbook.body.charts import (
    Garment,
    NearestSize,
    SizeChart,
    SizeDeviation,
    SizePosition,
    nearest_size,
    standard_classes,
)
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.cli.answer import answer
from notchbook.cli.measures.show_sets import remark_data, show_remarks, signed
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def answer_nearest(
    measures: MeasureSet, chart: SizeChart, garment: Garment, unit: Unit, *, as_json: bool
) -> None:
    """Which size of a chart a set is."""
    found = nearest_size(measures, chart, garment)
    style = LengthStyle(unit)

    def show(screen: Screen) -> None:
        _show_size(screen, measures, chart, found)
        _show_deviations(screen, found, style)
        show_remarks(screen, found.remarks, style)
        if found.absent:
            screen.line(f"Not known, would decide too: {', '.join(map(said_key, found.absent))}.")
        _show_source(screen, chart)

    data = {
        "kind": "nearest_size",
        "name": measures.name,
        "label_size": measures.label_size,
        "chart": found.chart,
        "chart_source": chart.source,
        "chart_grade": chart.grade,
        "garment": garment,
        "size": found.size,
        "distance_steps": round(found.distance, 3),
        "runner_up": found.runner_up,
        "runner_up_distance_steps": round(found.runner_up_distance, 3),
        "en_13402_3": _class_labels(measures, chart),
        "decided_by": list(found.decided_by),
        "not_known": list(found.absent),
        "measures": [_deviation_data(one) for one in found.deviations],
        "remarks": remark_data(found.remarks),
    }
    answer(data, show, as_json=as_json, to_check=bool(found.remarks))


def _show_size(screen: Screen, measures: MeasureSet, chart: SizeChart, found: NearestSize) -> None:
    label = f" (labeled {measures.label_size})" if measures.label_size else ""
    screen.line(f"{measures.name}{label} in the chart {chart.name}, for a {found.garment}:")
    off = f"{found.distance:.1f} sizes off"
    next_one = f"; next {found.runner_up}, {found.runner_up_distance:.1f} off" if found.runner_up else ""
    screen.line(f"nearest size {found.size}, {off}{next_one}")
    classes = _class_labels(measures, chart)
    if classes:
        words = ", ".join(f"{what} {label}" for what, label in classes.items())
        screen.line(f"by EN 13402-3, whatever the chart: {words}")
    screen.line()


def _class_labels(measures: MeasureSet, chart: SizeChart) -> dict[str, str]:
    """The labels of the classes of EN 13402-3 by what they are of; empty where none are known."""
    found = standard_classes(measures, chart.population)
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


def _show_source(screen: Screen, chart: SizeChart) -> None:
    words = f" ({chart.grade})" if chart.grade else ""
    if chart.source:
        screen.line(f"Chart: {chart.source}{words}.")
    if chart.note:
        screen.line(chart.note)
    if chart.margins:
        screen.line("±: nine of ten people of that size lie within.")


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
        "place": None if position is None else round(position.place, 3),
    }
