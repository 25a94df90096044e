"""Reading a weight as it was typed: in kilograms, or in pounds when it says so."""

from typing import Final

from notchbook.units import parse_number

KG_PER_POUND: Final = 0.45359237
"""Exact by definition (international yard and pound agreement, 1959)."""

WEIGHT_UNITS: Final = {"kg": 1.0, "lb": KG_PER_POUND, "lbs": KG_PER_POUND}
"""What a weight may be typed in, and how many kg each is."""


def parse_weight(text: str, unit: str = "") -> float:
    """The kg that ``62.5``, ``62.5 kg`` or ``140 lb`` means; a bare number is in ``unit``, else in kg.

    Refused: ``number-*``, also where the text names another unit than ``unit``.
    """
    plain = text.strip().lower()
    for name, kilograms in WEIGHT_UNITS.items():
        if plain.endswith(name) and WEIGHT_UNITS.get(unit, kilograms) == kilograms:
            return parse_number(plain.removesuffix(name)) * kilograms
    return parse_number(plain) * WEIGHT_UNITS.get(unit, 1.0)
