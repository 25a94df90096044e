"""`notchbook draft`: a block, or a style of the rack, from measures."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.asking import drafted_asking
from notchbook.cli.options import (
    AsJson,
    DateText,
    DespiteFindings,
    FillIn,
    GarmentName,
    HouseFile,
    MeasuresFile,
    PaperChoice,
    PaperWord,
    PopulationChoice,
    RevisionText,
    Settings,
    Take,
    UnitChoice,
    WaistWord,
    typed_block,
)
from notchbook.cli.screen import Screen
from notchbook.errors import DraftRefused, NotchbookError
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.draft_order import Drafted, DraftOrder
    from notchbook.app.needs.drafted_doubts import DraftedDoubts
    from notchbook.app.papers import Job
    from notchbook.checks import Report
    from notchbook.recipe import Replay


def draft(
    garment: GarmentName,
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
    take: Take = None,
    waist: WaistWord = None,
    show_all: Annotated[
        bool, typer.Option("--all", help="Show the blocks that it is drafted with in full too.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Draft a block, or run a style, on measures; show its ease.

    A sleeve is drafted with the bodice that it goes into; `--set bodice.length=hip` sets something of that.
    Of a style each step can be set by its name.

    Example: notchbook draft skirt --measures form_a.json --out skirt.json

    Example: notchbook draft skirt -m marta.csv --unit in --set "length=23 1/2" --set back_darts=1

    Example: notchbook draft skirt -m client.json --estimate --population women --out skirt.json

    Example: notchbook draft S-205 -m client.json --out trousers.json
    """
    from notchbook.app.bodies.filling_estimates import with_population
    from notchbook.app.draft_order import DraftOrder
    from notchbook.app.needs.drafted_doubts import doubts_of_draft
    from notchbook.app.papers import job_of
    from notchbook.app.rack.named import recipe_named
    from notchbook.app.settings import read_garment_settings
    from notchbook.body import read_measures
    from notchbook.cli import show_contradictions, show_pattern
    from notchbook.cli.dates import paper_date
    from notchbook.cli.focus import WHOLE, Focus
    from notchbook.cli.house import read_house
    from notchbook.cli.show_estimates import not_filled_data
    from notchbook.cli.show_run import figure_data, figures_of, show_figures, show_judged

    stated = paper_date(date)
    body = with_population(read_measures(measures), population)
    recipe = recipe_named(garment)
    parameters = read_garment_settings(garment, recipe, settings or (), unit)
    asked = DraftOrder(garment, body, parameters, estimate, tuple(take or ()), waist, recipe)
    order, done = _carried_out(asked, unit, measures, as_json=as_json)
    run, filled = done.run, done.filled
    figures = figures_of(run, order.take, done.taken)
    job = job_of(
        run,
        stated,
        read_house(house),
        revision=revision,
        lengths=LengthStyle(unit),
        despite_findings=despite_findings,
    )
    read = (measures,) if recipe is None else (measures, Path(garment))
    report = _written(job, out, read, paper)
    files = {} if out is None else {out.suffix.lstrip(".").lower(): out}
    asked_about = doubts_of_draft(run, LengthStyle(unit))
    steps = _next_steps(order, measures, out, unit)
    if filled is not None and filled.keys:
        steps = _with_estimates(steps, garment, measures, population)

    focus = WHOLE if recipe is not None else Focus(run.recipe.steps[-1].slug, is_whole=show_all)

    def show(screen: Screen) -> None:
        screen.line(f"{run.recipe.name} for {body.name}")
        screen.line()
        show_figures(screen, figures, unit, filled, focus)
        show_pattern.show_settings(screen, order.parameters)
        show_contradictions.show_substituted(screen, body, order.measures, unit)
        _show_doubts(screen, asked_about, LengthStyle(unit))
        show_judged(screen, figures, report, unit, focus)
        show_contradictions.show_question(screen, figures.contradictions, run.measures, order.waist)
        show_pattern.show_files(screen, files)
        screen.next_steps(steps)

    data = {
        "block" if recipe is None else "style": garment,
        "body": body.name,
        "parameters": run.recipe.steps[-1].parameters,
        "steps": _step_data(run),
        **_doubt_data(asked_about),
        **figure_data(figures, report),
        **not_filled_data(filled),
        "files": show_pattern.file_data(files),
        "next_step": steps[0],
    }
    answer(data, show, as_json=as_json, to_check=bool(asked_about.doubts) or show_pattern.to_check(report))


