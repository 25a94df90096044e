"""Numbers of the pattern library, such as S-104: a series and a serial number."""

import re
from dataclasses import dataclass
from typing import Final

from notchbook.errors import BookError

FIRST_SERIAL: Final = 101
"""A series starts here, so that its first 899 numbers are equally wide (common practice, no source)."""

_NUMBER: Final = re.compile(r"([A-Z]{1,6})-([0-9]{1,6})")
_SERIES: Final = re.compile(r"[A-Z]{1,6}")


@dataclass(frozen=True, slots=True)
class EntryNumber:
    """A number of the library: ``S-104`` is serial 104 of the series S."""

    series: str
    serial: int

    @property
    def text(self) -> str:
        """The number as it is written."""
        return f"{self.series}-{self.serial}"


def parse_number(text: str) -> EntryNumber:
    """Read a number: small letters and leading zeros are understood, ``s-0104`` is S-104."""
    found = _NUMBER.fullmatch(text.strip().upper())
    if not found:
        raise BookError("book-number-malformed", number=text)
    return EntryNumber(found[1], int(found[2]))


def parse_series(text: str) -> str:
    """Read the letters of a series."""
    series = text.strip().upper()
    if not _SERIES.fullmatch(series):
        raise BookError("book-number-malformed", number=text)
    return series
