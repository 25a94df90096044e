"""The three units of length that people write; inside, everything is mm."""

from fractions import Fraction
from typing import Final, Literal

from notchbook.errors import InputError
from notchbook.units.quoted import quoted

Unit = Literal["mm", "cm", "in"]
"""A unit of length that can be written and read."""

UNITS: Final[tuple[Unit, ...]] = ("mm", "cm", "in")

MM_PER_UNIT: Final[dict[Unit, Fraction]] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    # International yard and pound agreement of 1959: one inch is exactly 25.4 mm (standard).
    "in": Fraction(254, 10),
}

_WORDS: Final[dict[str, Unit]] = {
    "mm": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "millimetre": "mm",
    "millimetres": "mm",
    "cm": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "centimetre": "cm",
    "centimetres": "cm",
    "in": "in",
    "inch": "in",
    "inches": "in",
    '"': "in",
}

FEET_WORDS: Final = frozenset({"'", "ft", "foot", "feet"})
"""Ways to write feet. They are read with their inches as one length; alone they name no unit here."""


def unit_named(text: str) -> Unit:
    """The unit that a word or sign means (``cm``, ``inches``, ``"``; a final period is ignored).

    Refused: feet (``length-feet``) and every other word (``length-unit-unknown``).
    """
    word = text.strip().lower().removesuffix(".")
    if word in FEET_WORDS:
        raise InputError("length-feet", text=quoted(text), where="")
    unit = _WORDS.get(word)
    if unit is None:
        raise InputError("length-unit-unknown", unit=quoted(text), where="")
    return unit
