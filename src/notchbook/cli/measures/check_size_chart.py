"""`notchbook measures check` of a size chart: what is to be asked before it is used."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from notchbook.cli.answer import answer
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.body import PopulationName
    from notchbook.body.charts import ChartDoubt


def check_size_chart(
    file: Path, population: "PopulationName | None", unit: Unit | None, *, as_json: bool
) -> None:
    """Look a chart over and end the command: 1 when something is to be looked at."""
    from dataclasses import replace

    from notchbook.body.charts import check_chart, read_chart

    chart = read_chart(file)
    if population is not None:
        chart = replace(chart, population=population)
    style = LengthStyle(unit or "cm")
    doubts = check_chart(chart, style)

    def show(screen: Screen) -> None:
        screen.line(f"{chart.name}: {len(chart.sizes)} sizes, {len(chart.keys)} measures")
        screen.line()
        for doubt in doubts:
            _show_doubt(screen, doubt, style)
        if chart.population is None:
            screen.line("Not held against people: the chart names none. Add --population women or men.")
        if not doubts:
            screen.line("Nothing to look at again.")

    data = {
        "kind": "size_chart",
        "name": chart.name,
        "sizes": list(chart.labels),
        "measures": list(chart.keys),
        "population": chart.population,
        "doubts": [_doubt_data(doubt) for doubt in doubts],
    }
    answer(data, show, as_json=as_json, to_check=bool(doubts))


def _show_doubt(screen: Screen, doubt: "ChartDoubt", style: LengthStyle) -> None:
    level = "STOP" if doubt.level == "stop" else "look"
    screen.line(f"{level} {doubt.problem.text(style.text)}  [{doubt.code}]")
    screen.line(f"     {doubt.problem.next_step(style.text)}")


def _doubt_data(doubt: "ChartDoubt") -> dict[str, Any]:
    return {
        "level": doubt.level,
        "code": doubt.code,
        "measures": list(doubt.keys),
        "sizes": list(doubt.sizes),
        "message": doubt.problem.text(),
        "next_step": doubt.problem.next_step(),
        "expected": None if doubt.expected is None else round(doubt.expected, 3),
    }
