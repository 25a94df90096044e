"""The person who reads the page: in which unit texts are written and bare numbers are read."""

from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends

from notchbook.units import LengthStyle, Unit, format_length

_FINE_DECIMALS: dict[Unit, int] = {"mm": 2, "cm": 2, "in": 3}
"""Decimals for small differences, such as the misfit of a seam: a tenth of a millimeter must show."""


@dataclass(frozen=True, slots=True)
class PageStyle(LengthStyle):
    """Lengths on the page: whole millimeters without the tenth that nobody read off a tape."""

    def text(self, mm: float) -> str:
        """As on a ruler; ``705 mm`` and ``705.5 mm``."""
        return LengthStyle.text(self, mm).replace(".0 mm", " mm")


class Reader:
    """Writes lengths, given in mm, in one unit."""

    def __init__(self, unit: Unit) -> None:
        self.unit: Unit = unit
        self.style: LengthStyle = PageStyle(unit)

    def text(self, mm: float) -> str:
        """A length as on a ruler: ``61.8 cm``, ``24 5/16"``."""
        return self.style.text(mm)

    def fine(self, mm: float) -> str:
        """A small difference, in decimals: ``0.04 cm``, ``0.016 in``."""
        return format_length(mm, self.unit, _FINE_DECIMALS[self.unit])


def reader(unit: Unit = "cm") -> Reader:
    """The reader of one request; the page names the unit in the query."""
    return Reader(unit)


ReaderOf = Annotated[Reader, Depends(reader)]
