"""`notchbook measures compare`: two sets, a set against a chart, a client against a style."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.options import AsJson, UnitChoice
from notchbook.errors import InputError
from notchbook.units import Unit

if TYPE_CHECKING:
    from notchbook.body import MeasureSet
    from notchbook.body.charts.comparing.garment_weights import Garment


def compare(
    first: Annotated[
        str,
        typer.Argument(metavar="A", help="Measures (.json, .csv), a size such as women:92, or a chart."),
    ],
    second: Annotated[
        str, typer.Argument(metavar="B", help="The same, to be held against A.", show_default=False)
    ] = "",
    chart: Annotated[
        str,
        typer.Option(
            "--chart", "-c", metavar="CHART", help="women, men, or a chart file.", show_default=False
        ),
    ] = "",
    style: Annotated[
        Path | None,
        typer.Option("--style", metavar="STYLE.json", help="Hold A against this style.", show_default=False),
    ] = None,
    garment: Annotated[
        str, typer.Option("--garment", "-g", help="top, dress, skirt or trousers: what decides the size.")
    ] = "dress",
    source: Annotated[
        bool, typer.Option("--source", help="Say also where the figures of the chart come from.")
    ] = False,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Compare two sets of measures, find the nearest size, or hold a client against a style.

    Example: notchbook measures compare form.json client.json

    Example: notchbook measures compare form.json --chart women --garment skirt

    Example: notchbook measures compare client.json --style skirt.json
    """
    from notchbook.app.comparing.measures import read_chart_named, read_side
    from notchbook.body.charts import SizeChart
    from notchbook.cli.measures.show_nearest import answer_nearest
    from notchbook.cli.measures.show_sets import answer_sets

    sides = [read_side(word) for word in (first, second) if word]
    charts = [side for side in sides if isinstance(side, SizeChart)]
    sets = [side for side in sides if not isinstance(side, SizeChart)]
    if chart:
        charts.append(read_chart_named(chart))
    if not sets:
        raise InputError("compare-two-charts" if len(charts) > 1 else "compare-too-little")
    if style is not None:
        _against_style(sets[0], style, unit, as_json=as_json)
    elif len(sets) > 1:
        answer_sets(sets[0], sets[1], charts[0] if charts else None, unit, as_json=as_json)
    elif charts:
        answer_nearest(sets[0], charts[0], _garment(garment), unit, with_source=source, as_json=as_json)
    else:
        raise InputError("compare-too-little")


def _against_style(client: "MeasureSet", style: Path, unit: Unit, *, as_json: bool) -> None:
    from notchbook.app.comparing.measures import compare_style
    from notchbook.app.style_file import read_style, run_style
    from notchbook.cli.measures.show_against_style import answer_style

    run = run_style(read_style(style))
    answer_style(client, run.measures, compare_style(run, client), unit, as_json=as_json)


def _garment(word: str) -> "Garment":
    from notchbook.body.charts import GARMENTS

    for known in GARMENTS:
        if word.strip().lower() == known:
            return known
    raise InputError("measure-choice", what="garment", given=word, known=GARMENTS, where="")
