"""How one style differs from another, in words."""

from collections.abc import Iterator
from typing import Any

from notchbook.app.amount_words import amount_in_words
from notchbook.app.comparing.styles import FieldChange, MeasureChange, StyleDifference
from notchbook.body import Measure, PopulationName
from notchbook.body.quantity_words import measure_text, said_key
from notchbook.errors import InputError
from notchbook.pattern import spoken
from notchbook.pattern.names import is_name
from notchbook.recipe.parameter_paths import path_in_words
from notchbook.units import LengthStyle, Unit


def difference_words(
    found: StyleDifference, unit: Unit, population: PopulationName | None = None
) -> Iterator[str]:
    """A line for each step that was added, taken out or moved, each field and each measure that differs."""
    for record in found.added:
        yield f"added: {record.title} ({record.id})"
    for record in found.removed:
        yield f"taken out: {record.title} ({record.id})"
    for record in found.reordered:
        yield f"at another place: {record.title} ({record.id})"
    for field in found.fields:
        yield field_words(field, unit)
    for measure in found.measures:
        yield measure_words(measure, LengthStyle(unit), population)


def field_words(field: FieldChange, unit: Unit) -> str:
    """``Draft skirt, flare: 0 → 3.34``."""
    before, after = _value(field.before, unit), _value(field.after, unit)
    return f"{field.title}, {path_in_words(field.path)}: {before} → {after}"


def measure_words(change: MeasureChange, style: LengthStyle, population: PopulationName | None) -> str:
    """``hip: 92 cm → 96 cm``."""
    before, after = (_measure(change.key, one, style) for one in (change.before, change.after))
    return f"{said_key(change.key, population)}: {before} → {after}"


def _measure(key: str, measure: Measure | None, style: LengthStyle) -> str:
    if measure is None:
        return "not taken"
    status = "" if measure.status == "measured" else f" ({measure.status})"
    return f"{measure_text(key, measure, style)}{status}"


def _value(value: Any, unit: Unit) -> str:
    if value is None or value == "":
        return "empty"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, str):
        return f"{value:g}"
    if is_name(value):
        return spoken(value)
    try:
        return amount_in_words(value, unit)
    except InputError:
        return value.replace("_", " ")