def _carried_out(
    order: "DraftOrder", unit: Unit, measures: Path, *, as_json: bool
) -> "tuple[DraftOrder, Drafted]":
    """The order carried out; beside a refusal stands what was set by hand, and what looking the measures over
    says."""
    from notchbook.app.needs.refused_measures import note_doubts
    from notchbook.cli.show_pattern import typed

    try:
        return drafted_asking(order, unit, as_json=as_json)
    except NotchbookError as refused:
        if order.parameters:
            by_hand = ", ".join(f"{name}={value}" for name, value in order.parameters.items())
            refused.add_note(f"Set by hand: {by_hand}.")
        if isinstance(refused, DraftRefused):
            note_doubts(refused, order.measures, LengthStyle(unit))
            refused.add_note(f"To look all of them over: notchbook measures check {typed(measures)}")
        elif refused.code == "measure-missing" and not order.estimate:
            refused.add_note("With --estimate it is filled in, and every paper says so.")
        raise


def _doubt_data(told: "DraftedDoubts") -> dict[str, Any]:
    return {
        "doubts": [{"code": doubt.code, "message": doubt.problem.text()} for doubt in told.doubts],
        "not_held": None if told.note is None else told.note.code,
    }


def _step_data(run: "Replay") -> list[dict[str, Any]]:
    """Every block that was drafted, with all that its draft stands on."""
    return [
        {"step": record.id, "operation": record.operation, "parameters": record.parameters}
        for record in run.recipe.steps
    ]


def _show_doubts(screen: Screen, told: "DraftedDoubts", style: LengthStyle) -> None:
    """What is to be looked at in the measures themselves, and one note on what they were not held against."""
    from notchbook.app.finding_words import in_words

    for doubt in told.doubts:
        screen.line(f"look {doubt.problem.text(in_words(style))}  [{doubt.code}]")
    if told.note is not None:
        screen.line(f"note {told.note.text()}  [{told.note.code}]")


def _written(job: "Job", out: Path | None, read: tuple[Path, ...], paper: PaperWord) -> "Report":
    """Write the draft where it is to go; the report of the checks in any case."""
    from notchbook.app.examining import examine
    from notchbook.app.papers import write_draft
    from notchbook.app.staging import refuse_over_input

    if out is None:
        return examine(job.replay, job.house)
    refuse_over_input(out, read)
    return write_draft(job, out, paper)


def _with_estimates(
    steps: tuple[str, ...], garment: str, measures: Path, population: str | None
) -> tuple[str, ...]:
    """The step that drafts again fills in the same estimates; and how to learn what to measure next."""
    from notchbook.cli.show_pattern import typed

    named = f" --population {population}" if population else ""
    again = tuple(
        step.replace(" --out ", f" --estimate{named} --out ", 1) if " draft " in step else step
        for step in steps
    )
    ask = f"notchbook measures estimate {typed(measures)} --for {garment}{named}   (what to measure next)"
    return (*again, ask)


def _next_steps(order: "DraftOrder", measures: Path, out: Path | None, unit: Unit) -> tuple[str, ...]:
    from notchbook.cli.show_pattern import command, typed

    stem = _file_stem(order)
    garment = f'"{order.garment}"' if " " in order.garment else typed_block(order.garment)
    words = [f"notchbook draft {garment} --measures {typed(measures)}"]
    words += [f'--set "{name}={value}"' for name, value in order.parameters.items()]
    words += [f"--take {word}" for word in order.take]
    words += [] if order.waist is None else [f"--waist {order.waist}"]
    words += [] if unit == "cm" else [f"--unit {unit}"]
    if out is None:
        return (" ".join([*words, f"--out {stem}.json   (keeps the style)"]),)
    if out.suffix.lower() in (".png", ".svg"):
        return (" ".join([*words, f"--out {stem}.pdf   (to print at full size)"]),)
    if out.suffix.lower() == ".json":
        return (
            command("cut", out, "  (the pieces, cut-ready)", unit=unit),
            command("print", out, "--out pattern.pdf --card card.pdf", unit=unit),
        )
    return ("Measure the test square on the print before you cut; sew a muslin before cloth.",)


def _file_stem(order: "DraftOrder") -> str:
    """What the file of the draft may be called: the block, or the name of the style for this body."""
    if order.recipe is None:
        return order.garment
    words = f"{order.recipe.name} {order.measures.name}".lower()
    return "_".join("".join(sign if sign.isalnum() else " " for sign in words).split())
