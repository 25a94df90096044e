"""Units in the words of a foreign table: over a column, in a unit column, under the header."""

import re
from dataclasses import dataclass
from typing import Final, Literal, get_args

from notchbook.errors import InputError
from notchbook.units import Unit, unit_named

LineUnit = Literal["mm", "cm", "in", "deg", "kg", ""]
"""The unit of a line of a foreign table; nothing while it is not known."""

LINE_UNITS: Final[tuple[LineUnit, ...]] = get_args(LineUnit)[:-1]

UNIT_WORDS: Final[dict[Unit, str]] = {"mm": "millimeters", "cm": "centimeters", "in": "inches"}
"""The units of lengths as they are said in a sentence."""

_MORE_WORDS: Final[dict[str, LineUnit]] = {
    "ins": "in", "zoll": "in", "pouce": "in", "pouces": "in", "pulgada": "in", "pulgadas": "in", "duim": "in",
    "''": "in", "\u2033": "in", "\u201d": "in", "cms": "cm", "zentimeter": "cm", "centimetres": "cm",
    "centimetro": "cm", "centimetros": "cm", "millimeter": "mm", "mms": "mm",
    "deg": "deg", "degs": "deg", "degree": "deg", "degrees": "deg", "\u00b0": "deg", "grad": "deg",
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg",
}  # fmt: skip
_UNUSABLE: Final = frozenset(
    {"m", "meter", "meters", "ft", "feet", "foot", "yd", "lb", "lbs", "pounds", "st"}
)

_BRACKETED: Final = re.compile(r"[(\[{]\s*(?:in |all in )?([^()\[\]{}]{1,14}?)\.?\s*[)\]}]")
_TRAILING: Final = re.compile(
    r"(?P<rest>.*\S)(?P<sign>[\s,;/|:_-]+)(?:in\s+)?(?P<unit>[a-zA-Z\"\u2033\u201d\u00b0]{1,14}|'')\.?"
)


@dataclass(frozen=True, slots=True)
class UnitWords:
    """The unit that words name; ``said`` are the words, also where the unit is none that is read here."""

    unit: LineUnit = ""
    said: str = ""


NO_UNIT: Final = UnitWords()


def read_unit(text: str) -> UnitWords:
    """The unit that the whole text names; without ``said`` when it speaks of no unit."""
    word = text.strip().lower().removesuffix(".").strip()
    if not word or len(word) > 14:
        return NO_UNIT
    unit = _MORE_WORDS.get(word)
    if unit:
        return UnitWords(unit, text.strip())
    try:
        return UnitWords(unit_named(word), text.strip())
    except InputError:
        return UnitWords("", text.strip()) if word in _UNUSABLE else NO_UNIT


def take_unit(words: str) -> tuple[str, UnitWords]:
    """The words without their unit, and the unit: ``Bust (cm)``, ``Hip in.``, ``Bust in cm``."""
    for match in _BRACKETED.finditer(words):
        found = read_unit(match[1])
        if found.said:
            return f"{words[: match.start()]} {words[match.end() :]}".strip(), found
    trailing = _TRAILING.fullmatch(words.strip())
    if trailing is not None:
        found = read_unit(trailing["unit"])
        # "Size M" is no size in meters: units that are not read count in brackets alone.
        if found.unit:
            rest = trailing["rest"].rstrip(" ,;/|:_-")
            return re.sub(r"[\s,;/|:_-]+in$", "", rest) if found.unit != "in" else rest, found
    return words.strip(), NO_UNIT
