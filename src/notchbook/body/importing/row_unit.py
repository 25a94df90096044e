"""A row whose numbers look like another unit than the rest of the table."""

from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from notchbook.body.doubts.likely_slip import within
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.units import MM_PER_UNIT, UNITS, Unit, parse_length, written_unit

LEAST_VALUES: Final = 2
"""One number alone may as well be a slip of a digit (house judgment)."""

_MOSTLY: Final = 0.8
_HARDLY: Final = 0.4
"""Share of a row's numbers that are usual in the other unit, and in its own, before it is asked about
(house judgment)."""

BareNumber = tuple[str, float, Unit]
"""The key of a length, its number without a unit, and the unit it would be read in."""


def bare_number(key: str, text: str, unit: Unit | None) -> BareNumber | None:
    """The cell as a bare number of a length; None for what is none, or cannot be read."""
    if unit is None or not measure_entry(plain_key(key)).is_length:
        return None
    number = _number(text)
    return None if number is None else (key, number, unit)


@lru_cache(maxsize=8192)
def _number(text: str) -> float | None:
    try:
        return None if written_unit(text) else parse_length(text, "mm")
    except InputError:
        return None


def other_unit(numbers: Sequence[BareNumber]) -> Unit | None:
    """The unit in which nearly all numbers are usual while hardly any is in its own; mostly None."""
    if len(numbers) < LEAST_VALUES:
        return None
    if _usual(numbers, None) > _HARDLY * len(numbers):
        return None
    best = max(UNITS, key=lambda unit: _usual(numbers, unit))
    return best if _usual(numbers, best) >= _MOSTLY * len(numbers) else None


def _usual(numbers: Sequence[BareNumber], unit: Unit | None) -> int:
    """How many are usual in the unit; None: each in its own."""
    return sum(
        within(
            number * float(MM_PER_UNIT[unit or own]),
            measure_entry(plain_key(key)).usual,
        )
        for key, number, own in numbers
    )
