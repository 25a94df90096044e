"""The words that the verbs of `notchbook client` share, and how a client is found by her number."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.open_book import BOOK_NAME

if TYPE_CHECKING:
    from notchbook.app.studio import Studio

ClientNumber = Annotated[
    str, typer.Argument(metavar="NUMBER", help="Number of her entry in the book, such as M-102.")
]

BookFile = Annotated[
    Path | None,
    typer.Option(
        "--book",
        "-b",
        metavar="FILE",
        envvar="NOTCHBOOK_BOOK",
        help="The book. Studio.notchbook in your own folder when not given.",
        show_default=False,
    ),
]

FurtherSpellings = Annotated[
    list[str] | None,
    typer.Option(
        "--also",
        metavar="WORD",
        help="Another spelling of her name to look for; may be repeated.",
        show_default=False,
    ),
]

InOtherTexts = Annotated[
    bool,
    typer.Option(
        "--in-other-texts", help="Take her name out of style names, notes and reasons of others too."
    ),
]

DeleteCopies = Annotated[
    bool, typer.Option("--delete-copies", help="Delete the copies of the book beside it that hold her.")
]

Confirmed = Annotated[
    bool, typer.Option("--yes", "-y", help="Do it without asking; without a terminal it is needed.")
]


@contextmanager
def open_studio(book: Path | None) -> "Iterator[Studio]":
    """The studio of a book that is there; a missing one is refused (``book-missing``), never made."""
    from notchbook.app.studio import Studio

    studio = Studio.open_existing(book or Path.home() / BOOK_NAME)
    try:
        yield studio
    finally:
        studio.close()
