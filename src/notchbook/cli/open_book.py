"""`notchbook open`: the workroom in the browser."""

from pathlib import Path
from typing import Annotated

import typer

BOOK_NAME = "Studio.notchbook"
"""In the user's own folder: the same book, from wherever the command is typed."""


def open_book(
    book: Annotated[
        Path | None,
        typer.Option(
            "--book",
            "-b",
            metavar="FILE",
            envvar="NOTCHBOOK_BOOK",
            help="The book; made when it is not there. Studio.notchbook in your own folder when not given.",
            show_default=False,
        ),
    ] = None,
    port: Annotated[
        int | None,
        typer.Option(
            "--port", metavar="N", help="Port on this computer; a free one by default.", min=1, max=65535
        ),
    ] = None,
    browser: Annotated[bool, typer.Option(help="Open the browser too.")] = True,
) -> None:
    """Open the workroom in the browser.

    Ends with Ctrl-C; every change is on disk by then.

    Example: notchbook open --book studio.notchbook
    """
    from importlib import import_module
    from importlib.util import find_spec

    from notchbook.errors import OutputError

    if find_spec("notchbook.workroom") is None or find_spec("notchbook.workroom.serve") is None:
        raise OutputError("page-missing", detail="notchbook.workroom is not installed")
    import_module("notchbook.workroom.serve").serve(
        book=book or Path.home() / BOOK_NAME, port=port, open_browser=browser
    )
