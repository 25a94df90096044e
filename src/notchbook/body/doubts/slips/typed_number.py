"""The number as it was typed, and what it becomes when its digits slip."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from notchbook.body.measure_table import MeasureEntry
from notchbook.units import MM_PER_UNIT, Unit, decimal_text

_MOST_DECIMALS = 2
"""Further digits were not typed: they come from reckoning."""


@dataclass(frozen=True, slots=True)
class TypedNumber:
    """The digits of a value in the unit in which it was typed, with ``scale`` mm (degrees, kg) to one.

    ``rest`` is the fraction of an inch that was typed as a fraction: its digits do not slip.
    """

    digits: str
    scale: float
    rest: float

    def value_of(self, digits: str) -> float:
        """The mm (degrees, kg) that these digits mean in place of the typed ones."""
        return round((float(digits) + self.rest) * self.scale, 6)


def typed_number(entry: MeasureEntry, value: float, unit: Unit) -> TypedNumber:
    """The value (mm, degrees, kg) as it was probably typed in this unit."""
    scale = MM_PER_UNIT[unit] if entry.is_length else Fraction(1)
    number = Fraction(value).limit_denominator(10**6) / scale
    rounded = round(number, _MOST_DECIMALS)
    sixteenths = number * 16
    if entry.is_length and unit == "in" and abs(sixteenths - round(sixteenths)) < Fraction(1, 1000):
        exact = Fraction(round(sixteenths), 16)
        if decimal_text(exact * 10) is None or exact * 10 % 1:
            whole = exact.numerator // exact.denominator
            return TypedNumber(str(whole), float(scale), float(exact - whole))
        rounded = exact
    return TypedNumber(decimal_text(rounded) or str(round(number)), float(scale), 0.0)


def swapped_digits(digits: str) -> Iterator[str]:
    """Every way to swap two neighboring digits that are not the same, the point staying where it is."""
    places = [place for place, sign in enumerate(digits) if sign.isdigit()]
    for one, next_one in pairwise(places):
        if digits[one] == digits[next_one] or (one == 0 and digits[next_one] == "0"):
            continue
        signs = list(digits)
        signs[one], signs[next_one] = signs[next_one], signs[one]
        yield "".join(signs)


def wrong_digits(digits: str) -> Iterator[str]:
    """Every way to type one digit otherwise."""
    for place, sign in enumerate(digits):
        if not sign.isdigit():
            continue
        for other in "0123456789":
            if other != sign and not (place == 0 and other == "0"):
                yield digits[:place] + other + digits[place + 1 :]
