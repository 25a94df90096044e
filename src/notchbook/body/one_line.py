"""Names and notes: one clean line of text each."""

import unicodedata
from typing import Final

from notchbook.errors import InputError

LONGEST_NAME: Final = 120
LONGEST_NOTE: Final = 2000


def one_line(text: str, what: str, longest: int) -> str:
    """The text with every run of spaces and line ends as one space.

    Refused: longer than ``longest`` characters (``text-too-long``); control characters and broken
    halves of characters (``text-not-plain``), which no file or paper could hold.
    """
    line = " ".join(text.split())
    if len(line) > longest:
        raise InputError("text-too-long", what=what, length=len(line), most=longest, where="")
    # What is printable has none of these signs; looking at each is for the rest, for whole files of bodies.
    if not line.isprintable() and any(unicodedata.category(sign) in ("Cc", "Cs") for sign in line):
        raise InputError("text-not-plain", what=what, where="")
    return line
