"""`notchbook check`: what the checks say of a style."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, Take, UnitChoice
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.curing import OfferedCure
    from notchbook.app.style_file import StyleFile
    from notchbook.checks import Report
    from notchbook.recipe import Replay


def check(
    style: StyleName,
    measures: OtherMeasures = None,
    take: Take = None,
    out: Annotated[
        Path | None,
        typer.Option(
            "--out",
            "-o",
            metavar="STYLE.json",
            help="With --take: write the style with the cure in it.",
            show_default=False,
        ),
    ] = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Check a style: seams, notches, darts, grain, hems.

    Ends with 0 when all is fine and with 1 when something is to be looked at.

    Example: notchbook check skirt.json

    Example: notchbook check skirt.json --measures marta.csv
    """
    from notchbook.app.style_file import read_style, run_style_taking
    from notchbook.body import read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.show_run import figure_data, figures_of, show_figures, show_judged

    body = None if measures is None else read_measures(measures)
    stored = read_style(style)
    words = tuple(take or ())
    run, taken = run_style_taking(stored, body, words)
    figures = figures_of(run, words, taken)
    report = _report(stored, run, taken)
    _write(run, out, (style, *(() if measures is None else (measures,))))
    looking = show_pattern.to_check(report)
    first = report.findings[0].code if report.findings else ""
    again = (
        f"notchbook why {first}"
        if looking and first
        else show_pattern.command("print", out or style, "--out pattern.pdf", measures=measures, unit=unit)
    )

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {run.measures.name}")
        screen.line()
        show_figures(screen, figures, unit)
        show_judged(screen, figures, report, unit)
        show_pattern.show_files(screen, {} if out is None else {"json": out})
        screen.next_steps((again,))

    data = {
        "style": run.recipe.name,
        "body": run.measures.name,
        **figure_data(figures, report),
        "next_step": again,
    }
    answer(data, show, as_json=as_json, to_check=looking)


def _report(stored: "StyleFile", run: "Replay", taken: "tuple[OfferedCure, ...]") -> "Report":
    """What the checks say; after a cure the stored geometry is not held against it: it changed on purpose."""
    from notchbook.app.examining import examine
    from notchbook.app.style_file import examine_style
    from notchbook.finish import production_table

    return examine(run, production_table()) if taken else examine_style(stored, run, production_table())


def _write(run: "Replay", out: Path | None, read: tuple[Path, ...]) -> None:
    if out is None:
        return
    from notchbook.app.staging import refuse_over_input
    from notchbook.app.style_file import write_style

    refuse_over_input(out, read)
    write_style(run, out)
