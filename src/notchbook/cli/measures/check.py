"""`notchbook measures check`: look measures over before anything is drafted from them."""

import os
from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.measures.show_looked_over import bodies_data, one_data, show_bodies, show_one
from notchbook.cli.options import AsJson, PopulationChoice
from notchbook.cli.progress import progress_of_bodies
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def check(
    file: Annotated[
        Path,
        typer.Argument(
            metavar="FILE", help="Measures of one body (.json, .csv), a file of bodies, or a size chart."
        ),
    ],
    population: PopulationChoice = None,
    report: Annotated[
        Path | None,
        typer.Option(
            "--report",
            "-r",
            metavar="FILE.csv",
            help="For a file of bodies: a line each.",
            show_default=False,
        ),
    ] = None,
    unit: Annotated[
        Unit | None,
        typer.Option(
            "--unit", "-u", help="Unit on the screen; that of the file if not given.", show_default=False
        ),
    ] = None,
    cores: Annotated[
        int | None,
        typer.Option("--cores", metavar="N", help="How many cores work; all when not given.", min=1),
    ] = None,
    whole: Annotated[
        bool, typer.Option("--all", help="All that this cannot see, not only the worst three.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Look measures over: what cannot be, what does not go together, what was probably meant.

    Nothing in the file is changed.

    Example: notchbook measures check client.csv --population women

    Example: notchbook measures check bodies.csv --population women --report looked-over.csv
    """
    from notchbook.body.charts import holds_chart
    from notchbook.body.files.file_form import holds_many_bodies
    from notchbook.cli.measures.check_size_chart import check_size_chart
    from notchbook.errors import InputError

    if holds_many_bodies(file):
        most = os.cpu_count() or 1
        if cores is not None and cores > most:
            raise InputError("cores-unusable", cores=cores, most=most)
        _check_bodies(file, population, report, LengthStyle(unit or "cm"), cores or most, as_json)
    if report is not None:
        raise InputError("report-of-one-body", file=file.name)
    if holds_chart(file):
        check_size_chart(file, population, unit, as_json=as_json)
    _check_one(file, population, unit, whole=whole, as_json=as_json)


def _check_one(
    file: Path, population: PopulationChoice, unit: Unit | None, *, whole: bool, as_json: bool
) -> None:
    from notchbook.app.looking_over.whole_file import look_over_file

    measures, looked, style = look_over_file(file, population, unit)

    def show(screen: Screen) -> None:
        show_one(screen, measures, looked, style, whole=whole)

    answer(one_data(measures, looked, style), show, as_json=as_json, to_check=looked.level != "fine")


def _check_bodies(
    file: Path,
    population: PopulationChoice,
    report: Path | None,
    style: LengthStyle,
    cores: int,
    as_json: bool,
) -> None:
    from notchbook.app.looking_over.whole_file import look_over_bodies

    with progress_of_bodies() as progress:
        done = look_over_bodies(file, population, style, report, cores=cores, progress=progress)

    def show(screen: Screen) -> None:
        show_bodies(screen, done, style, report)

    to_check = bool(done.shifts) or any(row.asks for row in done.rows)
    answer(bodies_data(done, report), show, as_json=as_json, to_check=to_check)
