"""Changing a size chart: every function gives a new chart and leaves the old one as it was."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from notchbook.body.charts.chart import Margins, SizeChart
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import quoted

CHANGED_BY_HAND: Final = "changed by hand"
"""Stands at the end of the source of a chart whose figures are no longer all as they came."""


def set_cell(chart: SizeChart, label: str, key: str, value: float | None) -> SizeChart:
    """The chart with this value (mm, degrees, kg) in the cell; None empties it.

    A computed value loses its margin with its old value, and the chart is a typed one from then on.
    """
    at = chart.position(label)
    size = chart.sizes[at].without(key)
    if value is not None:
        size = size.with_value(key, Measure(value, "chart"))
    sizes = (*chart.sizes[:at], size, *chart.sizes[at + 1 :])
    return by_hand(chart, sizes, _without_margin(chart.margins, label, key), (*chart.keys, key))


def add_size(
    chart: SizeChart, label: str, before: str | None = None, values: Mapping[str, float] | None = None
) -> SizeChart:
    """The chart with a new size, before another or at the end; its cells are empty where nothing is given."""
    at = len(chart.sizes) if before is None else chart.position(before)
    return _with_size(chart, at, _new_size(chart, label, values or {}))


def interpolate_size(chart: SizeChart, label: str, lower: str, upper: str, share: float = 0.5) -> SizeChart:
    """The chart with a new size between two neighbors; ``share`` is how far it lies toward the upper one.

    Each measure that both have is read off the straight line between them.
    Refused: sizes that are no neighbors in this order (``chart-not-neighbors``), a share that is not
    between 0 and 1 (``chart-share``).
    """
    at = chart.position(upper)
    if at != chart.position(lower) + 1:
        raise InputError("chart-not-neighbors", lower=quoted(lower), upper=quoted(upper), where="")
    if not 0 < share < 1:
        raise InputError("chart-share", share=share, where="")
    below, above = chart.size(lower).values, chart.size(upper).values
    values = {
        key: below[key].value + share * (above[key].value - below[key].value) for key in below if key in above
    }
    return _with_size(chart, at, _new_size(chart, label, values))


def remove_size(chart: SizeChart, label: str) -> SizeChart:
    """The chart without the size."""
    at = chart.position(label)
    return replace(chart, sizes=(*chart.sizes[:at], *chart.sizes[at + 1 :]))


def rename_size(chart: SizeChart, label: str, new: str) -> SizeChart:
    """The chart with another label over the size."""
    at = chart.position(label)
    size = replace(chart.sizes[at], label_size=new)
    if not size.label_size:
        raise InputError("chart-label-missing", name=chart.name, where="")
    margins = {size.label_size if old == label else old: row for old, row in chart.margins.items()}
    return replace(chart, sizes=(*chart.sizes[:at], size, *chart.sizes[at + 1 :]), margins=margins)


def set_row(chart: SizeChart, key: str, row: Sequence[float | None]) -> SizeChart:
    """The chart with this row, new or in place of the old one; one value or None for each size.

    Refused: another count of values than of sizes (``chart-row-length``).
    """
    if len(row) != len(chart.sizes):
        raise InputError("chart-row-length", key=key, given=len(row), wanted=len(chart.sizes), where="")
    sizes = tuple(
        size.without(key) if value is None else size.with_value(key, Measure(value, "chart"))
        for size, value in zip(chart.sizes, row, strict=True)
    )
    margins = chart.margins
    for label in chart.labels:
        margins = _without_margin(margins, label, key)
    return by_hand(chart, sizes, margins, (*chart.keys, key))


def remove_row(chart: SizeChart, key: str) -> SizeChart:
    """The chart without the measure."""
    sizes = tuple(size.without(key) for size in chart.sizes)
    return replace(chart, sizes=sizes, keys=tuple(other for other in chart.keys if other != key))


def by_hand(
    chart: SizeChart, sizes: tuple[MeasureSet, ...], margins: Margins, keys: tuple[str, ...]
) -> SizeChart:
    """The chart with other figures: typed from now on, and its source says so."""
    source = chart.source
    if source and not source.endswith(CHANGED_BY_HAND):
        source = f"{source}; {CHANGED_BY_HAND}"
    return replace(chart, sizes=sizes, margins=margins, keys=keys, status="typed", source=source)


def _with_size(chart: SizeChart, at: int, size: MeasureSet) -> SizeChart:
    return by_hand(chart, (*chart.sizes[:at], size, *chart.sizes[at:]), chart.margins, chart.keys)


def _new_size(chart: SizeChart, label: str, values: Mapping[str, float]) -> MeasureSet:
    measures = {key: Measure(value, "chart") for key, value in values.items()}
    if not chart.sizes:
        return MeasureSet(label or "size", measures, "chart", label_size=label)
    return replace(chart.sizes[0], label_size=label, values=measures)


def _without_margin(margins: Margins, label: str, key: str) -> Margins:
    return {
        size: {other: half for other, half in row.items() if (size, other) != (label, key)}
        for size, row in margins.items()
    }
