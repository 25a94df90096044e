"""`notchbook measures chart`: show a size chart, or write it to a file that can be edited."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, UnitChoice
from notchbook.cli.screen import Screen
from notchbook.units import Unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from notchbook.body.charts import SizeChart


def chart(
    name: Annotated[
        str,
        typer.Argument(
            metavar="[CHART]",
            help="women, men, or a chart file; they are listed without one.",
            show_default=False,
        ),
    ] = "",
    out: Annotated[
        Path | None,
        typer.Option("--out", "-o", metavar="FILE", help="A new .csv or .json file.", show_default=False),
    ] = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Show a size chart with its source, or write it to a file to make a chart of your own from it.

    Example: notchbook measures chart women --unit in

    Example: notchbook measures chart women --out mine.csv --unit cm
    """
    from notchbook.app.comparing.measures import read_chart_named
    from notchbook.body.charts.shipped import shipped_charts
    from notchbook.errors import InputError

    if name and out is not None:
        _write(read_chart_named(name), out, unit, as_json=as_json)
    if name:
        _show(read_chart_named(name), unit, as_json=as_json)
    if out is not None:
        raise InputError("chart-which", known=tuple(shipped_charts()))
    _list(shipped_charts(), as_json=as_json)


def _write(found: "SizeChart", out: Path, unit: Unit, *, as_json: bool) -> None:
    from notchbook.app.charts.chart_files import write_new_chart

    write_new_chart(found, out, unit)

    def show(screen: Screen) -> None:
        screen.line(f"written: {out} ({found.name}, {len(found.sizes)} sizes, {len(found.keys)} measures)")
        if found.status == "computed":
            screen.line(
                "When you change figures, give it a name, source and caveat of your own, set status to"
            )
            screen.line(
                "typed, and take out the lines that end in .margin: they belong to the computed figures."
            )
        screen.next_steps((f"notchbook measures check {out}",))

    answer({"files": {"chart": str(out)}, "name": found.name, "unit": unit}, show, as_json=as_json)


def _show(found: "SizeChart", unit: Unit, *, as_json: bool) -> None:
    from notchbook.body.charts import chart_to_data
    from notchbook.cli.measures.show_chart import show_chart
    from notchbook.units import LengthStyle

    answer(
        {"chart": chart_to_data(found)},
        lambda screen: show_chart(screen, found, LengthStyle(unit)),
        as_json=as_json,
    )


def _list(charts: "Mapping[str, SizeChart]", *, as_json: bool) -> None:
    def show(screen: Screen) -> None:
        for word, one in charts.items():
            screen.line(f"{word}: {one.name}, {one.labels[0]} to {one.labels[-1]}")
            screen.line(f"  {one.caveat}")
        screen.next_steps(
            (
                "notchbook measures chart women                  shows one whole",
                "notchbook measures chart women --out mine.csv   writes it to be edited",
            )
        )

    data: dict[str, Any] = {
        "charts": [
            {"word": word, "name": one.name, "sizes": list(one.labels), "caveat": one.caveat}
            for word, one in charts.items()
        ]
    }
    answer(data, show, as_json=as_json)
