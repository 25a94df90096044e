"""Fields of plain data: known names, text, and one word of a few."""

import math
from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

from notchbook.errors import InputError
from notchbook.units import decimal_text, quoted, suggestion

Word = TypeVar("Word", bound=str)


def check_fields(given: Iterable[object], known: tuple[str, ...]) -> None:
    """Refuse a field or column whose name is not known (``field-unknown``), offering the nearest."""
    for name in given:
        if name not in known:
            words = str(name)
            raise InputError(
                "field-unknown",
                field=quoted(words),
                suggestion=suggestion(words, known),
                known=known,
                where="",
            )


def text_of(data: Mapping[str, object], name: str) -> str:
    """The field as trimmed text; a number is written out exactly, a missing field is empty.

    Refused: NaN and infinite numbers (``number-not-finite``), anything but text and numbers
    (``field-not-text``).
    """
    value = data.get(name, "")
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise InputError("field-not-text", field=quoted(name), where="")
    if isinstance(value, int):
        # Beyond 18 digits it is no number of a body, and turning it into text may take very long.
        return str(value) if abs(value) < 10**18 else "9" * 300
    if not math.isfinite(value):
        raise InputError("number-not-finite", text=str(value), where=f"{quoted(name)}: ")
    return decimal_text(Fraction(repr(value))) or ""


def choice(text: str, what: str, known: tuple[Word, ...]) -> Word:
    """The one of the known words that the text means, in small letters or not (``measure-choice``)."""
    for word in known:
        if text.lower() == word:
            return word
    raise InputError("measure-choice", what=what, given=quoted(text), known=known, where="")
