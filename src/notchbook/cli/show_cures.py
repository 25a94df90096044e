"""Cures on the screen: numbered, each with the word that takes it; and the same as data."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.app.offered_cure import OfferedCure


def show_cures(screen: Screen, offered: "Iterable[OfferedCure]", unit: Unit) -> None:
    """What can be taken; nothing where nothing is offered."""
    for number, cure in enumerate(offered, start=1):
        screen.line(f"{number}  {cure.words(LengthStyle(unit))}: add --take {cure.word}")
        for line in cure.disturbs.words(LengthStyle(unit)):
            screen.line(f"     {line}")


def show_taken(screen: Screen, taken: "Iterable[OfferedCure]", unit: Unit) -> None:
    """What was taken and now stands in the style."""
    lines = [f"Taken: {cure.words(LengthStyle(unit))} ({cure.step})." for cure in taken]
    for line in lines:
        screen.line(line)
    if lines:
        screen.line()


def cure_data(cures: "Iterable[OfferedCure]") -> list[dict[str, Any]]:
    """Cures as data; lengths in mm."""
    return [cure.data() for cure in cures]
