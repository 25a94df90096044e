"""Reading one length as typed."""

import re
from fractions import Fraction
from typing import Final

from notchbook.errors import InputError
from notchbook.units.feet import inches_in_feet, names_feet
from notchbook.units.number import NUMBER_PATTERN, check_text, exact_number, not_a_number
from notchbook.units.quoted import quoted
from notchbook.units.signs import plain_signs
from notchbook.units.unit import MM_PER_UNIT, Unit, unit_named

LONGEST_LENGTH: Final = 100_000.0
"""mm. Nothing in a pattern studio, not even one bolt of cloth, is longer than 100 m (common practice)."""

_LENGTH: Final = re.compile(rf"([+-]?) ?({NUMBER_PATTERN}) ?([a-z]+\.?|\"|')?")
_SECOND_UNIT: Final = re.compile(
    rf"[+-]? ?(?:{NUMBER_PATTERN}) ?(?:mm|cm|in|inch|inches|\")\.? ?(?:and )?[0-9]"
)


def parse_length(text: str, default_unit: Unit | None, *, allow_negative: bool = False) -> float:
    """The length in mm that the text means; a bare number is in ``default_unit``.

    Understood: ``37 1/2"``, ``37-1/2 in``, ``37½″``, ``37.5 in``, ``95,3 cm``, ``953 mm``, ``3/8 in``,
    and feet with or without inches: ``5'6"``, ``5 ft 6 1/2 in``, ``5 ft``.
    Refused with InputError: ``number-*`` for what is no plain number, ``number-negative``,
    ``length-unit-missing`` (bare number and no default), ``length-unit-unknown``,
    ``length-unit-mixed`` (two units), ``length-feet`` (``5' 14"``), ``length-too-large`` (over 100 m).

    >>> parse_length('37 1/2"', "cm")
    952.5
    """
    check_text(text)
    number, unit = _split(text)
    if number < 0 and not allow_negative:
        raise InputError("number-negative", text=quoted(text), where="")
    unit = unit or default_unit
    if unit is None:
        raise InputError("length-unit-missing", text=quoted(text), where="")
    return mm_of(number, unit, text)


def written_unit(text: str) -> Unit | None:
    """The unit that the text of a length names itself, or None for a bare number. Refuses no length.

    Feet count as inches.
    """
    check_text(text)
    return _split(text)[1]


def mm_of(number: Fraction, unit: Unit, text: str) -> float:
    """The exact number of units in mm, as the nearest float; refused over 100 m."""
    exact = number * MM_PER_UNIT[unit]
    if abs(exact) > LONGEST_LENGTH:
        raise InputError("length-too-large", text=quoted(text), most=LONGEST_LENGTH, where="")
    return float(exact)


def _split(text: str) -> tuple[Fraction, Unit | None]:
    plain = plain_signs(text)
    if names_feet(plain):
        inches = inches_in_feet(plain.lstrip("+-").strip(), text)
        return (-inches if plain.startswith("-") else inches), "in"
    match = _LENGTH.fullmatch(plain)
    if match is None:
        raise _unreadable(plain, text)
    sign, number, word = match.groups()
    unit = _unit(word, text) if word else None
    exact = exact_number(number, text)
    return (-exact if sign == "-" else exact), unit


def _unit(word: str, text: str) -> Unit:
    try:
        return unit_named(word)
    except InputError as error:
        raise InputError(error.code, **{**error.facts, "text": quoted(text)}) from None


def _unreadable(plain: str, text: str) -> InputError:
    reason = not_a_number(plain, text)
    if reason.code == "number-text" and _SECOND_UNIT.match(plain):
        return InputError("length-unit-mixed", text=quoted(text), where="")
    return reason
