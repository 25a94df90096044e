"""Asking before something is done that cannot be undone."""

import sys
from collections.abc import Callable, Mapping
from typing import Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.screen import Screen, err


def confirmed(show: Callable[[Screen], None], question: str, *, yes: bool, as_json: bool) -> bool:
    """Whether it is to be done: ``yes`` was typed, or she says so after she saw the plan.

    Without a terminal, and for a program, nobody is asked: then it is not done.
    """
    if yes or as_json or not sys.stdin.isatty():
        return yes
    show(err())
    return typer.confirm(question, default=False, err=True)


def not_done(data: Mapping[str, Any], show: Callable[[Screen], None], *, as_json: bool) -> None:
    """Answer with the plan alone, and end the command: there is something to be looked at."""

    def with_next(screen: Screen) -> None:
        show(screen)
        screen.line("Nothing was changed.")
        screen.next_steps(("the same again with --yes, when this is what you want",))

    answer({"done": False, **data}, with_next, as_json=as_json, to_check=True)
