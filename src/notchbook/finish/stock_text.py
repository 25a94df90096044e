"""The section of a house table that says in which lengths things are sold."""

import math
from collections.abc import Mapping
from typing import Any

from notchbook.errors import InputError
from notchbook.finish.row import GRADES
from notchbook.finish.stock import Stock
from notchbook.units import MM_PER_UNIT, Unit, parse_length, suggestion

_SHORTEST, _LONGEST = 20.0, 3000.0
"""mm; what is sold in lengths lies between (common sense, no source: it catches slips)."""

_UNITS: tuple[tuple[Unit, Unit], ...] = (("cm", "in"), ("in", "cm"))
"""A list for readers of each unit; where there is none, that for the other holds."""

_KEYS = ("cm", "in", "source", "grade")
"""What a row with a list for each unit may say."""


def stocks(data: Mapping[str, Any], section: str, unit: Unit, known: Mapping[str, Stock]) -> dict[str, Stock]:
    """The rows of a section: a list of lengths, or ``{ cm, in, source, grade }`` with a list each.

    Refused with InputError: ``house-section-malformed``, ``house-key-unknown``,
    ``house-lengths-unusable``, ``house-grade-unknown``.
    """
    values = data.get(section, {})
    if not isinstance(values, Mapping):
        raise InputError("house-section-malformed", section=section)
    if known:
        _require_known(values, tuple(known))
    return {key: _stock(key, value, unit) for key, value in values.items()}


def _require_known(given: Mapping[str, Any], names: tuple[str, ...]) -> None:
    for key in given:
        if key not in names:
            raise InputError("house-key-unknown", key=key, known=names, suggestion=suggestion(key, names))


def _stock(key: str, value: object, unit: Unit) -> Stock:
    """A list alone holds for readers of every unit."""
    if isinstance(value, Mapping):
        _require_known(value, _KEYS)
    given = value if isinstance(value, Mapping) else {"cm": value, "in": value}
    own = not isinstance(value, Mapping)
    by_unit: dict[Unit, tuple[float, ...]] = {}
    for named, other in _UNITS:
        written = named if named in given else other
        by_unit[named] = _lengths(key, given.get(written), unit if own else written)
    grade = str(given.get("grade", "house"))
    if grade not in GRADES:
        raise InputError("house-grade-unknown", key=key, given=grade, known=GRADES)
    return Stock(by_unit["cm"], by_unit["in"], str(given.get("source", "set in this house")), grade)


def _lengths(key: str, values: object, unit: Unit) -> tuple[float, ...]:
    if not isinstance(values, list) or not values:
        raise _unusable(key, values)
    return tuple(sorted(_length(key, one, unit) for one in values))


def _length(key: str, value: object, unit: Unit) -> float:
    if isinstance(value, str):
        length = parse_length(value, unit)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        length = float(value) * float(MM_PER_UNIT[unit])
    else:
        raise _unusable(key, value)
    if not math.isfinite(length) or not _SHORTEST <= length <= _LONGEST:
        raise _unusable(key, value)
    return length


def _unusable(key: str, value: object) -> InputError:
    return InputError("house-lengths-unusable", key=key, value="nothing" if value is None else value)
