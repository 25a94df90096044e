"""A length within a sentence: no finer and no coarser than it is worth reading."""

from dataclasses import replace
from typing import Final

from notchbook.units.length_style import LengthStyle, format_length

WRITTEN_IN_MM: Final = 10.0
"""mm; what is shorter is said in millimeters by those who work in centimeters (common practice)."""

_UNSEEN: Final = 0.005
"""mm; what is less is written as nothing."""

_FRACTIONS: Final = (16, 32, 64)
"""Denominators of inches, as a ruler is divided: the finest is for misfits."""

_OFF: Final = 0.1
"""Share of a length by which a fraction of an inch may be off before a finer one is taken."""


_FINEST: Final = 0.35
"""mm; below this no ruler of inches shows anything, and decimals are written."""


def length_in_words(mm: float, style: LengthStyle) -> str:
    """The length, given in mm, as it is said: ``24.7 cm``, ``6 mm``, ``0.3 mm``, ``3/32"``.

    >>> length_in_words(6.0, LengthStyle("cm"))
    '6 mm'
    """
    if style.unit == "in":
        if style.fraction_denominator is None:
            return style.text(mm)
        if 0.0 < abs(mm) < _FINEST:
            return format_length(mm, "in", 3, decimal_sign=style.decimal_sign)
        finer = [replace(style, fraction_denominator=parts) for parts in _FRACTIONS]
        fitting = [one for one in finer if abs(one.nearest(mm) - mm) <= _OFF * abs(mm)]
        return (fitting or finer[-1:])[0].text(mm)
    if style.unit == "cm" and abs(mm) >= WRITTEN_IN_MM - 0.05:
        return style.text(mm)
    decimals = 2 if _UNSEEN <= abs(mm) < 0.1 else 1
    number, unit = format_length(mm, "mm", decimals, decimal_sign=style.decimal_sign).split(" ")
    return f"{number.removesuffix(f'{style.decimal_sign}0')} {unit}"
