"""`notchbook client export`: a client's data to take away."""

from pathlib import Path
from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.client.words import BookFile, ClientNumber, open_studio
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen


def export(
    number: ClientNumber,
    out: Annotated[
        Path,
        typer.Option("--out", "-o", metavar="FILE.zip", help="The archive to write.", show_default=False),
    ],
    book: BookFile = None,
    as_json: AsJson = False,
) -> None:
    """Write a client's measures, their history and the styles for her as one archive of plain files.

    It can be read without Notchbook; a README inside says what each file is.

    Example: notchbook client export M-102 --out m-102.zip
    """
    with open_studio(book) as studio:
        written = studio.export_client(studio.find_client(number), out)

    def show(screen: Screen) -> None:
        screen.line(f"written: {written}")
        screen.line(
            "It holds personal data: hand it to nobody but her, and delete it when it is handed over."
        )

    answer({"files": {"export": str(written)}}, show, as_json=as_json)
