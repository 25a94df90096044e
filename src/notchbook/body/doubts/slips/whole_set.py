"""Whether a whole set was typed in another unit than it says."""

from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.likely_slip import unit_slips, within
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.units import Unit

HALF_SCALE: Final = 2.0
"""Small dress forms are half as large as a body (common practice)."""

LEAST_LENGTHS: Final = 3
"""Fewer values than these make no set that could be in another unit."""

MOST_NOW: Final = 0.2
"""Share of the values that may be usual as they stand (own judgment)."""

LEAST_THEN: Final = 0.6
"""Share of the values that must become usual: of small and large bodies not all are (own judgment)."""


@dataclass(frozen=True, slots=True)
class OtherUnit:
    """The factor that makes the lengths of a set usual, the question to ask, and the repaired values."""

    factor: float
    question: str
    values: tuple[tuple[str, float], ...]


def other_unit(measures: MeasureSet, unit: Unit) -> OtherUnit | None:
    """The one factor that makes most lengths usual, where hardly any is so now; None otherwise."""
    lengths = [
        (text_key, measure_entry(plain_key(text_key)), measure.value)
        for text_key, measure in measures.values.items()
        if measure.status != "estimated" and measure_entry(plain_key(text_key)).is_length
    ]
    if len(lengths) < LEAST_LENGTHS:
        return None
    drop = measures.drop_below_natural
    usual = sum(within(value, entry.usual_at(drop)) for _, entry, value in lengths)
    if usual > MOST_NOW * len(lengths):
        return None
    best: tuple[int, float, str] = (0, 1.0, "")
    for factor, question in unit_slips(unit):
        fitting = sum(within(value * factor, entry.usual_at(drop)) for _, entry, value in lengths)
        best = max(best, (fitting, factor, question))
    fitting, factor, question = best
    if fitting < LEAST_THEN * len(lengths):
        return None
    return OtherUnit(factor, question, tuple((text_key, value * factor) for text_key, _, value in lengths))
