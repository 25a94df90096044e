"""Reading and writing angles in degrees."""

import math
import re
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.length_style import DecimalSign, decimal_places
from notchbook.units.number import NUMBER_PATTERN, check_text, exact_number, not_a_number
from notchbook.units.quoted import quoted
from notchbook.units.signs import plain_signs

_ANGLE: Final = re.compile(rf"([+-]?) ?({NUMBER_PATTERN}) ?(\S.*)?")
_DEGREE_WORDS: Final = frozenset({"deg", "deg.", "degree", "degrees", "\u00b0"})
_LARGEST: Final = 360


def parse_degrees(text: str, *, allow_negative: bool = True) -> float:
    """The angle in degrees: ``24.3``, ``24,3 deg``, ``22 1/2°``; at most a full turn either way.

    Refused: ``number-*``, ``angle-unit`` (anything but degrees), ``angle-too-large``.
    """
    check_text(text)
    plain = plain_signs(text)
    match = _ANGLE.fullmatch(plain)
    if match is None:
        raise not_a_number(plain, text)
    sign, number, word = match.groups()
    if word and word not in _DEGREE_WORDS:
        refusal = not_a_number(plain, text)
        raise (
            refusal
            if refusal.code != "number-text"
            else InputError("angle-unit", text=quoted(text), where="")
        )
    exact = exact_number(number, text)
    if exact > _LARGEST:
        raise InputError("angle-too-large", text=quoted(text), where="")
    if sign == "-" and exact and not allow_negative:
        raise InputError("number-negative", text=quoted(text), where="")
    return float(-exact if sign == "-" else exact)


def format_degrees(degrees: float, precision: int = 1, *, decimal_sign: DecimalSign = ".") -> str:
    """An angle in degrees as text: ``24.3°``."""
    if not math.isfinite(degrees):
        raise InputError("number-not-finite", text=str(degrees), where="")
    return decimal_places(Fraction(degrees), precision).replace(".", decimal_sign) + "\u00b0"
