"""Values of measures in words: ``20.3 cm``, ``24.5°``, ``20.3 ± 1.8 cm``; and keys as they are said."""

from notchbook.body.measure import Measure
from notchbook.body.measure_set import PopulationName
from notchbook.body.measure_table import MeasureEntry, measure_entry, measure_table
from notchbook.body.sides import plain_key
from notchbook.body.waist_drop import value_entry
from notchbook.units import LengthStyle, format_degrees, format_length

ESTIMATE_SIGN = "est."
"""The short word beside whatever comes from an estimate."""


def quantity_text(entry: MeasureEntry, value: float, style: LengthStyle) -> str:
    """A value (mm, degrees or kg, as the measure's kind says) in the reader's unit."""
    if entry.is_length:
        return style.text(value)
    return format_degrees(value) if entry.kind == "angle" else f"{value:.1f} kg"


def exact_text(entry: MeasureEntry, value: float, style: LengthStyle) -> str:
    """The value as it was typed: with a second decimal where one would show another number."""
    plain = quantity_text(entry, value, style)
    if not entry.is_length or style.unit == "in":
        return plain
    finer = format_length(value, style.unit, 2, decimal_sign=style.decimal_sign)
    return plain if finer == plain.replace(" ", "0 ") else finer


def quantity_with_error(entry: MeasureEntry, value: float, error: float, style: LengthStyle) -> str:
    """``20.3 ± 1.8 cm``: the unit once."""
    return one_unit(quantity_text(entry, value, style), quantity_text(entry, error, style))


def one_unit(number: str, spread: str) -> str:
    """``20.3 ± 1.8 cm`` of ``20.3 cm`` and ``1.8 cm``."""
    for unit in (" cm", " mm", " kg", "°", '"'):
        number = number.removesuffix(unit)
    return f"{number} ± {spread}"


def said_key(text_key: str, population: PopulationName | None = None) -> str:
    """``hip_depth@left`` as it is said in a sentence: ``hip depth, left``; of men in men's words."""
    label, side = value_entry(text_key).label_for(population), text_key.partition("@")[2]
    plain = label[0].lower() + label[1:]
    return f"{plain}, {side}" if side else plain


def worded_for(text: str, population: PopulationName | None) -> str:
    """The text with each measure in it called as it is of this population: ``chest girth`` of men."""
    for entry in measure_table().values() if population == "men" else ():
        if entry.label_men:
            text = text.replace(entry.label.lower(), entry.label_men.lower())
    return text


def estimate_text(
    text_key: str, measure: Measure, style: LengthStyle, population: PopulationName | None = None
) -> str:
    """``hip depth 20.3 ± 1.8 cm``; a value that is no estimate stands without ±."""
    return f"{said_key(text_key, population)} {measure_text(text_key, measure, style)}"


def measure_text(text_key: str, measure: Measure, style: LengthStyle) -> str:
    """``20.3 ± 1.8 cm``; a value that is no estimate stands without ±."""
    entry = measure_entry(plain_key(text_key))
    if measure.error is None:
        return quantity_text(entry, measure.value, style)
    return quantity_with_error(entry, measure.value, measure.error, style)
