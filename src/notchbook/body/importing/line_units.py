"""In which unit the numbers of a line are: what the table says of it, and what the numbers look like."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.doubts.likely_slip import within
from notchbook.body.importing.unit_words import UNIT_WORDS, LineUnit, UnitWords, read_unit
from notchbook.body.measure_table import MeasureEntry
from notchbook.errors import InputError
from notchbook.units import MM_PER_UNIT, UNITS, Unit, parse_length, written_unit

_LOOKED_AT: Final = 400
_ROWS_NAMED: Final = 12
_BARE: Final = re.compile(r"[-+0-9 .,/]+")
"""Numbers that name no unit, seen at once: most cells are such."""

_MOSTLY: Final = 0.6
"""Share of the numbers that must be usual in a unit for it to be offered (house judgment)."""


@dataclass(frozen=True, slots=True)
class UnitFound:
    """The unit of a line's bare numbers, whether it is sure, why, and the rows to look at when it is not."""

    unit: LineUnit
    sure: bool
    why: str
    rows: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class UnitSaid:
    """What was said about a line's unit: by her, by its header, by a column of units.

    ``bodies`` are the units that the bodies' own field ``unit`` names; empty without such a field.
    """

    answered: LineUnit
    for_all: Unit | None
    header: UnitWords
    column: str
    bodies: frozenset[LineUnit]
    own_key: bool


def find_unit(entry: MeasureEntry, said: UnitSaid, cells: Sequence[tuple[int, str]]) -> UnitFound:
    """The unit of the line's bare numbers; ``cells`` are its filled cells with their rows."""
    if not cells:
        return UnitFound("", True, "no values")
    if not entry.is_length:
        return _other_unit(entry, said)
    if said.answered in UNITS:
        return UnitFound(said.answered, True, "you said so")
    return _length_unit(entry, said, cells)


def _length_unit(entry: MeasureEntry, said: UnitSaid, cells: Sequence[tuple[int, str]]) -> UnitFound:
    own = _own_units(cells)
    if len(own) == len(cells):
        return UnitFound("", True, "each value names its unit")
    stated = _stated(said)
    others = _said_otherwise(said, stated)
    if stated is not None and others:
        return UnitFound(stated.unit, False, f"{stated.said} is said, and elsewhere {others}")
    if stated is not None and stated.unit in UNITS:
        return _held_against_values(entry, stated, own, cells)
    if said.bodies:
        return UnitFound("", True, "each row names its unit")
    # Not against a header that says meters: its numbers are none of centimeters.
    if said.for_all is not None and stated is None:
        return UnitFound(said.for_all, True, "you said so of all values")
    return _from_values(entry, stated, own, cells)


def _other_unit(entry: MeasureEntry, said: UnitSaid) -> UnitFound:
    """Degrees and kilograms: stated, or to be confirmed, since a list may have pounds."""
    wanted: LineUnit = "deg" if entry.unit == "deg" else "kg"
    stated = _stated(said)
    if said.answered == wanted or said.own_key or (stated is not None and stated.unit == wanted):
        return UnitFound(wanted, True, "you said so" if said.answered else f"{wanted} is said")
    words = f"{stated.said} is said" if stated is not None else "no unit is said"
    return UnitFound(wanted, False, f"{words}, and {entry.label.lower()} is kept in {wanted}")


def _stated(said: UnitSaid) -> UnitWords | None:
    """The unit of the unit column or of the header, with the words for it; None when nothing is said."""
    column = read_unit(said.column)
    for found in (column, said.header):
        if found.said:
            return found
    return None


def _said_otherwise(said: UnitSaid, stated: UnitWords | None) -> str:
    """Other units that the header or the rows name than the one that is stated; nothing when they agree."""
    if stated is None or not stated.unit:
        return ""
    named = {said.header.unit, *said.bodies} - {stated.unit, ""}
    return ", ".join(sorted(named))


def _own_units(cells: Sequence[tuple[int, str]]) -> dict[int, Unit]:
    found: dict[int, Unit] = {}
    for row, text in cells:
        if _BARE.fullmatch(text):
            continue
        try:
            unit = written_unit(text)
        except InputError:
            # What cannot be read is refused in the preview, with its words.
            continue
        if unit is not None:
            found[row] = unit
    return found


def _held_against_values(
    entry: MeasureEntry, stated: UnitWords, own: dict[int, Unit], cells: Sequence[tuple[int, str]]
) -> UnitFound:
    """The stated unit, unless cells name another one or most values are usual in another one alone."""
    unit: LineUnit = stated.unit
    others = tuple(row for row, written in own.items() if written != unit)
    if others:
        words = f"{stated.said} is said, but some values name another unit"
        return UnitFound(unit, False, words, others[:_ROWS_NAMED])
    shares = _usual_shares(entry, own, cells)
    better = max(UNITS, key=lambda one: shares[one])
    if unit in UNITS and shares[better] >= _MOSTLY and shares[unit] <= 1 - _MOSTLY:
        return UnitFound(unit, False, f"{stated.said} is said, but the values look like {UNIT_WORDS[better]}")
    return UnitFound(unit, True, f"{stated.said} is said")


def _from_values(
    entry: MeasureEntry, stated: UnitWords | None, own: dict[int, Unit], cells: Sequence[tuple[int, str]]
) -> UnitFound:
    """The unit that the values look like; always to be confirmed."""
    words = f"{stated.said} is none of mm, cm, in" if stated is not None else "no unit is said"
    if own:
        named = ", ".join(dict.fromkeys(own.values()))
        bare = tuple(row for row, _text in cells if row not in own)
        return UnitFound("", False, f"some values say {named}, others say nothing", bare[:_ROWS_NAMED])
    shares = _usual_shares(entry, own, cells)
    best = max(UNITS, key=lambda one: shares[one])
    if shares[best] < _MOSTLY:
        meters = sum(within(1000 * number, entry.usual) for number in _numbers(cells, own))
        if meters and meters >= _MOSTLY * len(_numbers(cells, own)):
            return UnitFound("", False, f"{words}; the values look like meters, which are not read")
        return UnitFound("", False, f"{words}, and the values fit no unit well")
    other = _rows_in_another(entry, best, cells)
    mixed = ", those of some rows like another unit" if other else ""
    return UnitFound(best, False, f"{words}; most values look like {UNIT_WORDS[best]}{mixed}", other)


def _numbers(cells: Sequence[tuple[int, str]], own: dict[int, Unit]) -> list[float]:
    found = []
    for row, text in cells[:_LOOKED_AT]:
        if row not in own:
            try:
                found.append(parse_length(text, "mm"))
            except InputError:
                continue
    return found


def _usual_shares(
    entry: MeasureEntry, own: dict[int, Unit], cells: Sequence[tuple[int, str]]
) -> dict[Unit, float]:
    numbers = _numbers(cells, own)
    return {
        unit: sum(within(number * float(MM_PER_UNIT[unit]), entry.usual) for number in numbers)
        / max(len(numbers), 1)
        for unit in UNITS
    }


def _rows_in_another(entry: MeasureEntry, best: Unit, cells: Sequence[tuple[int, str]]) -> tuple[int, ...]:
    """Rows whose number is no usual one in the best unit, but is one in another."""
    found = []
    for row, text in cells[:_LOOKED_AT]:
        shares = _usual_shares(entry, {}, [(row, text)])
        if not shares[best] and any(shares.values()):
            found.append(row)
    return tuple(found[:_ROWS_NAMED])
