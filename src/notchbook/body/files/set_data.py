"""A measure set as plain data, the same in files, in the book and over the wire."""

from collections.abc import Mapping
from typing import Any, Final

from notchbook.body.files.fields import check_fields, choice, text_of
from notchbook.body.files.raw_value import VALUE_FIELDS, RawValue, read_value
from notchbook.body.measure import Measure
from notchbook.body.measure_set import KINDS, RISE_METHODS, WAIST_LEVELS, MeasureSet
from notchbook.errors import InputError
from notchbook.units import Unit, located_errors, parse_length, quoted, unit_named

SET_FIELDS: Final = (
    "name",
    "kind",
    "unit",
    "waist_level",
    "waist_drop",
    "rise_method",
    "note",
    "measures",
)
"""What the data of a set may say, in the order in which it is written."""


def set_to_data(measures: MeasureSet) -> dict[str, Any]:
    """The set as plain data in mm (degrees, kg), leaving out what says nothing; keys in a fixed order."""
    about: dict[str, Any] = {"name": measures.name, "kind": measures.kind, "unit": "mm"}
    about["waist_level"] = measures.waist_level
    if measures.waist_drop:
        about["waist_drop"] = measures.waist_drop
    if measures.rise_method:
        about["rise_method"] = measures.rise_method
    if measures.note:
        about["note"] = measures.note
    return {**about, "measures": {key: _value_to_data(value) for key, value in measures.values.items()}}


def set_from_data(data: object, default_name: str = "") -> MeasureSet:
    """The set that the data describes: ``{name, unit, measures: {key: value}}`` and more.

    A value is a number in ``unit``, a text such as ``37 1/2 in``, or a table with ``value``, ``unit``,
    ``status``, ``error``, ``method``, ``by`` and ``note``. Nothing is guessed: without ``unit`` every
    length must name its own. Refused with InputError that names the key.
    """
    if not isinstance(data, Mapping):
        raise InputError(
            "measures-shape", what="The whole", wanted="a table with name, unit and measures", where=""
        )
    check_fields(data, SET_FIELDS)
    unit = unit_of(data)
    values = data.get("measures")
    if not isinstance(values, Mapping):
        raise InputError("measures-shape", what="measures", wanted="a table of keys and values", where="")
    found: dict[str, Measure] = {}
    for text_key, value in values.items():
        key, measure = read_value(str(text_key), _raw(str(text_key), value), unit)
        if key in found:
            raise InputError("measure-duplicate", key=key, where="")
        found[key] = measure
    return set_about(data, found, unit, default_name)


def set_about(
    data: Mapping[str, object], values: Mapping[str, Measure], unit: Unit | None, default_name: str
) -> MeasureSet:
    """The set with these values; name, kind, waist level and the like come from ``data`` as text."""
    drop = text_of(data, "waist_drop")
    with located_errors("waist_drop"):
        waist_drop = parse_length(drop, unit) if drop else 0.0
    method = text_of(data, "rise_method")
    return MeasureSet(
        name=text_of(data, "name") or default_name,
        values=values,
        kind=choice(text_of(data, "kind") or "body", "kind", KINDS),
        waist_level=choice(text_of(data, "waist_level") or "natural", "waist_level", WAIST_LEVELS),
        waist_drop=waist_drop,
        rise_method=choice(method, "rise_method", RISE_METHODS) if method else None,
        note=text_of(data, "note"),
    )


def unit_of(data: Mapping[str, object]) -> Unit | None:
    """The unit that the data names for its bare numbers, or None."""
    text = text_of(data, "unit")
    with located_errors("unit"):
        return unit_named(text) if text else None


def _raw(text_key: str, value: object) -> RawValue:
    if not isinstance(value, Mapping):
        return RawValue(text_of({text_key: value}, text_key))
    with located_errors(quoted(text_key)):
        check_fields(value, VALUE_FIELDS)
        return RawValue(**{"value": "", **{name: text_of(value, name) for name in value}})


def _value_to_data(measure: Measure) -> object:
    plain = _number(measure.value)
    if measure == Measure(measure.value):
        return plain
    words: dict[str, object] = {"value": plain, "status": measure.status}
    if measure.error is not None:
        words["error"] = _number(measure.error)
    for name in ("method", "by", "note"):
        if getattr(measure, name):
            words[name] = getattr(measure, name)
    return words


def _number(value: float) -> float | int:
    return int(value) if value.is_integer() else value
