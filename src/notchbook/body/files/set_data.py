"""A measure set as plain data, the same in files, in the book and over the wire."""

from collections.abc import Mapping
from typing import Any, Final

from notchbook.body.circumstances import Circumstances
from notchbook.body.files.fields import check_fields, choice, text_of
from notchbook.body.files.raw_value import READINGS_SIGN, VALUE_FIELDS, RawValue, read_value
from notchbook.body.measure import Measure
from notchbook.body.measure_set import KINDS, POPULATIONS, RISE_METHODS, TAKEN_AS, WAIST_LEVELS, MeasureSet
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit, located_errors, parse_length, quoted, unit_named

_NO_MEASURES: Final = {"notchbook style": "a style", "notchbook recipe": "the recipe of a style"}
"""What a file may say of itself (its ``format``) that holds no measures of its own to be read."""

SET_FIELDS: Final = (
    "name",
    "kind",
    "unit",
    "waist_level",
    "waist_drop",
    "rise_method",
    "population",
    "taken_as",
    "label_size",
    "taken_on",
    "taken_by",
    "undergarment",
    "heel",
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
    said = measures.circumstances
    more: tuple[tuple[str, object], ...] = (
        ("rise_method", measures.rise_method),
        ("population", measures.population),
        ("taken_as", "" if measures.taken_as == "book" else measures.taken_as),
        ("label_size", measures.label_size),
        ("taken_on", said.taken_on),
        ("taken_by", said.taken_by),
        ("undergarment", said.undergarment),
        ("heel", _number(said.heel)),
        ("note", measures.note),
    )
    about |= {name: value for name, value in more if value}
    return {**about, "measures": {key: _value_to_data(value) for key, value in measures.values.items()}}


def set_from_data(data: object, default_name: str = "", *, as_typed: bool = False) -> MeasureSet:
    """The set that the data describes: ``{name, unit, measures: {key: value}}`` and more.

    A value is a number in ``unit``, a text such as ``37 1/2 in``, or a table with ``value``, ``unit``,
    ``status``, ``error``, ``method``, ``by`` and ``note``. Nothing is guessed: without ``unit`` every
    length must name its own. Refused with InputError that names the key.
    ``as_typed``: impossible values are kept, for looking over and for nothing else.
    """
    if not isinstance(data, Mapping):
        raise InputError(
            "measures-shape", what="The whole", wanted="a table with name, unit and measures", where=""
        )
    _refuse_style(data)
    check_fields(data, SET_FIELDS)
    unit = unit_of(data)
    values = data.get("measures")
    if not isinstance(values, Mapping):
        raise InputError("measures-shape", what="measures", wanted="a table of keys and values", where="")
    found: dict[str, Measure] = {}
    for text_key, value in values.items():
        key, measure = read_value(str(text_key), _raw(str(text_key), value), unit, as_typed=as_typed)
        if key in found:
            raise InputError("measure-duplicate", key=key, where="")
        found[key] = measure
    return set_about(data, found, unit, default_name)


def _refuse_style(data: Mapping[str, object]) -> None:
    """Refuse (``measures-are-style``) what says of itself that it is a style or a recipe."""
    what = _NO_MEASURES.get(str(data.get("format")))
    if what is not None:
        raise InputError("measures-are-style", what=what, where="")


def set_about(
    data: Mapping[str, object], values: Mapping[str, Measure], unit: Unit | None, default_name: str
) -> MeasureSet:
    """The set with these values; name, kind, waist level and the like come from ``data`` as text."""
    try:
        return _set_about(data, values, unit, default_name)
    except InputError as refused:
        if refused.code != "waist-level":
            raise
        drop = LengthStyle(unit or "cm").text(_length_of(data, "waist_drop", unit))
        raise InputError(refused.code, **{**refused.facts, "drop": drop}) from None


def _set_about(
    data: Mapping[str, object], values: Mapping[str, Measure], unit: Unit | None, default_name: str
) -> MeasureSet:
    method = text_of(data, "rise_method")
    population = text_of(data, "population")
    return MeasureSet(
        name=text_of(data, "name") or default_name,
        values=values,
        kind=choice(text_of(data, "kind") or "body", "kind", KINDS),
        waist_level=choice(text_of(data, "waist_level") or "natural", "waist_level", WAIST_LEVELS),
        waist_drop=_length_of(data, "waist_drop", unit),
        rise_method=choice(method, "rise_method", RISE_METHODS) if method else None,
        note=text_of(data, "note"),
        population=choice(population, "population", POPULATIONS) if population else None,
        taken_as=choice(text_of(data, "taken_as") or "book", "taken_as", TAKEN_AS),
        label_size=text_of(data, "label_size"),
        circumstances=Circumstances(
            text_of(data, "taken_on"),
            text_of(data, "taken_by"),
            text_of(data, "undergarment"),
            _length_of(data, "heel", unit),
        ),
    )


def _length_of(data: Mapping[str, object], name: str, unit: Unit | None) -> float:
    text = text_of(data, name)
    with located_errors(name):
        return parse_length(text, unit) if text else 0.0


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
        return RawValue(**{"value": "", **{name: _field_text(value, name) for name in value}})


def _field_text(value: Mapping[str, object], name: str) -> str:
    """The field as text; readings may stand as a list."""
    given = value.get(name)
    if name == "readings" and isinstance(given, list):
        return READINGS_SIGN.join(text_of({name: one}, name) for one in given)
    return text_of(value, name)


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
    if measure.readings:
        words["readings"] = [_number(reading) for reading in measure.readings]
    return words


def _number(value: float) -> float | int:
    return int(value) if value.is_integer() else value
