"""What one value may have been before one slip."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.likely_slip import unit_slips
from notchbook.body.doubts.slips.slip_table import slip_table
from notchbook.body.doubts.slips.typed_number import swapped_digits, typed_number, wrong_digits
from notchbook.body.files.weight import KG_PER_POUND
from notchbook.body.measure_table import MeasureEntry
from notchbook.units import MM_PER_UNIT, Unit

SMALL_READ_TEN_OFF: Final = 0.25
"""How much seldomer a value below ten is one that was read ten off: there is no ten to be mistaken (own
judgment)."""

_WIDTHS: Final = frozenset(
    {
        "across_back",
        "across_chest",
        "bust_point_width",
        "front_bust_arc",
        "front_hip_arc",
        "front_waist_arc",
        "shoulder_width_back",
    }
)
"""Measures that are symmetric to the center, of which one may take the half."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A value (mm, degrees, kg) that one slip would have turned into the typed one, and the slip's prior."""

    slip: str
    question: str
    value: float
    prior: float


def single_slips(entry: MeasureEntry, value: float, unit: Unit) -> tuple[Candidate, ...]:
    """Everything that the value may have been before one slip; ``unit``: in which it was typed.

    The prior of a kind is shared among its candidates, so that many of them do not outweigh few.
    """
    found: dict[tuple[str, float], str] = {}
    for slip, question, meant in _all(entry, value, unit):
        plain = round(meant, 6)
        if plain > 0 and plain != value:
            found.setdefault((slip, plain), question)
    counts: dict[str, int] = {}
    for slip, _ in found:
        counts[slip] = counts.get(slip, 0) + 1
    # A tape is read ten too low as often as ten too high, whether or not the value could be so small.
    counts["tape-by-ten"] = 2
    return tuple(
        Candidate(slip, question, meant, _prior(slip, value, unit) / counts[slip])
        for (slip, meant), question in found.items()
    )


def _prior(slip: str, value: float, unit: Unit) -> float:
    """How often it is this slip; a small value on the first ten of the tape is hardly read ten off."""
    seldom = slip == "tape-by-ten" and value < _ten(unit)
    return slip_table()[slip].prior * (SMALL_READ_TEN_OFF if seldom else 1.0)


def _ten(unit: Unit) -> float:
    """Ten of the tape, mm."""
    return 10 * float(MM_PER_UNIT["cm" if unit == "mm" else unit])


def _all(entry: MeasureEntry, value: float, unit: Unit) -> Iterator[tuple[str, str, float]]:
    table = slip_table()
    number = typed_number(entry, value, unit)
    for digits in swapped_digits(number.digits):
        yield "swapped-digits", table["swapped-digits"].question, number.value_of(digits)
    for digits in wrong_digits(number.digits):
        yield "wrong-digit", table["wrong-digit"].question, number.value_of(digits)
    if entry.kind == "weight":
        yield "pounds", table["pounds"].question, value * KG_PER_POUND
    if not entry.is_length:
        return
    for factor, question in unit_slips(unit):
        yield "decimal-sign" if factor in (10, 0.1) else "other-unit", question, value * factor
    for meant in (value - _ten(unit), value + _ten(unit)):
        yield "tape-by-ten", table["tape-by-ten"].question, meant
    if entry.kind == "girth" or entry.key in _WIDTHS:
        yield "half", table["half"].question, value * 2
        yield "double", table["double"].question, value / 2
