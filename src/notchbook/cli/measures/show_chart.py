"""A size chart whole, on the screen."""

import math
from typing import Final

from notchbook.body import measure_entry
from notchbook.body.charts import SizeChart
from notchbook.body.quantity_words import quantity_text, said_key
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle

_SIZES_ACROSS: Final = {"cm": 10, "mm": 9, "in": 7}
"""How many sizes stand side by side without a cell being broken; more are shared among further tables."""

_UNIT_WORDS: Final = {"cm": "cm", "mm": "mm", "in": "inches"}


def show_chart(screen: Screen, chart: SizeChart, style: LengthStyle) -> None:
    """Its sizes and measures, then where the figures come from."""
    whom = f", for {chart.population}" if chart.population else ""
    unit = _UNIT_WORDS[style.unit]
    screen.line(f"{chart.name}{whom}: {len(chart.sizes)} sizes, {len(chart.keys)} measures, in {unit}")
    if chart.caveat:
        screen.line(chart.caveat)
    screen.line()
    tables = math.ceil(len(chart.sizes) / _SIZES_ACROSS[style.unit])
    across = math.ceil(len(chart.sizes) / max(tables, 1))
    for start in range(0, len(chart.sizes), max(across, 1)):
        _show_sizes(screen, chart, range(start, min(start + across, len(chart.sizes))), style)
        screen.line()
    show_chart_source(screen, chart)


def show_chart_source(screen: Screen, chart: SizeChart) -> None:
    """Where the figures come from, how sure they are, and the note."""
    if chart.source:
        screen.line(f"Chart: {chart.source}{f' ({chart.grade})' if chart.grade else ''}.")
    if chart.note:
        screen.line(chart.note)


def _show_sizes(screen: Screen, chart: SizeChart, places: range, style: LengthStyle) -> None:
    labels = [chart.labels[place] for place in places]
    rows = []
    for key in chart.keys:
        row = chart.row(key)
        rows.append((said_key(key), *(_number(key, row[place], style) for place in places)))
    screen.table(("", *labels), rows, numbers=labels)


def _number(key: str, value: float | None, style: LengthStyle) -> str:
    """The number; a length without its unit, which stands over the table."""
    if value is None:
        return ""
    entry = measure_entry(key)
    text = quantity_text(entry, value, style)
    return text.removesuffix(f" {style.unit}").removesuffix('"') if entry.is_length else text
