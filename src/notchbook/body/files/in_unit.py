"""A measure set as plain data in another unit than mm."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any, Final

from notchbook.body.files.body_columns import LENGTHS_ABOUT
from notchbook.body.files.set_data import set_to_data
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.sides import plain_key
from notchbook.units import Unit

INCH_DECIMALS: Final = 5
"""Decimals of an inch that are written: read back, the value is within 0.0002 mm."""


def set_to_data_in(measures: MeasureSet, unit: Unit) -> dict[str, Any]:
    """The data of :func:`set_to_data` with all lengths in ``unit``; angles and weights stay.

    Millimeters and centimeters are exact. Inches have five decimals.
    """
    data = set_to_data(measures)
    data["unit"] = unit
    for name in LENGTHS_ABOUT:
        if name in data:
            data[name] = length_in(data[name], unit)
    data["measures"] = {key: _value_in(key, value, unit) for key, value in data["measures"].items()}
    return data


def length_in(mm: float, unit: Unit) -> float | int:
    """The length, given in mm, as a number of units."""
    if unit == "in":
        number = round(mm / 25.4, INCH_DECIMALS)
    else:
        number = float(Fraction(repr(float(mm))) / (10 if unit == "cm" else 1))
    return int(number) if number.is_integer() else number


def _value_in(key: str, value: object, unit: Unit) -> object:
    if not measure_entry(plain_key(key)).is_length:
        return value
    if isinstance(value, Mapping):
        return {name: _field_in(name, field, unit) for name, field in value.items()}
    return _number_in(value, unit)


def _field_in(name: str, field: object, unit: Unit) -> object:
    if name == "readings" and isinstance(field, list):
        return [_number_in(reading, unit) for reading in field]
    return _number_in(field, unit) if name in ("value", "error") else field


def _number_in(value: object, unit: Unit) -> object:
    return length_in(value, unit) if isinstance(value, (int, float)) else value
