"""Measures that go along the same way, once in parts and once as a whole."""

from collections.abc import Iterator
from typing import Final

from notchbook.body.doubts.doubt import Doubt
from notchbook.body.doubts.known import known_values, label_of, said_of, sided_keys
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError

SUM_TOLERANCE: Final = 20.0
"""mm. Two tapes over the same way differ by up to 1 cm each (common practice)."""

_SUMS: Final = (
    (("front_crotch_length", "back_crotch_length"), "crotch_length"),
    (("inside_leg", "standing_rise"), "outside_leg"),
)


def sum_doubts(measures: MeasureSet) -> Iterator[Doubt]:
    """Every sum that is not its whole, on the side where it is not."""
    for parts, whole in _SUMS:
        yield from _one_sum(measures, parts, whole)


def _one_sum(measures: MeasureSet, parts: tuple[str, ...], whole: str) -> Iterator[Doubt]:
    keys = (*parts, whole)
    for side, values in known_values(measures, keys):
        total, expected = sum(values[:-1]), values[-1]
        if abs(total - expected) <= SUM_TOLERANCE:
            continue
        problem = InputError(
            "measures-sum",
            parts=" + ".join([label_of(parts[0], side), *(said_of(part, side) for part in parts[1:])]),
            whole=said_of(whole, side),
            total=total,
            expected=expected,
            where="",
        )
        yield Doubt("check", sided_keys(keys, side), problem)
