"""Writing lengths in the reader's unit, and reading them back."""

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from notchbook.errors import InputError
from notchbook.units.length import parse_length
from notchbook.units.number import fraction_text, rounded
from notchbook.units.unit import MM_PER_UNIT, Unit

DecimalSign = Literal[".", ","]

DENOMINATORS: Final = (2, 4, 8, 16, 32, 64)
"""The fractions of an inch that a ruler shows (common practice; pattern rulers stop at 1/16)."""

_DEFAULT_DECIMALS: Final[dict[Unit, int]] = {"mm": 1, "cm": 1, "in": 3}
_MOST_DECIMALS: Final = 6


@dataclass(frozen=True, slots=True)
class LengthStyle:
    """How one reader wants lengths: unit, decimal sign, and how fine an inch is divided.

    ``fraction_denominator`` None writes inches with decimals. Reading a text that this style has
    written gives the length back to half a step of the style.
    """

    unit: Unit = "cm"
    decimal_sign: DecimalSign = "."
    fraction_denominator: int | None = 16

    def __post_init__(self) -> None:
        _check_denominator(self.fraction_denominator)

    @property
    def step(self) -> float:
        """The smallest difference that this style writes, in mm."""
        if self.unit == "in" and self.fraction_denominator:
            return float(MM_PER_UNIT["in"] / self.fraction_denominator)
        return float(MM_PER_UNIT[self.unit] / 10 ** _DEFAULT_DECIMALS[self.unit])

    def nearest(self, mm: float) -> float:
        """The length, in mm, that :meth:`text` writes for this one: what is written adds up only of these."""
        if self.unit == "in" and self.fraction_denominator:
            parts = self.fraction_denominator
        else:
            parts = 10 ** _DEFAULT_DECIMALS[self.unit]
        step = Fraction(MM_PER_UNIT[self.unit]) / parts
        return float(rounded(Fraction(mm) / step) * step)

    def text(self, mm: float) -> str:
        """The length, given in mm, as this reader wants it, with its unit."""
        return format_length(
            mm, self.unit, decimal_sign=self.decimal_sign, fraction_denominator=self.fraction_denominator
        )

    def parse(self, text: str, *, allow_negative: bool = False) -> float:
        """The mm that the text means; a bare number is in this style's unit."""
        return parse_length(text, self.unit, allow_negative=allow_negative)


def format_length(
    mm: float,
    unit: Unit,
    precision: int | None = None,
    *,
    decimal_sign: DecimalSign = ".",
    fraction_denominator: int | None = 16,
) -> str:
    """A length in mm written in ``unit``: ``95.3 cm``, ``953.0 mm``, ``37 1/2"``.

    Inches are reduced fractions to 1/16 unless ``precision`` (decimal places) is given or
    ``fraction_denominator`` is None. Halves round away from zero; nothing is written as -0.
    Refused: NaN and infinity (``number-not-finite``), a fraction that no ruler shows
    (``fraction-denominator``), more than 6 decimals (``length-precision``). With a decimal comma and
    three decimals the text is not meant to be read back: ``1,234`` may be thousands.

    >>> format_length(952.5, "in")
    '37 1/2"'
    """
    if not math.isfinite(mm):
        raise InputError("number-not-finite", text=str(mm), where="")
    _check_denominator(fraction_denominator)
    amount = Fraction(mm) / MM_PER_UNIT[unit]
    if unit == "in" and precision is None and fraction_denominator is not None:
        steps = rounded(amount * fraction_denominator)
        return fraction_text(Fraction(steps, fraction_denominator)) + '"'
    places = _DEFAULT_DECIMALS[unit] if precision is None else precision
    number = decimal_places(amount, places).replace(".", decimal_sign)
    return f"{number} {unit}"


def decimal_places(value: Fraction, places: int) -> str:
    """The value with so many decimals (0 to 6); halves away from zero, never -0."""
    if not 0 <= places <= _MOST_DECIMALS:
        raise InputError("length-precision", precision=places, most=_MOST_DECIMALS)
    steps = rounded(value * 10**places)
    digits = str(abs(steps)).rjust(places + 1, "0")
    body = f"{digits[:-places]}.{digits[-places:]}" if places else digits
    return f"-{body}" if steps < 0 else body


def _check_denominator(denominator: int | None) -> None:
    if denominator is not None and denominator not in DENOMINATORS:
        raise InputError("fraction-denominator", denominator=denominator, known=DENOMINATORS)
