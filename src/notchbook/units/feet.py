"""Feet and inches, as a height is often written: ``5'6"``, ``5' 6 1/2"``, ``5 ft 6 in``, ``5 ft``."""

import re
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.number import NUMBER_PATTERN, exact_number
from notchbook.units.quoted import quoted

INCHES_PER_FOOT: Final = 12
"""International yard and pound agreement of 1959: a foot is exactly 0.3048 m, 12 in (standard)."""

_FOOT_SIGN: Final = re.compile(r"[0-9] ?('|(?:ft|foot|feet)(?![a-z]))")
_FEET: Final = re.compile(
    rf"({NUMBER_PATTERN}) ?(?:'|(?:ft|foot|feet)(?![a-z])\.?)"
    rf"(?: ?[-,]? ?(?:and )?({NUMBER_PATTERN}) ?(?:\"|inches|inch|in)?\.?)?"
)


def names_feet(plain: str) -> bool:
    """Whether a sign or word for feet stands behind a number; ``plain`` as ``plain_signs`` gives it."""
    return _FOOT_SIGN.search(plain) is not None


def inches_in_feet(plain: str, text: str) -> Fraction:
    """The inches that feet, or feet and inches, make; ``plain`` is without a sign before it.

    Before inches the feet are whole, and the inches are less than 12: ``5' 14"`` and ``1'234``, where the
    prime may stand between thousands, are refused (``length-feet``), as is everything else. Refused too:
    ``number-*`` for the numbers themselves.
    """
    match = _FEET.fullmatch(plain)
    if match is None:
        raise InputError("length-feet", text=quoted(text), where="")
    feet = exact_number(match[1], text)
    if match[2] is None:
        return feet * INCHES_PER_FOOT
    inches = exact_number(match[2], text)
    if feet.denominator != 1 or inches >= INCHES_PER_FOOT:
        raise InputError("length-feet", text=quoted(text), where="")
    return feet * INCHES_PER_FOOT + inches
