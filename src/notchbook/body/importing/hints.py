"""What a refused cell may have been meant as. Hinted at, never applied."""

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from notchbook.body.doubts.likely_slip import within
from notchbook.body.measure_table import MeasureEntry, measure_entry
from notchbook.body.sides import plain_key
from notchbook.errors import InputError
from notchbook.units import MM_PER_UNIT, LengthStyle, Unit, parse_length

_MM_PER_METER: Final = 1000
_DIGITS: Final = re.compile(r"[0-9]{1,3}(?: ?[0-9]){1,5}")
_DENOMINATORS: Final = (2, 4, 8, 16)
"""Parts into which a tape divides the inch (common practice)."""


def cell_hint(key: str, text: str, unit: Unit | None) -> str:
    """A sentence with a blank behind it: was it meters, or was the sign of a fraction lost? Often nothing."""
    entry = measure_entry(plain_key(key))
    if not entry.is_length:
        return ""
    style = LengthStyle(unit or "cm")
    for value in _lost_sign(entry, text) if unit == "in" else ():
        return f"{style.text(value)} would be usual: is the sign of a fraction lost? "
    try:
        meters = parse_length(text, "mm") * _MM_PER_METER
    except InputError:
        return ""
    if text.strip()[-1:].isdecimal() and within(meters, entry.usual):
        return f"{style.text(meters)} would be usual: was it written in meters? "
    return ""


def _lost_sign(entry: MeasureEntry, text: str) -> Iterator[float]:
    """The usual values (mm) that ``3612`` or ``36 12`` may stand for: 36 1/2."""
    if not _DIGITS.fullmatch(text):
        return
    digits = text.replace(" ", "")
    for denominator in _DENOMINATORS:
        before = digits.removesuffix(str(denominator))
        for length in (1, 2):
            whole, part = before[:-length], before[-length:]
            if before == digits or not whole or int(part) % 2 == 0 or int(part) >= denominator:
                continue
            value = float((int(whole) + Fraction(int(part), denominator)) * MM_PER_UNIT["in"])
            if within(value, entry.usual):
                yield value
