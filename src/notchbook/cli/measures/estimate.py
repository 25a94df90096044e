"""`notchbook measures estimate`: what missing measures may be, and which to take next."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, PopulationChoice, garment_word
from notchbook.cli.screen import Screen
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.bodies.next_measure import NextMeasure
    from notchbook.app.needs.of_garment import GarmentEstimates
    from notchbook.body.estimating.estimate import Estimates
    from notchbook.body.estimating.stale import StaleEstimate


def estimate(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="Measures of one body (.json, .csv), or a file of bodies.")
    ],
    garment: Annotated[
        str,
        typer.Option(
            "--for",
            metavar="BLOCK|STYLE",
            callback=garment_word,
            help="Only that with which this block or style is drafted.",
            show_default=False,
        ),
    ] = "",
    out: Annotated[
        Path | None,
        typer.Option(
            "--out", "-o", metavar="FILE", help="Write the measures, filled in.", show_default=False
        ),
    ] = None,
    report: Annotated[
        Path | None,
        typer.Option(
            "--report",
            "-r",
            metavar="FILE.csv",
            help="For a file of bodies: each estimate and its ±.",
            show_default=False,
        ),
    ] = None,
    population: PopulationChoice = None,
    unit: Annotated[
        Unit | None,
        typer.Option(
            "--unit",
            "-u",
            help="Unit of lengths on the screen and in the report; that of the file if not given.",
            show_default=False,
        ),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Estimate what was not measured; say what to take next.

    Example: notchbook measures estimate client.json --population women --for skirt

    Example: notchbook measures estimate bodies.csv --report estimates.csv
    """
    from notchbook.body.files.file_form import holds_many_bodies

    if holds_many_bodies(file):
        from notchbook.cli.measures.estimate_bodies import estimate_bodies

        estimate_bodies(file, garment, (out, report), population, unit, as_json=as_json)
        return
    if report is not None:
        raise InputError("estimate-report-of-one", file=file.name)
    from notchbook.body.files.typed_unit import typed_unit

    typed: Unit = "in" if typed_unit(file) == "in" else "cm"
    _estimate_one(file, garment, out, population, unit or typed, as_json=as_json)


def _estimate_one(
    file: Path, garment: str, out: Path | None, population: PopulationChoice, unit: Unit, *, as_json: bool
) -> None:
    from notchbook.app.bodies.filling_estimates import with_population
    from notchbook.app.looking_over.first import look_over_first
    from notchbook.app.needs.of_garment import estimates_for, garment_named, next_for_garment
    from notchbook.app.staging import refuse_over_input
    from notchbook.body import read_measures, write_measures
    from notchbook.body.estimating.estimating import with_estimates
    from notchbook.body.estimating.stale import stale_estimates

    measures = with_population(read_measures(file), population)
    made_for = garment_named(garment) if garment else None
    told = estimates_for(made_for, measures)
    found = told.estimates
    stale = stale_estimates(measures)
    first = look_over_first(measures)
    next_up = next_for_garment(made_for, measures)
    if out is not None:
        refuse_over_input(out, (file,))
        write_measures(with_estimates(measures, tuple(found.found)), out)

    def show(screen: Screen) -> None:
        screen.line(f"{measures.name}, held against {found.people}")
        if first is not None:
            screen.line(f"look  {first.text()} {first.next_step()}  [{first.code}]")
        screen.line()
        _show_estimates(screen, found, measures.population, unit)
        _show_left_out(screen, told, measures.population)
        _show_stale(screen, stale, measures.population, unit)
        if out is not None:
            screen.line(f"written: {out}")
        screen.next_steps([one.words(LengthStyle(unit)) for one in next_up])

    data = {
        "name": measures.name,
        "population": measures.population,
        "people": found.people,
        "cautions": [caution.text() for caution in (*([first] if first else ()), *found.cautions)],
        "estimates": _estimate_data(found),
        "not_needed": list(told.idle),
        "not_estimated": [{"measure": one.key, "message": one.problem.text()} for one in found.left_out],
        "stale": [one.key for one in stale],
        "next_measures": [_next_data(one, unit) for one in next_up],
        "files": {} if out is None else {"measures": str(out)},
    }
    answer(data, show, as_json=as_json, to_check=bool(stale) or first is not None)


def _show_estimates(screen: Screen, found: "Estimates", population: PopulationChoice, unit: Unit) -> None:
    from notchbook.body import measure_entry
    from notchbook.body.estimate_method import NO_OTHER
    from notchbook.body.quantity_words import quantity_text, quantity_with_error, said_key

    style = LengthStyle(unit)
    columns = ("measure", "estimate", "nine of ten lie within", "source", "from")
    rows = []
    for key, one in found.found.items():
        entry = measure_entry(key)
        within = f"{quantity_text(entry, one.low, style)} to {quantity_text(entry, one.high, style)}"
        given = ", ".join(said_key(name, population) for name in one.given[:4]) or NO_OTHER
        estimated = quantity_with_error(entry, one.value, one.error, style)
        rows.append((said_key(key, population), estimated, within, one.source.words, given))
    if rows:
        screen.table(columns, rows, numbers=("estimate",))
        for people in dict.fromkeys(
            f"{one.source.words}: {one.source.people}" for one in found.found.values()
        ):
            screen.line(people)
        screen.line()
    for caution in found.cautions:
        screen.line(caution.text())


def _show_left_out(screen: Screen, told: "GarmentEstimates", population: PopulationChoice) -> None:
    from notchbook.body.quantity_words import said_key
    from notchbook.cli.show_estimates import not_filled_words

    left_out = told.estimates.left_out
    if left_out:
        screen.line(not_filled_words(left_out, population))
        for code in dict.fromkeys(one.problem.code for one in left_out):
            screen.line(f"     notchbook why {code}")
    if told.idle:
        said = ", ".join(said_key(key, population) for key in told.idle)
        screen.line(f"Not needed, for no line answers to it: {said}.")


def _show_stale(
    screen: Screen, stale: "tuple[StaleEstimate, ...]", population: PopulationChoice, unit: Unit
) -> None:
    from notchbook.body import plain_key
    from notchbook.body.quantity_words import estimate_text, measure_text

    style = LengthStyle(unit)
    for one in stale:
        stored = estimate_text(one.key, one.stored, style, population)
        plain = plain_key(one.key)
        now = "nothing is known now" if one.now is None else measure_text(plain, one.now.measure(), style)
        screen.line(f"look no longer follows: {stored}; now {now}")


def _estimate_data(found: "Estimates") -> list[dict[str, Any]]:
    """The estimates as data: mm, degrees or kg."""
    return [
        {
            "measure": key,
            "value": one.value,
            "error": one.error,
            "low": round(one.low, 6),
            "high": round(one.high, 6),
            "given": list(one.given),
            "source": one.source.kind,
            "source_people": one.source.people,
            "source_grade": one.source.grade,
            "method": one.method,
        }
        for key, one in found.found.items()
    ]


def _next_data(one: "NextMeasure", unit: Unit) -> dict[str, Any]:
    return {
        "measure": one.key,
        "reason": one.reason,
        "words": one.words(LengthStyle(unit)),
        "moves": None if one.moves is None else one.moves.name,
        "moves_mm": None if one.moves is None else round(one.moves.amount, 3),
        "before_mm": None if one.before is None else round(one.before, 3),
        "after_mm": None if one.after is None else round(one.after, 3),
    }
