"""`notchbook measures import`: a client list or a size chart from elsewhere, with a preview."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen, err, out
from notchbook.cli.stopping import stop_noted
from notchbook.units import Unit, counted

if TYPE_CHECKING:
    from notchbook.app.charts.importing import ImportReport
    from notchbook.body.charts import ChartDoubt
    from notchbook.body.importing import Answers, KnownNames, Preview

AgainWord = Literal["skip", "add"]
LayoutWord = Literal["body_a_row", "measure_a_row", "sizes_across"]
KindWord = Literal["body", "form", "chart"]
PopulationWord = Literal["women", "men"]


def import_measures(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="CSV or JSON text; - reads what is pasted or piped in.")
    ],
    book: Annotated[
        Path | None,
        typer.Option(
            "--book",
            "-b",
            metavar="FILE",
            help="Store in this book; made when it is not there.",
            show_default=False,
        ),
    ] = None,
    out_place: Annotated[
        Path | None,
        typer.Option(
            "--out",
            "-o",
            metavar="PLACE",
            help="Write to one .csv or .json file, or to a folder with a file for each.",
            show_default=False,
        ),
    ] = None,
    unit: Annotated[
        Unit | None,
        typer.Option("--unit", "-u", help="Unit of bare numbers where the table names none."),
    ] = None,
    column: Annotated[
        list[str] | None,
        typer.Option(
            "--column",
            "-c",
            metavar="NAME=MEASURE:UNIT",
            help="What a column or row means, such as 'Hip=hip_girth:in'; may be repeated.",
            show_default=False,
        ),
    ] = None,
    skip: Annotated[
        list[str] | None,
        typer.Option(
            "--skip", metavar="NAME", help="Leave out a column or row; may be repeated.", show_default=False
        ),
    ] = None,
    skip_unknown: Annotated[
        bool, typer.Option("--skip-unknown", help="Leave out every column or row whose words are not known.")
    ] = False,
    layout: Annotated[
        LayoutWord | None,
        typer.Option("--layout", help="How the table is laid out, when it is not found out."),
    ] = None,
    kind: Annotated[KindWord | None, typer.Option("--kind", help="What the sets are.")] = None,
    population: Annotated[
        PopulationWord | None, typer.Option("--population", help="Whom the measures are held against.")
    ] = None,
    only_good: Annotated[
        bool, typer.Option("--only-good", help="Store the good rows although others are refused.")
    ] = False,
    again: Annotated[
        AgainWord | None,
        typer.Option(
            "--again", help="What becomes of rows whose names the book has: left out, or kept as others."
        ),
    ] = None,
    row: Annotated[
        list[str] | None,
        typer.Option(
            "--row",
            metavar="NUMBER=UNIT",
            help="Of one row: its unit (6=cm), 6=skip or 6=add; may be repeated.",
            show_default=False,
        ),
    ] = None,
    yes: Annotated[bool, typer.Option("--yes", "-y", help="Store without asking.")] = False,
    as_json: AsJson = False,
) -> None:
    """Import a foreign table of measures: first a preview, then all of it or nothing.

    Example: notchbook measures import clients.csv --unit in --book studio.notchbook
    """
    from notchbook.body.importing import Answers, read_line_answer, read_row_answer

    said = Answers(
        unit,
        tuple(read_line_answer(text) for text in column or ()),
        tuple(skip or ()),
        skip_unknown,
        kind,
        population,
        tuple(read_row_answer(text) for text in row or ()),
        again,
    )
    shown = _preview(file, said, layout, _known(book))
    if not yes:
        _show_only(shown, as_json=as_json, has_place=bool(book or out_place), only_good=only_good)
        _ask(shown, book, out_place)
    with stop_noted() as stopping:
        report = _store(shown, file, book, out_place, only_good=only_good, should_stop=stopping.is_set)
        _tell(shown, report, book, as_json=as_json, too_late=stopping.is_set())


def _known(book: Path | None) -> "KnownNames":
    """The names in the book; none where there is no book yet."""
    from notchbook.app.charts.importing import names_in
    from notchbook.app.studio import Studio

    if book is None or not book.exists():
        return {}
    studio = Studio.open_existing(book)
    try:
        return names_in(studio)
    finally:
        studio.close()


def _preview(file: Path, said: "Answers", layout: LayoutWord | None, known: "KnownNames") -> "Preview":
    from notchbook.app.charts.importing import preview_file, preview_text
    from notchbook.body.files.text_file import text_of_bytes

    if str(file) == "-":
        return preview_text(text_of_bytes(sys.stdin.buffer.read(), "pasted"), "pasted", said, layout, known)
    return preview_file(file, said, layout, known)


def _show_only(shown: "Preview", *, as_json: bool, has_place: bool, only_good: bool) -> None:
    """Show the preview, and end here unless she can be asked at a terminal."""
    from notchbook.body.importing.preview_data import preview_data
    from notchbook.cli.measures.show_preview import next_steps, show_preview

    doubts = _chart_doubts(shown)
    steps = next_steps(shown, has_place=has_place, only_good=only_good)
    stores = has_place and not steps and shown.good > 0
    if stores and not as_json and sys.stdin.isatty() and sys.stdout.isatty():
        show_preview(out(), shown, doubts)
        return
    if stores:
        steps = ("add --yes to store it",)

    def show(screen: Screen) -> None:
        show_preview(screen, shown, doubts)
        screen.next_steps(steps)

    chart = [{"level": doubt.level, "code": doubt.code, "message": doubt.problem.text()} for doubt in doubts]
    data = {**preview_data(shown), "chart_doubts": chart, "stored": None, "next_steps": list(steps)}
    to_check = bool(shown.questions or shown.refused or shown.to_check or doubts)
    answer(data, show, as_json=as_json, to_check=to_check)


def _chart_doubts(shown: "Preview") -> tuple["ChartDoubt", ...]:
    from notchbook.body.importing import chart_doubts
    from notchbook.cli.measures.show_preview import style_of

    return chart_doubts(shown, style_of(shown))


def _ask(shown: "Preview", book: Path | None, out_place: Path | None) -> None:
    if not typer.confirm(f"Store {counted(shown.good, 'set')} in {book or out_place}?"):
        out().line("Nothing was stored.")
        raise typer.Exit


def _store(
    shown: "Preview",
    file: Path,
    book: Path | None,
    out_place: Path | None,
    *,
    only_good: bool,
    should_stop: Callable[[], bool],
) -> "ImportReport":
    from notchbook.app.charts.importing import import_into, import_to_files
    from notchbook.app.studio import Studio
    from notchbook.errors import InputError

    if (book is None) == (out_place is None):
        raise InputError("import-place")
    # Said before a book is made for nothing.
    shown.sets(only_good=only_good)
    with _progress(shown.good) as progress:
        if out_place is not None:
            source = None if str(file) == "-" else file
            return import_to_files(
                shown,
                out_place,
                only_good=only_good,
                source=source,
                progress=progress,
                should_stop=should_stop,
            )
        assert book is not None
        studio = Studio.open(book)
        try:
            return import_into(studio, shown, only_good=only_good, progress=progress, should_stop=should_stop)
        finally:
            studio.close()


def _tell(
    shown: "Preview", report: "ImportReport", book: Path | None, *, as_json: bool, too_late: bool
) -> None:
    from notchbook.body.importing.preview_data import preview_data

    numbers = [entry.number for entry in report.entries]
    files = [str(path) for path in report.files]
    place = (
        f"{book}: {_range(numbers)}" if numbers else files[0] if len(files) == 1 else f"{len(files)} files"
    )

    def show(screen: Screen) -> None:
        if too_late:
            screen.line("The stop came when all was stored.")
        screen.line(f"stored: {counted(report.stored, 'set')} in {place}")
        if report.left_out:
            screen.line(f"left out: {counted(report.left_out, 'row')}, as you said")
        if report.left:
            screen.line(f"left: {counted(report.left, 'refused row')}")

    stored: dict[str, Any] = {
        "stored": report.stored,
        "left": report.left,
        "left_out": report.left_out,
        "numbers": numbers,
        "files": files,
    }
    answer(
        {**preview_data(shown), "stored": stored},
        show,
        as_json=as_json,
        to_check=bool(report.left or shown.to_check),
    )


def _range(numbers: list[str]) -> str:
    return numbers[0] if len(numbers) == 1 else f"{numbers[0]} to {numbers[-1]}"


@contextmanager
def _progress(total: int) -> Iterator[Callable[[int], None] | None]:
    """A bar on the error stream, where that is a terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.progress import BarColumn, Progress, TextColumn

    columns = (BarColumn(), TextColumn("{task.completed:.0f} stored"))
    with Progress(*columns, console=err().console, transient=True) as shown:
        task = shown.add_task("sets", total=total)
        yield lambda done: shown.update(task, completed=done)
