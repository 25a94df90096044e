"""The verbs of `notchbook client`."""

from collections.abc import Callable

import typer

from notchbook.cli.client.code import code
from notchbook.cli.client.erase import erase
from notchbook.cli.client.export import export
from notchbook.cli.screen import out

CLIENT_VERBS: dict[str, Callable[..., None]] = {
    "code": code,
    "export": export,
    "erase": erase,
}

client_app = typer.Typer(
    help="Personal data: keep a client under a code, hand her data out, erase her.",
    rich_markup_mode=None,
)


@client_app.callback(invoke_without_command=True)
def _start(context: typer.Context) -> None:
    """Only shows what there is when no verb was typed."""
    if context.invoked_subcommand is None:
        out().line(context.get_help())


for _verb, _function in CLIENT_VERBS.items():
    client_app.command(_verb)(_function)
