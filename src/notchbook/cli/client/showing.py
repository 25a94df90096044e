"""What the verbs of `notchbook client` have in common on the screen and in JSON."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from notchbook.cli.screen import Screen
from notchbook.units import counted

if TYPE_CHECKING:
    from notchbook.app.personal_data import Copy
    from notchbook.app.personal_data.mentions import Mention


def show_plan_of_mentions(screen: Screen, mentions: "Sequence[Mention]", *, in_other_texts: bool) -> None:
    """Where the name stands in texts of other entries, what each becomes, and which are left alone."""
    changing = [one for one in mentions if one.changes]
    if changing:
        said = "These will be changed" if in_other_texts else "With --in-other-texts these would be changed"
        screen.line(f"The name stands in texts of other entries. {said}:")
        show_changes(screen, changing)
    staying = [one for one in mentions if not one.changes]
    if staying:
        screen.line("These are never changed, such as the name of another client:")
        _show_texts(screen, staying)


def show_mentions(screen: Screen, mentions: "Sequence[Mention]") -> None:
    """Where the name still stands in texts of other entries."""
    if mentions:
        screen.line("The name stands in texts of other entries:")
        _show_texts(screen, mentions)


def show_changed(screen: Screen, changed: "Sequence[Mention]") -> None:
    """What was changed in texts of other entries, with its count."""
    if changed:
        screen.line(f"{counted(len(changed), 'text')} of other entries changed:")
        show_changes(screen, changed)


def show_changes(screen: Screen, mentions: "Sequence[Mention]") -> None:
    """Each text as it was and as it becomes."""
    rows = [(one.number, one.where, f"{one.text} → {one.after}") for one in mentions]
    screen.table(("entry", "where", "before → after"), rows)


def _show_texts(screen: Screen, mentions: "Sequence[Mention]") -> None:
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
    return [
        {
            "entry": one.number,
            "where": one.where,
            "text": one.text,
            "after": one.after,
            "changes": one.changes,
        }
        for one in mentions
    ]


def copy_data(copies: "Sequence[Copy]") -> list[dict[str, Any]]:
    """The copies for a program."""
    return [{"path": str(copy.path), "readable": copy.readable} for copy in copies]
