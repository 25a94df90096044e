"""From the text of a file or form to a measure."""

import statistics
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from notchbook.body.doubts.limits import refuse_impossible
from notchbook.body.files.fields import choice
from notchbook.body.files.weight import WEIGHT_UNITS, parse_weight
from notchbook.body.measure import STATUSES, Measure
from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.body.quantity_words import quantity_text
from notchbook.body.sides import plain_key, sided_key, split_key
from notchbook.errors import InputError
from notchbook.units import (
    LengthStyle,
    Unit,
    located_errors,
    parse_degrees,
    parse_length,
    quoted,
    unit_named,
    written_unit,
)

VALUE_FIELDS: Final = ("value", "unit", "status", "error", "method", "by", "note", "readings")
"""What a file may say about one measure."""

READINGS_SIGN: Final = " & "
"""Between readings of one measure in a line of text: ``94.0 & 94.6``. A slash would look like a fraction."""

_OTHER_UNITS: Final = {"angle": ("deg", "degrees", "\u00b0"), "weight": tuple(WEIGHT_UNITS)}


@dataclass(frozen=True, slots=True)
class RawValue:
    """One value as a file has it: everything still text, empty where nothing was said."""

    value: str
    unit: str = ""
    status: str = ""
    error: str = ""
    method: str = ""
    by: str = ""
    note: str = ""
    readings: str = ""


def read_value(
    text_key: str, raw: RawValue, file_unit: Unit | None, *, as_typed: bool = False
) -> tuple[str, Measure]:
    """The key with its side, and the measure; impossible values are refused.

    ``file_unit`` is the unit of a bare number; the value's own unit goes before it. Every refusal
    names the key. ``as_typed``: impossible values are kept, for looking over and for nothing else.
    """
    with located_errors(quoted(text_key)):
        key, side = split_key(text_key.strip().lower())
        name = sided_key(key, side)
        return name, _measure(name, raw, file_unit, as_typed)


def _measure(name: str, raw: RawValue, file_unit: Unit | None, as_typed: bool) -> Measure:
    entry = measure_entry(plain_key(name))
    status = choice(raw.status.strip() or "measured", "status", STATUSES)
    value_text, readings_text = _apart(raw)
    taken = [
        read_quantity(entry, text, raw.unit, file_unit)
        for text in readings_text.split(READINGS_SIGN.strip())
        if text.strip()
    ]
    readings = tuple(reading for reading, _ in taken)
    if readings and not value_text:
        value, unit = statistics.median(readings), taken[0][1]
    else:
        value, unit = read_quantity(entry, value_text, raw.unit, file_unit)
    error = read_quantity(entry, raw.error, raw.unit, file_unit)[0] if raw.error.strip() else None
    style = LengthStyle(unit or "cm")
    for one in () if as_typed else (value, *readings):
        refuse_impossible(name, one, style)
    try:
        return Measure(value, status, error, raw.method, raw.by, raw.note, readings)
    except InputError as refused:
        if refused.code != "measure-readings":
            raise
        said = quantity_text(entry, value, style)
        raise InputError(refused.code, **{**refused.facts, "value": said}) from None


def _apart(raw: RawValue) -> tuple[str, str]:
    """Value and readings; readings may stand in the place of the value, since it follows from them."""
    if READINGS_SIGN.strip() in raw.value and not raw.readings.strip():
        return "", raw.value
    return raw.value.strip(), raw.readings


def read_quantity(
    entry: MeasureEntry, text: str, unit_text: str, file_unit: Unit | None
) -> tuple[float, Unit | None]:
    """The value in mm, degrees or kg, as the kind of the measure wants; for a length, its typed unit too.

    Refused: ``number-*``, ``length-*``, ``angle-*``; ``measure-unit`` when the unit does not fit the
    kind of measure; ``length-unit-mixed`` when the value names another unit than its own column.
    """
    if entry.is_length:
        return _length(text, unit_text, file_unit)
    if unit_text.strip() and unit_text.strip().lower() not in _OTHER_UNITS[entry.kind]:
        raise InputError(
            "measure-unit", label=entry.label, unit=quoted(unit_text), wanted=entry.unit, where=""
        )
    if entry.kind == "angle":
        return parse_degrees(text, allow_negative=False), None
    return parse_weight(text, unit_text.strip().lower()), None


@lru_cache(maxsize=8192)
def _length(text: str, unit_text: str, file_unit: Unit | None) -> tuple[float, Unit | None]:
    written = written_unit(text)
    column = unit_named(unit_text) if unit_text.strip() else None
    if written and column and written != column:
        raise InputError("length-unit-mixed", text=quoted(f"{text} ({unit_text})"), where="")
    unit = written or column or file_unit
    return parse_length(text, unit), unit
