"""The lines of a measure sheet: for each measure its number, name, short way, and the boxes to write in."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from notchbook.body import Measure, MeasureEntry, MeasureSet, PopulationName, Side, measure_table
from notchbook.body.figure import tape_ways
from notchbook.body.quantity_words import ESTIMATE_SIGN, quantity_text
from notchbook.units import LengthStyle

ALIKE = "="
"""Written for the second side when one value stands for both."""


_LEVEL: Final = frozenset({"sitting_rise", "standing_rise"})
"""Lengths down to a level, the chair or the crotch: one box, as they are taken."""

_SIDES: Final[tuple[Side, Side]] = ("left", "right")

_UNIT_WORDS: Final = {"mm": "", "deg": "degrees", "kg": "kg"}
"""What stands in a box whose unit is not the one in the head of the sheet."""


@dataclass(frozen=True, slots=True)
class SheetBox:
    """A box to write in, with the small word under its upper edge and what was taken (may be empty)."""

    caption: str
    value: str = ""


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One measure: its boxes line by line; a measure that is read twice on each side has two lines."""

    key: str
    number: int
    name: str
    how: str
    boxes: tuple[tuple[SheetBox, ...], ...]


def sheet_rows(
    measures: MeasureSet | None,
    style: LengthStyle,
    population: PopulationName | None = None,
    keys: Collection[str] | None = None,
) -> tuple[SheetRow, ...]:
    """Every measure in the order of measuring, or these ``keys`` alone; with the values of a set, or blank.

    Left out is what is not asked of such a body or form, as long as it was not taken. ``population`` gives
    the words.
    """
    kind = "body" if measures is None else measures.kind
    return tuple(
        _row(entry, measures, style, population)
        for entry in measure_table().values()
        if (keys is None or entry.key in keys)
        and (entry.is_asked(kind, population) or _is_held(measures, entry.key))
    )


def _is_held(measures: MeasureSet | None, key: str) -> bool:
    return measures is not None and key in measures.measure_keys()


def paired_keys() -> frozenset[str]:
    """Measures that the body has on its left and on its right, each with a way of its own for the tape.

    The two rises are not among them: both go from the waist to a level that the sides share.
    """
    sided = {key for key, entry in measure_table().items() if entry.sided}
    return frozenset(way.key for way in tape_ways() if way.side in ("left", "right")) & sided - _LEVEL


def _row(
    entry: MeasureEntry, measures: MeasureSet | None, style: LengthStyle, population: PopulationName | None
) -> SheetRow:
    turns = ("", "again") if entry.twice else ("",)
    unit = _UNIT_WORDS[entry.unit]
    if entry.key not in paired_keys():
        texts = _texts(entry, measures, "both", style, len(turns))
        boxes = [[SheetBox(_caption(turn or unit), text) for turn, text in zip(turns, texts, strict=True)]]
    else:
        left, right = (_texts(entry, measures, side, style, len(turns)) for side in _SIDES)
        if right == left:
            right = tuple(ALIKE if text else "" for text in right)
        boxes = [
            [SheetBox(_caption("left", turn or unit), one), SheetBox(_caption("right", turn or unit), other)]
            for turn, one, other in zip(turns, left, right, strict=True)
        ]
    return SheetRow(
        entry.key, entry.number, entry.label_for(population), entry.short_how, tuple(map(tuple, boxes))
    )


def _caption(*words: str) -> str:
    return ", ".join(word for word in words if word)


def _texts(
    entry: MeasureEntry, measures: MeasureSet | None, side: Side, style: LengthStyle, count: int
) -> tuple[str, ...]:
    found = None if measures is None else measures.find(entry.key, side)
    if found is None:
        return ("",) * count
    read = [_text(entry, found, value, style) for value in found.readings or (found.value,)]
    # Readings beyond the boxes share the last one: none is left out.
    texts = [*read[: count - 1], " · ".join(read[count - 1 :])]
    return tuple(texts + [""] * (count - len(texts)))


def _text(entry: MeasureEntry, measure: Measure, value: float, style: LengthStyle) -> str:
    """The value without the unit that stands in the head of the sheet."""
    text = quantity_text(entry, value, style)
    for unit in (" cm", " mm", " kg", "°", '"'):
        text = text.removesuffix(unit)
    return f"{text} {ESTIMATE_SIGN}" if measure.status == "estimated" else text
