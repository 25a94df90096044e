"""Whether a row, a size, a cell or the whole chart stands in another unit than the rest."""

import math
import statistics
from collections.abc import Iterator, Sequence
from typing import Final

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.doubts.chart_doubt import ChartDoubt
from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError

_FACTORS: Final = (
    (2.54, "inches where centimeters are meant"),
    (1 / 2.54, "centimeters where inches are meant"),
    (10.0, "centimeters where millimeters are meant, or a misplaced decimal sign"),
    (0.1, "millimeters where centimeters are meant, or a misplaced decimal sign"),
    (25.4, "inches where millimeters are meant"),
    (1 / 25.4, "millimeters where inches are meant"),
)
"""Factor that would repair the value, and what was typed (common practice)."""

NEAR: Final = 0.35
"""How near (natural logarithm) a value must come to its place by the factor. Sizes of one chart differ by
less, and the nearest factor, 2.54, is 0.93 (computed)."""

NEAR_WHOLE: Final = 0.25
"""The same for a whole chart, held against the usual values of adults: children are smaller, too."""

LEAST_ROWS: Final = 3
"""Rows below which no row can be outvoted by the others."""

LEAST_LENGTH: Final = 100.0
"""mm. A measure that may be shorter (belly depth, forward shoulder) differs from body to body by as much as a
unit would make, so its unit cannot be told."""


def unit_doubts(chart: SizeChart) -> tuple[ChartDoubt, ...]:
    """Every row, size, cell, or the whole chart, that another unit would bring into line."""
    logs = {key: row for key in chart.keys if (row := _logs(chart, key)) is not None}
    rows = tuple(_row_doubts(logs))
    odd_rows = {doubt.keys[0] for doubt in rows}
    good = {key: row for key, row in logs.items() if key not in odd_rows}
    columns = tuple(_column_doubts(chart, good))
    odd_sizes = {doubt.sizes[0] for doubt in columns}
    cells = tuple(_cell_doubts(chart, good, odd_sizes))
    return (*_whole_doubts(good), *rows, *columns, *cells)


def _row_doubts(logs: dict[str, Sequence[float | None]]) -> Iterator[ChartDoubt]:
    if len(logs) < LEAST_ROWS:
        return
    away = {key: _median(row) - _usual(key) for key, row in logs.items()}
    center = statistics.median(away.values())
    for key, distance in away.items():
        meant = _factor_for(distance - center, NEAR)
        if meant:
            label = measure_entry(key).label
            problem = InputError("chart-row-unit", label=label, meant=meant[1], where="")
            yield ChartDoubt("stop", (key,), (), problem)


def _whole_doubts(logs: dict[str, Sequence[float | None]]) -> Iterator[ChartDoubt]:
    if len(logs) < LEAST_ROWS:
        return
    center = statistics.median(_median(row) - _usual(key) for key, row in logs.items())
    meant = _factor_for(center, NEAR_WHOLE)
    if meant:
        yield ChartDoubt("check", (), (), InputError("chart-unit", meant=meant[1], where=""))


def _column_doubts(chart: SizeChart, logs: dict[str, Sequence[float | None]]) -> Iterator[ChartDoubt]:
    for at, label in enumerate(chart.labels):
        away = [value - _median(row) for row in logs.values() if (value := row[at]) is not None]
        if len(away) < LEAST_ROWS:
            continue
        meant = _factor_for(statistics.median(away), NEAR)
        if meant:
            problem = InputError("chart-size-unit", size=label, meant=meant[1], where="")
            yield ChartDoubt("stop", (), (label,), problem)


def _cell_doubts(
    chart: SizeChart, logs: dict[str, Sequence[float | None]], odd_sizes: set[str]
) -> Iterator[ChartDoubt]:
    for key, row in logs.items():
        for label, value in zip(chart.labels, row, strict=True):
            if value is None or label in odd_sizes:
                continue
            meant = _factor_for(value - _median(row), NEAR)
            if meant:
                entry = measure_entry(key)
                problem = InputError(
                    "chart-cell-unit", label=entry.label, size=label, meant=meant[1], where=""
                )
                yield ChartDoubt("stop", (key,), (label,), problem, math.exp(value) * meant[0])


def _factor_for(distance: float, near: float) -> tuple[float, str] | None:
    """The factor that brings a value so far off (natural logarithm) back into line, if one does."""
    best = min(_FACTORS, key=lambda known: abs(distance + math.log(known[0])))
    return best if abs(distance + math.log(best[0])) < near else None


def _logs(chart: SizeChart, key: str) -> Sequence[float | None] | None:
    """The logarithms of a row of lengths; None for other rows and where nothing is known."""
    entry = measure_entry(key)
    if not entry.is_length or entry.usual[0] < LEAST_LENGTH:
        return None
    row = [math.log(value) if value else None for value in chart.row(key)]
    return row if any(value is not None for value in row) else None


def _median(row: Sequence[float | None]) -> float:
    return statistics.median(value for value in row if value is not None)


def _usual(key: str) -> float:
    """The middle of the usual range of adults, as a logarithm."""
    low, high = measure_entry(key).usual
    return math.log((low + high) / 2)
