"""The European classes of body measures (EN 13402-3): which class and which letter a girth has."""

import tomllib
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, Final

from notchbook.body.measure_set import PopulationName

_MM: Final = 10.0
_ABOUT_LETTERS: Final = ("source", "grade")


@dataclass(frozen=True, slots=True)
class SizeClass:
    """One class: what it is called by (``center``, or a letter), and from where to where it goes, mm.

    The lower limit belongs to the class, the upper one to the next. ``center`` of a letter is the middle.
    ``source`` and ``grade`` say where the limits come from and how sure they are.
    """

    label: str
    center: float
    low: float
    high: float
    source: str
    grade: str


def size_classes(population: PopulationName, key: str) -> tuple[SizeClass, ...]:
    """The classes of bust (chest), waist, hip or height, smallest first; none where there are none."""
    table = _tables()[population].get(key)
    if table is None:
        return ()
    centers, limits = table["centers"], table["limits"]
    return tuple(
        SizeClass(str(center), center * _MM, low * _MM, high * _MM, table["source"], table["grade"])
        for center, low, high in zip(centers, limits, limits[1:], strict=False)
    )


def letter_codes(population: PopulationName) -> tuple[SizeClass, ...]:
    """The letter codes by bust (women) or chest girth (men), smallest first."""
    table = dict(_tables()[population]["letters"])
    source, grade = (str(table.pop(word)) for word in _ABOUT_LETTERS)
    limits = [low * _MM for low in table.values()]
    labels = list(table)[:-1]
    return tuple(
        SizeClass(label, (low + high) / 2, low, high, source, grade)
        for label, low, high in zip(labels, limits, limits[1:], strict=False)
    )


def size_class(population: PopulationName, key: str, value: float) -> SizeClass | None:
    """The class of a value in mm, or None where it lies beyond the table or the table has no such measure."""
    return _class_of(size_classes(population, key), value)


def letter_code(population: PopulationName, bust: float) -> SizeClass | None:
    """The letter code of a bust or chest girth in mm, or None beyond the table."""
    return _class_of(letter_codes(population), bust)


def _class_of(classes: Sequence[SizeClass], value: float) -> SizeClass | None:
    at = bisect_right([one.low for one in classes], value) - 1
    return classes[at] if at >= 0 and value < classes[at].high else None


@cache
def _tables() -> dict[str, Any]:
    text = files("notchbook.body.charts").joinpath("en13402.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)
