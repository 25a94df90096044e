"""`notchbook why`: the help page of a code."""

from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen


def why(
    code: Annotated[
        str, typer.Argument(metavar="CODE", help="The word in square brackets at the end of a message.")
    ],
    as_json: AsJson = False,
) -> None:
    """Explain a message by its code.

    Example: notchbook why measure-missing
    """
    from dataclasses import asdict
    from textwrap import fill

    from notchbook.app.explaining import explain

    page = explain(code)

    def show(screen: Screen) -> None:
        screen.line(page.code)
        screen.line()
        for text in (page.title, page.why, f"What to do: {page.next_step}"):
            screen.line(fill(" ".join(text.split()), 90, break_long_words=False))
            screen.line()

    answer(asdict(page), show, as_json=as_json)
