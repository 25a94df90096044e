"""Amounts as they are kept, written in the unit of the reader: ``1/4 hip + 10 mm`` as ``1/4 hip + 1 cm``."""

from fractions import Fraction
from typing import Final

from notchbook.body import notation_names
from notchbook.units import Amount, Unit, format_length, parse_amount

_MOST_DECIMALS: Final = 3


def amount_in_words(text: str, unit: Unit) -> str:
    """The amount with its plain lengths in this unit; shares of measures stay as they are."""
    amount: Amount = parse_amount(text, "mm", notation_names())
    words: list[str] = []
    for term in amount.terms:
        spoken = term.size_text.replace("_", " ")
        size = _plain(abs(term.mm), unit) if term.unit is not None else spoken
        sign = "-" if term.factor < 0 else "+"
        words.append(f"{sign} {size}" if words else (f"-{size}" if sign == "-" else size))
    return " ".join(words)


def number_in_words(stored: object, unit: Unit) -> str:
    """What a field of a step holds, as it is written there; an empty field is ``as usual``."""
    if stored is None:
        return "as usual"
    return amount_in_words(stored, unit) if isinstance(stored, str) else f"{stored:g}"


def _plain(mm: float, unit: Unit) -> str:
    if unit == "in":
        return format_length(mm, unit)
    number, word = format_length(mm, unit, _MOST_DECIMALS).split(" ")
    short = number.rstrip("0").rstrip(".") if Fraction(number) else "0"
    return f"{short} {word}"
