"""Values of measures in words: ``20.3 cm``, ``24.5°``, ``20.3 ± 1.8 cm``; and keys as they are said."""

from collections.abc import Mapping

from notchbook.body.measure import Measure
from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.units import LengthStyle, format_degrees

ESTIMATE_SIGN = "est."
"""The short word beside whatever comes from an estimate."""


def quantity_text(entry: MeasureEntry, value: float, style: LengthStyle) -> str:
    """A value (mm, degrees or kg, as the measure's kind says) in the reader's unit."""
    if entry.is_length:
        return style.text(value)
    return format_degrees(value) if entry.kind == "angle" else f"{value:.1f} kg"


def quantity_with_error(entry: MeasureEntry, value: float, error: float, style: LengthStyle) -> str:
    """``20.3 ± 1.8 cm``: the unit once."""
    number, spread = (quantity_text(entry, amount, style) for amount in (value, error))
    for unit in (" cm", " mm", " kg", "°", '"'):
        number = number.removesuffix(unit)
    return f"{number} ± {spread}"


def said_key(text_key: str) -> str:
    """``hip_depth@left`` as it is said in a sentence: ``hip depth, left``."""
    key, _, side = text_key.partition("@")
    label = measure_entry(key).label
    plain = label[0].lower() + label[1:]
    return f"{plain}, {side}" if side else plain


def estimate_texts(estimates: Mapping[str, Measure], style: LengthStyle) -> tuple[str, ...]:
    """Each estimate as :func:`estimate_text` says it."""
    return tuple(estimate_text(name, measure, style) for name, measure in estimates.items())


def estimate_text(text_key: str, measure: Measure, style: LengthStyle) -> str:
    """``hip depth 20.3 ± 1.8 cm``; a value that is no estimate stands without ±."""
    entry = measure_entry(text_key.partition("@")[0])
    if measure.error is None:
        return f"{said_key(text_key)} {quantity_text(entry, measure.value, style)}"
    return f"{said_key(text_key)} {quantity_with_error(entry, measure.value, measure.error, style)}"
