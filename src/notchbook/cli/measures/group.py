"""The verbs of `notchbook measures`."""

from collections.abc import Callable

import typer

from notchbook.cli.measures.list_measures import list_measures

MEASURES_VERBS: dict[str, Callable[..., None]] = {
    "list": list_measures,
}

measures_app = typer.Typer(
    help="Look over, fill in and compare measures of bodies, dress forms and size charts.",
    rich_markup_mode=None,
    no_args_is_help=True,
)

for _verb, _function in MEASURES_VERBS.items():
    measures_app.command(_verb)(_function)
