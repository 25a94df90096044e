"""Lengths and angles as the trade writes them: mm inside; cm, mm and inch fractions outside.

Nothing here knows a garment or a body, and nothing here loads numerics.
"""

from notchbook.units.amount import Amount, Term
from notchbook.units.angle import format_degrees, parse_degrees
from notchbook.units.counted import counted
from notchbook.units.length import parse_length, written_unit
from notchbook.units.length_in_words import length_in_words
from notchbook.units.length_style import LengthStyle, format_length
from notchbook.units.located import located, located_errors
from notchbook.units.nearest import nearest_name, suggestion
from notchbook.units.notation import parse_amount
from notchbook.units.number import decimal_text, parse_number
from notchbook.units.quoted import quoted
from notchbook.units.stretch_test import StretchTest, parse_recovery, parse_stretch, stretch_needed
from notchbook.units.tolerances import TOLERANCES, ToleranceReason, Tolerances, tolerance_reasons
from notchbook.units.unit import MM_PER_UNIT, UNITS, Unit, unit_named

__all__ = [
    "MM_PER_UNIT",
    "TOLERANCES",
    "UNITS",
    "Amount",
    "LengthStyle",
    "StretchTest",
    "Term",
    "ToleranceReason",
    "Tolerances",
    "Unit",
    "counted",
    "decimal_text",
    "format_degrees",
    "format_length",
    "length_in_words",
    "located",
    "located_errors",
    "nearest_name",
    "parse_amount",
    "parse_degrees",
    "parse_length",
    "parse_number",
    "parse_recovery",
    "parse_stretch",
    "quoted",
    "stretch_needed",
    "suggestion",
    "tolerance_reasons",
    "unit_named",
    "written_unit",
]
