"""`notchbook draft`: a block from measures."""

from collections.abc import Mapping
from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import (
    AsJson,
    BlockName,
    DateText,
    DespiteFindings,
    HouseFile,
    MeasuresFile,
    PaperChoice,
    RevisionText,
    Settings,
    UnitChoice,
)
from notchbook.cli.screen import Screen
from notchbook.units import Unit


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
    as_json: AsJson = False,
) -> None:
    """Draft a block from measures; show its ease.

    Example: notchbook draft skirt --measures form_a.json --out skirt.json

    Example: notchbook draft skirt -m marta.csv --unit in --set "length=23 1/2" --set back_darts=1
    """
    from notchbook.app.drafting import draft as drafted
    from notchbook.app.examining import ease_table, examine
    from notchbook.app.papers import job_of, write_draft
    from notchbook.app.settings import read_settings
    from notchbook.app.staging import refuse_over_input
    from notchbook.body import check_consistent, read_measures
    from notchbook.cli import show_pattern
    from notchbook.cli.dates import paper_date
    from notchbook.cli.house import read_house
    from notchbook.units import LengthStyle

    stated = paper_date(date)
    body = read_measures(measures)
    chosen = read_settings(block, settings or (), unit)
    run = drafted(block, body, chosen)
    job = job_of(
        run,
        stated,
        read_house(house),
        revision=revision,
        lengths=LengthStyle(unit),
        despite_findings=despite_findings,
    )
    files: dict[str, Path] = {}
    if out is None:
        report = examine(run, job.house)
    else:
        refuse_over_input(out, (measures,))
        report = write_draft(job, out, paper)
        files[out.suffix.lstrip(".").lower()] = out
    doubts = check_consistent(body, LengthStyle(unit))
    girths = ease_table(run)
    steps = _next_steps(block, measures, chosen, out, unit)

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {body.name}")
        screen.line()
        show_pattern.show_girths(screen, girths, unit)
        show_pattern.show_settings(screen, chosen)
        for doubt in doubts:
            screen.line(f"look {doubt.problem.text()}  [{doubt.code}]")
        show_pattern.show_report(screen, report)
        show_pattern.show_files(screen, files)
        screen.next_steps(steps)

    data = {
        "block": block,
        "body": body.name,
        "parameters": run.recipe.steps[0].parameters,
        "girths": show_pattern.girth_data(girths),
        "doubts": [{"code": doubt.code, "message": doubt.problem.text()} for doubt in doubts],
        "report": report.to_data(),
        "files": show_pattern.file_data(files),
        "next_step": steps[0],
    }
    answer(data, show, as_json=as_json, to_check=bool(doubts) or show_pattern.to_check(report))


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
