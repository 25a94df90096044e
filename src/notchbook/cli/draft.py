"""`notchbook draft`: a block from measures."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import (
    AsJson,
    BlockName,
    DateText,
    DespiteFindings,
    FillIn,
    HouseFile,
    MeasuresFile,
    PaperChoice,
    PaperWord,
    PopulationChoice,
    RevisionText,
    Settings,
    UnitChoice,
)
from notchbook.cli.screen import Screen
from notchbook.units import Unit

if TYPE_CHECKING:
    from notchbook.app.papers import Job
    from notchbook.checks import Report


def draft(
    block: BlockName,
    measures: MeasuresFile,
    out: Annotated[
        Path | None,
        typer.Option(
            "--out",
            "-o",
            metavar="FILE",
            help="Write the draft: .json keeps the style, .pdf prints, .svg and .png show.",
            show_default=False,
        ),
    ] = None,
    settings: Settings = None,
    unit: UnitChoice = "cm",
    paper: PaperChoice = "both",
    date: DateText = "",
    revision: RevisionText = "",
    house: HouseFile = None,
    despite_findings: DespiteFindings = False,
    estimate: FillIn = False,
    population: PopulationChoice = None,
    as_json: AsJson = False,
) -> None:
    """Draft a block from measures; show its ease.

    Example: notchbook draft skirt --measures form_a.json --out skirt.json

    Example: notchbook draft skirt -m marta.csv --unit in --set "length=23 1/2" --set back_darts=1

    Example: notchbook draft skirt -m client.json --estimate --population women --out skirt.json
    """
    from notchbook.app.drafting import draft as drafted
    from notchbook.app.examining import ease_table
    from notchbook.app.filling_estimates import fill_for_draft, with_population
    from notchbook.app.papers import job_of
    from notchbook.app.resting_on_estimates import rested_on
    from notchbook.app.settings import read_settings
    from notchbook.body import check_consistent, read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.dates import paper_date
    from notchbook.cli.house import read_house
    from notchbook.cli.show_estimates import (
        estimate_data,
        not_filled_data,
        show_estimates,
        show_not_filled,
    )
    from notchbook.units import LengthStyle

    stated = paper_date(date)
    body = with_population(read_measures(measures), population)
    chosen = read_settings(block, settings or (), unit)
    filled = fill_for_draft(body, block, chosen) if estimate else None
    body = body if filled is None else filled.measures
    run = drafted(block, body, chosen)
    job = job_of(
        run,
        stated,
        read_house(house),
        revision=revision,
        lengths=LengthStyle(unit),
        despite_findings=despite_findings,
    )
    report = _written(job, out, measures, paper)
    files = {} if out is None else {out.suffix.lstrip(".").lower(): out}
    doubts = check_consistent(body, LengthStyle(unit))
    girths, estimates = ease_table(run), rested_on(run)
    steps = _next_steps(block, measures, chosen, out, unit)
    if filled is not None and filled.keys:
        steps = _with_estimates(steps, block, measures, population)

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {body.name}")
        screen.line()
        show_estimates(screen, estimates, run.measures.population, unit)
        show_not_filled(screen, filled)
        show_pattern.show_girths(screen, girths, unit)
        show_pattern.show_settings(screen, chosen)
        for doubt in doubts:
            screen.line(f"look {doubt.problem.text()}  [{doubt.code}]")
        show_pattern.show_report(screen, report, unit)
        show_pattern.show_files(screen, files)
        screen.next_steps(steps)

    data = {
        "block": block,
        "body": body.name,
        "parameters": run.recipe.steps[0].parameters,
        "girths": show_pattern.girth_data(girths),
        "doubts": [{"code": doubt.code, "message": doubt.problem.text()} for doubt in doubts],
        "estimates": estimate_data(estimates),
        **not_filled_data(filled),
        "report": report.to_data(),
        "files": show_pattern.file_data(files),
        "next_step": steps[0],
    }
    answer(data, show, as_json=as_json, to_check=bool(doubts) or show_pattern.to_check(report))


def _written(job: "Job", out: Path | None, measures: Path, paper: PaperWord) -> "Report":
    """Write the draft where it is to go; the report of the checks in any case."""
    from notchbook.app.examining import examine
    from notchbook.app.papers import write_draft
    from notchbook.app.staging import refuse_over_input

    if out is None:
        return examine(job.replay, job.house)
    refuse_over_input(out, (measures,))
    return write_draft(job, out, paper)


def _with_estimates(
    steps: tuple[str, ...], block: str, measures: Path, population: str | None
) -> tuple[str, ...]:
    """The step that drafts again fills in the same estimates; and how to learn what to measure next."""
    from notchbook.cli.show_pattern import typed

    named = f" --population {population}" if population else ""
    again = tuple(
        step.replace(" --out ", f" --estimate{named} --out ", 1) if " draft " in step else step
        for step in steps
    )
    ask = f"notchbook measures estimate {typed(measures)} --for {block}{named}   (what to measure next)"
    return (*again, ask)


def _next_steps(
    block: str, measures: Path, chosen: Mapping[str, object], out: Path | None, unit: Unit
) -> tuple[str, ...]:
    from notchbook.cli.show_pattern import command, typed

    if out is None:
        words = [f"notchbook draft {block} --measures {typed(measures)}"]
        words += [f'--set "{name}={value}"' for name, value in chosen.items()]
        words += [] if unit == "cm" else [f"--unit {unit}"]
        return (" ".join([*words, f"--out {block}.json   (keeps the style)"]),)
    if out.suffix.lower() == ".json":
        return (
            command("cut", out, "  (the pieces, cut-ready)", unit=unit),
            command("print", out, "--out pattern.pdf --card card.pdf", unit=unit),
        )
    return ("Measure the test square on the print before you cut; sew a muslin before cloth.",)
