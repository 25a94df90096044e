"""`notchbook check`: what the checks say of a style."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, Take, UnitChoice
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.offered_cure import OfferedCure
    from notchbook.app.style_file import StyleFile
    from notchbook.checks import Report
    from notchbook.recipe import Replay
    from notchbook.units import Unit


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
    sizes: Annotated[
        str | None,
        typer.Option(
            "--sizes",
            metavar="CHART",
            help="Check every size of a chart: one line for each size and finding.",
            show_default=False,
        ),
    ] = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Check a style: seams, notches, darts, grain, hems, openings; and what steps would cure.

    Ends with 0 when all is fine and with 1 when something is to be looked at.

    Example: notchbook check skirt.json

    Example: notchbook check skirt.json --measures marta.csv

    Example: notchbook check skirt.json --sizes women
    """
    from notchbook.app.style_file import read_style, run_style_taking
    from notchbook.body import read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.show_run import figure_data, figures_of, show_figures, show_judged

    body = None if measures is None else read_measures(measures)
    stored = read_style(style)
    words = tuple(take or ())
    run, taken = run_style_taking(stored, body, words)
    if sizes is not None:
        _write(run, out, (style, *(() if measures is None else (measures,))))
        _by_size(run, sizes, unit, as_json=as_json)
        return
    figures = figures_of(run, words, taken)
    report = _report(stored, run, taken)
    _write(run, out, (style, *(() if measures is None else (measures,))))
    looking = show_pattern.to_check(report)
    first = _weightiest(report)
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


def _by_size(run: "Replay", word: str, unit: "Unit", *, as_json: bool) -> None:
    """The same recipe, with the cures that were taken, in every size of the chart."""
    from notchbook.app.checked_by_size import checked_by_size
    from notchbook.app.comparing.measures import read_chart_named
    from notchbook.cli.show_sizes_checked import show_sizes_checked, sizes_checked_data

    chart = read_chart_named(word)
    checked = checked_by_size(run.recipe, [chart.size(label) for label in chart.labels])
    data = {"style": run.recipe.name, "chart": word, "sizes": sizes_checked_data(checked)}
    to_check = not all(size.is_right for size in checked)
    answer(data, lambda screen: show_sizes_checked(screen, checked, unit), as_json=as_json, to_check=to_check)


def _weightiest(report: "Report") -> str:
    """The code of the finding that weighs most, the first of several; empty without one."""
    from notchbook.pattern import Severity

    weights = list(Severity)
    found = min(report.findings, key=lambda finding: weights.index(finding.severity), default=None)
    return "" if found is None else found.code


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
