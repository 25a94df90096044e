"""The verbs of `notchbook measures`."""

from collections.abc import Callable

import typer

from notchbook.cli.measures.chart import chart
from notchbook.cli.measures.check import check
from notchbook.cli.measures.compare import compare
from notchbook.cli.measures.estimate import estimate
from notchbook.cli.measures.export_measures import export_measures
from notchbook.cli.measures.import_measures import import_measures
from notchbook.cli.measures.list_measures import list_measures
from notchbook.cli.measures.pad import pad
from notchbook.cli.measures.sheet import sheet
from notchbook.cli.screen import out

MEASURES_VERBS: dict[str, Callable[..., None]] = {
    "list": list_measures,
    "sheet": sheet,
    "check": check,
    "estimate": estimate,
    "compare": compare,
    "pad": pad,
    "chart": chart,
    "import": import_measures,
    "export": export_measures,
}

measures_app = typer.Typer(
    help="Look over, fill in and compare measures of bodies, dress forms and size charts.",
    rich_markup_mode=None,
)


@measures_app.callback(invoke_without_command=True)
def _start(context: typer.Context) -> None:
    """Only shows what there is when no verb was typed."""
    if context.invoked_subcommand is None:
        out().line(context.get_help())


for _verb, _function in MEASURES_VERBS.items():
    measures_app.command(_verb)(_function)
