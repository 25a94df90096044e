"""`notchbook mtm`: made to measure, one block or style for every body of a file."""

import os
from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, GarmentName, Settings, Take, UnitChoice
from notchbook.cli.progress import progress_of_bodies
from notchbook.cli.screen import Screen


def mtm(
    garment: GarmentName,
    bodies: Annotated[
        Path, typer.Option("--bodies", "-b", metavar="FILE.csv", help="One body a line.", show_default=False)
    ],
    report: Annotated[
        Path,
        typer.Option("--report", "-r", metavar="FILE.csv", help="What came of each.", show_default=False),
    ],
    settings: Settings = None,
    unit: UnitChoice = "cm",
    take: Take = None,
    cores: Annotated[
        int | None,
        typer.Option("--cores", metavar="N", help="How many cores work; all when not given.", min=1),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Draft a block, or run a style, for every body of a file.

    A body that cannot be drafted gets its reason in the report, and the rest goes on.

    Example: notchbook mtm skirt --bodies bodies.csv --report report.csv

    Example: notchbook mtm S-206 --bodies bodies.csv --report report.csv
    """
    from notchbook.app.made_to_measure import GarmentAsked, make_to_measure
    from notchbook.app.rack.named import recipe_named
    from notchbook.app.settings import read_garment_settings
    from notchbook.errors import InputError

    most = os.cpu_count() or 1
    if cores is not None and cores > most:
        raise InputError("cores-unusable", cores=cores, most=most)
    recipe = recipe_named(garment)
    parameters = read_garment_settings(garment, recipe, settings or (), unit)
    asked = GarmentAsked(garment, parameters, tuple(take or ()), recipe)
    with progress_of_bodies() as progress:
        made = make_to_measure(asked, bodies, report, cores=cores, progress=progress)
    refused = made.bodies - made.drafted
    rate = made.bodies / made.seconds if made.seconds else 0.0
    step = f"open {report}: the column code says what stopped a body, and notchbook why CODE explains it"

    def show(screen: Screen) -> None:
        screen.line(
            f"{made.bodies} bodies: {made.drafted} drafted, {refused} refused, {made.flagged} to look at"
        )
        if made.cured:
            screen.line(f"{made.cured} of them with a cure that was asked for")
        screen.line(f"{made.seconds:.1f} s on {made.cores} cores, {rate:.0f} bodies a second")
        screen.line(f"written: {report}")
        screen.next_steps((step,))

    data = {
        "bodies": made.bodies,
        "drafted": made.drafted,
        "refused": refused,
        "cured": made.cured,
        "flagged": made.flagged,
        "seconds": round(made.seconds, 3),
        "cores": made.cores,
        "files": {"report": str(report)},
        "next_step": step,
    }
    answer(data, show, as_json=as_json, to_check=bool(refused or made.flagged))
