"""The answer of a command: words for a person or JSON for a program, and the exit code."""

import json
from collections.abc import Callable, Mapping
from enum import IntEnum
from typing import Any

import typer

from notchbook.cli.screen import Screen, out


class ExitCode(IntEnum):
    """How a command ended."""

    FINE = 0
    TO_CHECK = 1
    """Done, and something is to be looked at."""
    REFUSED = 2
    """Bad input, or refused; nothing was changed."""
    FAULT = 3
    """A fault of the program."""
    STOPPED = 130
    """Stopped by the keyboard (128 + the number of the signal, as shells do)."""
    PIPE = 141
    """The reader of the answer went away (128 + the number of the signal, as shells do)."""


def answer(
    data: Mapping[str, Any], show: Callable[[Screen], None], *, as_json: bool, to_check: bool = False
) -> None:
    """Print the answer and end the command."""
    if as_json:
        print_json({"ok": True, **data})
    else:
        show(out())
    raise typer.Exit(ExitCode.TO_CHECK if to_check else ExitCode.FINE)


def print_json(data: Mapping[str, Any]) -> None:
    """One JSON object on the standard output."""
    out().line(json.dumps(data, ensure_ascii=False, indent=1))
