"""`notchbook print`: the pattern on paper, and the cutter's must."""

from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import (
    AsJson,
    DateText,
    DespiteFindings,
    HouseFile,
    OtherMeasures,
    PaperChoice,
    RevisionText,
    StyleName,
    UnitChoice,
)
from notchbook.cli.screen import Screen


def print_pattern(
    style: StyleName,
    out: Annotated[
        Path, typer.Option("--out", "-o", metavar="FILE.pdf", help="The tiled pattern.", show_default=False)
    ],
    card: Annotated[
        Path | None,
        typer.Option("--card", metavar="FILE.pdf", help="The cutter's must too.", show_default=False),
    ] = None,
    paper: PaperChoice = "both",
    measures: OtherMeasures = None,
    unit: UnitChoice = "cm",
    date: DateText = "",
    revision: RevisionText = "",
    house: HouseFile = None,
    despite_findings: DespiteFindings = False,
    as_json: AsJson = False,
) -> None:
    """Print a style true to size, and its cutter's must.

    Refused while a check finds what would spoil cloth.

    Example: notchbook print skirt.json --out pattern.pdf --paper a4 --card card.pdf
    """
    from dataclasses import replace

    from notchbook.app.bodies.resting_on_estimates import rested_on
    from notchbook.app.papers import job_of, write_pattern
    from notchbook.app.style_file import drift_of, read_style, run_style
    from notchbook.body import read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.dates import paper_date
    from notchbook.cli.house import read_house
    from notchbook.cli.show_estimates import estimate_data, show_estimates
    from notchbook.units import LengthStyle

    stated = paper_date(date)
    body = None if measures is None else read_measures(measures)
    stored = read_style(style)
    run = run_style(stored, body)
    job = job_of(
        run,
        stated,
        read_house(house),
        revision=revision,
        lengths=LengthStyle(unit),
        despite_findings=despite_findings,
    )
    ready = write_pattern(replace(job, drift=drift_of(stored, run)), out, card, paper)
    estimates = rested_on(run)
    files = {"pattern": out} if card is None else {"pattern": out, "card": card}
    steps = (
        "Print it at 100 % (no fitting to the page), and measure the test square before you cut.",
        "Sew a muslin before you cut cloth: a checked pattern is not a fitted one.",
    )

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {run.measures.name}")
        show_estimates(screen, estimates, run.measures.population, unit)
        show_pattern.show_report(screen, ready.report, unit)
        show_pattern.show_files(screen, files)
        screen.next_steps(steps)

    data = {
        "style": run.recipe.name,
        "body": run.measures.name,
        "estimates": estimate_data(estimates),
        "report": ready.report.to_data(),
        "files": show_pattern.file_data(files),
        "next_step": steps[0],
    }
    answer(data, show, as_json=as_json, to_check=show_pattern.to_check(ready.report))
