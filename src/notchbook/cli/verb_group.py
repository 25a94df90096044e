"""A group of verbs under one command, such as ``notchbook measures ...``."""

from collections.abc import Callable, Mapping

import typer

from notchbook.cli.screen import out


def verb_group(help_text: str, verbs: Mapping[str, Callable[..., None]]) -> typer.Typer:
    """The group with these verbs; typed without one it only shows what there is."""
    group = typer.Typer(help=help_text, rich_markup_mode=None)
    group.callback(invoke_without_command=True)(_show_verbs)
    for verb, function in verbs.items():
        group.command(verb)(function)
    return group


def _show_verbs(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        out().line(context.get_help())
