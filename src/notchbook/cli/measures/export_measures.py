"""`notchbook measures export`: bodies of a book as files."""

from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.open_book import BOOK_NAME
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen
from notchbook.units import Unit


def export_measures(
    out_file: Annotated[
        Path,
        typer.Option(
            "--out", "-o", metavar="FILE", help="A .csv or .json file to write.", show_default=False
        ),
    ],
    numbers: Annotated[
        list[str] | None,
        typer.Argument(metavar="[NUMBER]...", help="Such as M-101; all bodies of the book when not given."),
    ] = None,
    book: Annotated[
        Path | None,
        typer.Option(
            "--book",
            "-b",
            metavar="FILE",
            envvar="NOTCHBOOK_BOOK",
            help="The book. Studio.notchbook in your own folder when not given.",
            show_default=False,
        ),
    ] = None,
    unit: Annotated[Unit, typer.Option("--unit", "-u", help="Unit of the lengths in the file.")] = "mm",
    as_json: AsJson = False,
) -> None:
    """Write bodies of a book to a file: one as it is read by other commands, several as a bodies file.

    Example: notchbook measures export M-101 --book studio.notchbook --out petra.json --unit cm
    """
    from notchbook.app.exporting import export_bodies
    from notchbook.app.studio import Studio
    from notchbook.errors import BookError

    place = book or Path.home() / BOOK_NAME
    if not place.exists():
        # A book is not made only to be found empty.
        raise BookError("book-missing", path=str(place))
    studio = Studio.open(place)
    try:
        report = export_bodies(studio, out_file, numbers or (), unit)
    finally:
        studio.close()

    def show(screen: Screen) -> None:
        count = len(report.numbers)
        screen.line(f"written: {report.path} ({count} {'body' if count == 1 else 'bodies'})")

    data = {"files": {"bodies": str(report.path)}, "numbers": list(report.numbers), "unit": unit}
    answer(data, show, as_json=as_json)
