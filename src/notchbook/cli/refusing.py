"""How a command that fails ends: words and a next step on the error stream, never a traceback."""

import os
import traceback
from contextlib import suppress
from pathlib import Path
from typing import Any, TextIO

from notchbook.cli.answer import ExitCode, print_json
from notchbook.cli.screen import err
from notchbook.errors import HouseFault, InputError, NotchbookError, OutputError


def refuse(error: NotchbookError, *, as_json: bool) -> ExitCode:
    """Say what is wrong and what to do; the exit code."""
    if isinstance(error, HouseFault) and error.code != "program-fault":
        return refuse(fault_of(error), as_json=as_json)
    screen = err()
    screen.line(error.text())
    for note in _notes(error):
        screen.line(note)
    screen.line(error.next_step())
    screen.line(f"[{error.code}]  More: notchbook why {error.code}")
    if as_json:
        print_json(refusal_data(error))
    return ExitCode.FAULT if isinstance(error, HouseFault) else ExitCode.REFUSED


def refusal_data(error: NotchbookError) -> dict[str, Any]:
    """A refusal as data for a program."""
    return {
        "ok": False,
        "code": error.code,
        "message": error.text(),
        "notes": list(_notes(error)),
        "next_step": error.next_step(),
        "facts": {name: _plain(value) for name, value in error.facts.items()},
    }


def fault_of(error: BaseException) -> HouseFault:
    """What went wrong in the program, with the place where it did."""
    frames = traceback.extract_tb(error.__traceback__)
    place = f" ({Path(frames[-1].filename).name}, line {frames[-1].lineno})" if frames else ""
    words = f"{type(error).__name__}: {_words(error)}"
    return HouseFault("program-fault", detail=f"{words}{place}")


def not_written(error: OSError) -> OutputError:
    """The refusal for an answer that its stream did not take."""
    return OutputError("answer-not-written", reason=error.strerror or type(error).__name__)


def not_understood(detail: str, command: str) -> InputError:
    """The refusal for words of a command that it does not take."""
    words = f"{command.removeprefix('notchbook').strip()} ".lstrip()
    return InputError("command-not-understood", detail=_plain_detail(detail), command=words)


def _plain_detail(detail: str) -> str:
    """The detail in one line, without the name that a library gives to its error."""
    return " ".join(detail.split()).replace("Value error, ", "")


def leave(*streams: TextIO) -> None:
    """Have these streams go nowhere, so that Python says nothing of them when it ends."""
    for stream in streams:
        with suppress(OSError, ValueError):
            nowhere = os.open(os.devnull, os.O_WRONLY)
            os.dup2(nowhere, stream.fileno())
            os.close(nowhere)


def _notes(error: BaseException) -> tuple[str, ...]:
    """What was added to the error on its way, such as where in a style it stopped."""
    return tuple(getattr(error, "__notes__", ()))


def _words(error: BaseException) -> str:
    """The error's own words in one line; a fault of the house says its code and facts."""
    if isinstance(error, NotchbookError):
        return f"[{error.code}] {error.facts}"
    return " ".join(str(error).split())[:300]


def _plain(value: object) -> Any:
    if isinstance(value, (bool, int, float, str)) or value is None:
        return value
    if isinstance(value, (tuple, list)):
        return [_plain(part) for part in value]
    return str(value)
