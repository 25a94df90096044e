"""What the verbs of `notchbook client` have in common on the screen and in JSON."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.personal_data import Copy
    from notchbook.app.personal_data.mentions import Mention


def show_mentions(screen: Screen, mentions: "Sequence[Mention]") -> None:
    """Where the name stands in texts of other entries."""
    if mentions:
        screen.line("The name stands in texts of other entries:")
        screen.table(("entry", "where", "text"), [(one.number, one.where, one.text) for one in mentions])


def show_copies(screen: Screen, copies: "Sequence[Copy]") -> None:
    """The copies of the book beside it that hold her."""
    for copy in copies:
        doubt = "" if copy.readable else " (cannot be looked into; delete it yourself if it may hold her)"
        screen.line(f"a copy of the book that holds her: {copy.path}{doubt}")


def show_unclean(screen: Screen, *, clean: bool) -> None:
    """Said when the file could not be cleaned at once."""
    if not clean:
        screen.line(
            "Another program has the book open, or the disk is full: old pages of the file are cleaned when "
            "it is opened next."
        )


def mention_data(mentions: "Sequence[Mention]") -> list[dict[str, Any]]:
    """The mentions for a program."""
    return [{"entry": one.number, "where": one.where, "text": one.text} for one in mentions]


def copy_data(copies: "Sequence[Copy]") -> list[dict[str, Any]]:
    """The copies for a program."""
    return [{"path": str(copy.path), "readable": copy.readable} for copy in copies]
