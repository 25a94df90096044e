"""The command `notchbook`: its verbs, and the one place where every failure of a command ends."""

import sys
from collections.abc import Callable, Sequence
from typing import Annotated, Any

import typer

from notchbook import __version__
from notchbook.cli import refusing
from notchbook.cli.answer import ExitCode
from notchbook.cli.blocks import blocks
from notchbook.cli.check import check
from notchbook.cli.client.group import client_app
from notchbook.cli.compare import compare
from notchbook.cli.cut import cut
from notchbook.cli.demo import demo
from notchbook.cli.draft import draft
from notchbook.cli.explain import explain
from notchbook.cli.make_it_measure import make_it_measure
from notchbook.cli.measures.group import measures_app
from notchbook.cli.mtm import mtm
from notchbook.cli.open_book import open_book
from notchbook.cli.print_pattern import print_pattern
from notchbook.cli.rack import rack
from notchbook.cli.screen import err, out
from notchbook.cli.sewing_order import sewing_order
from notchbook.cli.typed_unit import typed_unit
from notchbook.cli.why import why
from notchbook.errors import NotchbookError

HELP = """The working book of a one-person pattern studio: from measures to cut-ready paper.

Start with `notchbook demo`, or with `notchbook draft skirt --measures FILE`. A command ends with 0 when all
is fine, with 1 when something is to be looked at, with 2 when it is refused.
"""

app = typer.Typer(
    help=HELP,
    add_completion=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)


def _version(asked: bool) -> None:
    if asked:
        out().line(f"notchbook {__version__}")
        raise typer.Exit


@app.callback()
def _start(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Say which version this is.")
    ] = False,
) -> None:
    """Only carries the option that needs no command."""


VERBS: dict[str, Callable[..., None]] = {
    "demo": demo,
    "draft": draft,
    "check": check,
    "make-it-measure": make_it_measure,
    "explain": explain,
    "compare": compare,
    "cut": cut,
    "sewing-order": sewing_order,
    "print": print_pattern,
    "mtm": mtm,
    "open": open_book,
    "blocks": blocks,
    "rack": rack,
    "why": why,
}

for _verb, _function in VERBS.items():
    app.command(_verb)(_function)

app.add_typer(measures_app, name="measures")
app.add_typer(client_app, name="client")


def main() -> None:
    """Run the command that was typed and end with its exit code."""
    for stream in (sys.stdout, sys.stderr):
        _never_fail_on_letters(stream)
    code = run(sys.argv[1:])
    sys.exit(int(code))


def run(words: Sequence[str]) -> int:
    """Run a command; the exit code. No exception leaves it, and no traceback is printed."""
    try:
        return _ended(words, as_json="--json" in words)
    except BrokenPipeError:
        refusing.leave(sys.stdout, sys.stderr)
        return ExitCode.PIPE
    except Exception as error:
        # A refusal whose own words failed.
        return refusing.refuse(refusing.fault_of(error), as_json=False)


def _ended(words: Sequence[str], *, as_json: bool) -> int:
    """Run a command and say how it ended, in words."""
    try:
        code = _run(list(words))
        sys.stdout.flush()
        return code
    except BrokenPipeError:
        raise
    except KeyboardInterrupt:
        err().line("Stopped. Files that were not finished are not there; older ones are whole.")
        return ExitCode.STOPPED
    except NotchbookError as error:
        return refusing.refuse(error, as_json=as_json, unit=typed_unit(words))
    except OSError as error:
        return _stream_failed(error)
    except Exception as error:
        return refusing.refuse(refusing.fault_of(error), as_json=as_json)


def _run(words: list[str]) -> int:
    try:
        code = app(words or ["--help"], prog_name="notchbook", standalone_mode=False)
    except (NotchbookError, OSError):
        raise
    except typer.Abort as error:
        raise KeyboardInterrupt from error
    except SystemExit as end:
        # typer ends the program by itself where the reader of the answer went away.
        raise (end.__context__ if isinstance(end.__context__, OSError) else end) from None
    except Exception as error:
        # What typer says of words that it does not take has no public class in all its versions.
        in_words = getattr(error, "format_message", None)
        if in_words is None:
            raise
        context = getattr(error, "ctx", None)
        raise refusing.not_understood(in_words(), context.command_path if context else "") from error
    if code == ExitCode.STOPPED:
        # So typer tells of a Ctrl-C.
        raise KeyboardInterrupt
    return code if isinstance(code, int) else ExitCode.FINE


def _stream_failed(error: OSError) -> int:
    """An error of the system that no layer below has put into words: the answer's own stream."""
    refusing.leave(sys.stdout)
    return refusing.refuse(refusing.not_written(error), as_json=False)


def _never_fail_on_letters(stream: Any) -> None:
    """Write a sign that the terminal does not know as a question mark rather than fail."""
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors="replace")
