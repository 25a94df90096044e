"""What somebody probably meant who typed an unlikely value. Offered, never applied."""

from dataclasses import dataclass
from typing import Final

from notchbook.body.measure_table import MeasureEntry
from notchbook.units import LengthStyle, Unit

_SLIPS: Final[dict[Unit, tuple[tuple[float, str], ...]]] = {
    "mm": (
        (10, "were centimeters typed where millimeters are wanted?"),
        (25.4, "were inches typed where millimeters are wanted?"),
        (0.1, "is there a digit too many?"),
        # Files of the house are in mm, whatever the values were typed in.
        (2.54, "were inches taken for centimeters?"),
        (1 / 2.54, "were centimeters taken for inches?"),
    ),
    "cm": (
        (10, "is a digit lost or the decimal sign misplaced?"),
        (2.54, "were inches typed where centimeters are wanted?"),
        (0.1, "were millimeters typed where centimeters are wanted?"),
        (1 / 2.54, "was a value in centimeters multiplied by 2.54 once too often?"),
    ),
    "in": (
        (10, "is a digit lost or the decimal sign misplaced?"),
        (1 / 2.54, "were centimeters typed where inches are wanted?"),
        (1 / 25.4, "were millimeters typed where inches are wanted?"),
        (0.1, "is there a digit too many?"),
    ),
}
"""Unit of the field -> factor that undoes a common slip, and its words (common practice)."""


@dataclass(frozen=True, slots=True)
class LikelySlip:
    """A value (mm) that would be usual, and the question to ask about the one that was typed."""

    value: float
    question: str


def unit_slips(unit: Unit) -> tuple[tuple[float, str], ...]:
    """The factors that undo a slip of the unit or of the decimal sign in a field of this unit, with words."""
    return _SLIPS[unit]


def likely_slips(entry: MeasureEntry, value: float, unit: Unit) -> tuple[LikelySlip, ...]:
    """The usual values that an unusual one (mm, typed in ``unit``) may stand for; often none."""
    if not entry.is_length or within(value, entry.usual):
        return ()
    found = ((value * factor, words) for factor, words in unit_slips(unit))
    return tuple(LikelySlip(meant, words) for meant, words in found if within(meant, entry.usual))


def slip_words(entry: MeasureEntry, value: float, style: LengthStyle) -> str:
    """Sentences that offer what was probably meant, or nothing."""
    slips = likely_slips(entry, value, style.unit)
    return "".join(f"{style.text(slip.value)} would be usual: {slip.question} " for slip in slips)


def within(value: float, limits: tuple[float, float]) -> bool:
    """Whether the value lies between the limits, both included."""
    return limits[0] <= value <= limits[1]
