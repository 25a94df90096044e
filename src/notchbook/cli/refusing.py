"""How a command that fails ends: words and a next step on the error stream, never a traceback."""

import os
import traceback
from contextlib import suppress
from dataclasses import asdict
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TextIO, cast

from notchbook.cli.answer import ExitCode, print_json
from notchbook.cli.screen import err
from notchbook.cli.show_cures import cure_data, show_cures
from notchbook.errors import HouseFault, InputError, NotchbookError, OutputError
from notchbook.units import LengthStyle, Unit, length_in_words

if TYPE_CHECKING:
    from notchbook.app.offered_cure import OfferedCure
    from notchbook.pattern import Contradiction

_OBJECTS: Final = frozenset({"cures", "offered", "contradiction"})
"""Facts that are told in words of their own."""


def refuse(error: NotchbookError, *, as_json: bool, unit: Unit = "mm") -> ExitCode:
    """Say what is wrong and what to do, lengths in the reader's unit; the exit code."""
    if isinstance(error, HouseFault) and error.code != "program-fault":
        return refuse(fault_of(error), as_json=as_json)
    screen = err()
    write = partial(length_in_words, style=LengthStyle(unit))
    screen.line(error.text(write))
    for note in _notes(error):
        screen.line(note)
    screen.line(error.next_step(write))
    for line in (*_choices(error), *_missing(error)):
        screen.line(line)
    show_cures(screen, _offered(error), unit)
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
        "facts": {name: _plain(value) for name, value in error.facts.items() if name not in _OBJECTS},
        **_carried(error),
    }


def _carried(error: NotchbookError) -> dict[str, Any]:
    """The cures and the contradiction that a refusal carries, as data; nothing where it carries none."""
    offered, told = _offered(error), error.facts.get("contradiction")
    found: dict[str, Any] = {"cures": cure_data(offered)} if offered else {}
    return found if told is None else {**found, "contradiction": asdict(cast("Contradiction", told))}


def _choices(error: NotchbookError) -> tuple[str, ...]:
    """What to type for each choice of which one must be made; nothing where none must."""
    setting, choices, said = (error.facts.get(name) for name in ("setting", "choices", "said"))
    if not isinstance(choices, tuple) or setting is None:
        return ()
    words = said if isinstance(said, tuple) and len(said) == len(choices) else choices
    return tuple(
        f"  --set {_quoted(f'{setting}={choice}')}   {text}"
        for choice, text in zip(choices, words, strict=True)
    )


def _missing(error: NotchbookError) -> tuple[str, ...]:
    """What is missing, in the order of the tape, each with how it is taken; nothing where nothing is."""
    keys = error.facts.get("keys")
    if error.code != "measure-missing" or not isinstance(keys, tuple):
        return ()
    from notchbook.body import measure_table, plain_key

    asked = {plain_key(str(key)) for key in keys}
    rows = [entry for key, entry in measure_table().items() if key in asked]
    return tuple(f"  {row.key}   {row.label}: {row.short_how}" for row in rows)


def _quoted(word: str) -> str:
    """The word as it is typed: in quotes where it has blanks."""
    return f'"{word}"' if " " in word else word


def _offered(error: NotchbookError) -> "tuple[OfferedCure, ...]":
    return cast("tuple[OfferedCure, ...]", error.facts.get("offered", ()))


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
