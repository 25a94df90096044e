"""When, by whom and over what a body was measured."""

from dataclasses import dataclass
from datetime import date

from notchbook.body.measure import Measure
from notchbook.body.one_line import LONGEST_NAME, one_line
from notchbook.errors import InputError
from notchbook.units import quoted


@dataclass(frozen=True, slots=True)
class Circumstances:
    """How a set was taken; what was not written down is empty.

    ``taken_on`` is a day as year-month-day, ``taken_by`` who held the tape, ``undergarment`` what was
    worn below it, ``heel`` the height in mm of the heel that she stood on (0: none).
    Refused: a day that the calendar does not have (``date-unreadable``).
    """

    taken_on: str = ""
    taken_by: str = ""
    undergarment: str = ""
    heel: float = 0.0

    def __post_init__(self) -> None:
        for what in ("taken_on", "taken_by", "undergarment"):
            object.__setattr__(self, what, one_line(getattr(self, what), what, LONGEST_NAME))
        if self.taken_on:
            object.__setattr__(self, "taken_on", _day(self.taken_on))
        object.__setattr__(self, "heel", Measure(self.heel).value)


def _day(text: str) -> str:
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError:
        raise InputError("date-unreadable", text=quoted(text), where="") from None
