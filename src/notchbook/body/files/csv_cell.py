"""One value as a cell of a CSV file."""

from fractions import Fraction
from typing import Final

from notchbook.body.files.raw_value import READINGS_SIGN
from notchbook.units import decimal_text

_DECIMALS: Final = 17
"""Decimals of a number that are written: what is read back has at most 20 digits."""


def csv_cell(value: object) -> str:
    """The value as text: numbers with a decimal point, readings as ``94.0 & 94.6``, nothing for None."""
    if isinstance(value, (tuple, list)):
        return READINGS_SIGN.join(csv_cell(one) for one in value)
    if isinstance(value, float):
        return decimal_text(Fraction(repr(round(value, _DECIMALS)))) or ""
    return "" if value is None else str(value)
