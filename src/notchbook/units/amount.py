"""An amount in the trade's notation: fractions of measures plus plain lengths."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.length import mm_of
from notchbook.units.number import decimal_text, fraction_text
from notchbook.units.unit import MM_PER_UNIT, Unit

_TRADE_DENOMINATORS: Final = frozenset({2, 3, 4, 6, 8, 12, 16, 24, 32, 64})
_INCH_DENOMINATORS: Final = frozenset({2, 4, 8, 16, 32, 64})
_LARGEST_UNIT_FRACTION: Final = 64

_PLAIN_DECIMALS: Final = 12
"""Keeps the text of a plain length short enough to be read again; far below any tolerance."""


@dataclass(frozen=True, slots=True)
class Term:
    """One term of an amount: a factor times a measure, or a plain length. The sign is in ``factor``.

    For a measure, ``measure`` is its key and ``name`` the short name that is written. For a plain
    length both are None, ``factor`` is the number of ``unit``.
    """

    factor: Fraction
    measure: str | None = None
    name: str | None = None
    unit: Unit | None = None

    @property
    def mm(self) -> float:
        """The plain length in mm; 0 for a term with a measure."""
        return 0.0 if self.unit is None else float(self.factor * MM_PER_UNIT[self.unit])

    @property
    def size_text(self) -> str:
        """The term without its sign, in its one canonical writing."""
        size = abs(self.factor)
        if self.unit is not None:
            return f"{_number_text(size, self.unit)} {self.unit}"
        return str(self.name) if size == 1 else f"{_factor_text(size)} {self.name}"


@dataclass(frozen=True, slots=True)
class Amount:
    """A frozen sum of terms, such as ``1/4 hip + 1 cm``. Two amounts are equal when their terms are."""

    terms: tuple[Term, ...]

    @classmethod
    def plain(cls, mm: float) -> "Amount":
        """A plain length in mm as an amount; it evaluates to this number, rounded to 1e-12 mm.

        Refused: NaN and infinity (``number-not-finite``), over 100 m (``length-too-large``).
        """
        if not math.isfinite(mm):
            raise InputError("number-not-finite", text=str(mm), where="")
        # repr() is the shortest decimal that reads back as the same float.
        number = Fraction(repr(round(float(mm), _PLAIN_DECIMALS)))
        mm_of(number, "mm", str(mm))
        return cls((Term(number, unit="mm"),))

    @property
    def text(self) -> str:
        """The canonical text; reading it again gives an equal amount."""
        words: list[str] = []
        for term in self.terms:
            sign = "-" if term.factor < 0 else "+"
            if words:
                words.append(f"{sign} {term.size_text}")
            else:
                words.append(f"-{term.size_text}" if sign == "-" else term.size_text)
        return " ".join(words)

    @property
    def measures(self) -> tuple[str, ...]:
        """The keys of the measures that are read, each once, in the order of the text."""
        return tuple(dict.fromkeys(term.measure for term in self.terms if term.measure is not None))

    def evaluate(self, lookup: Callable[[str], float]) -> float:
        """The amount in mm; ``lookup`` gives the mm of a measure by its key."""
        total = 0.0
        for term in self.terms:
            total += term.mm if term.measure is None else float(term.factor) * lookup(term.measure)
        return total

    def __str__(self) -> str:
        return self.text


def _factor_text(size: Fraction) -> str:
    denominator = size.denominator
    handy = size.numerator == 1 and denominator <= _LARGEST_UNIT_FRACTION
    if denominator in _TRADE_DENOMINATORS or handy:
        return fraction_text(size)
    return decimal_text(size) or fraction_text(size)


def _number_text(size: Fraction, unit: Unit) -> str:
    if unit == "in" and size.denominator in _INCH_DENOMINATORS:
        return fraction_text(size)
    return decimal_text(size) or fraction_text(size)
