"""What each measure is: the table of ``measures.toml``, read once."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, Final, Literal

from notchbook.errors import InputError
from notchbook.units import quoted, suggestion

MeasureKind = Literal["girth", "length", "angle", "weight"]

_SHORT_NAMES: Final = {"bust_girth": "bust", "waist_girth": "waist", "hip_girth": "hip"}
_RANGES: Final = ("usual", "possible")


@dataclass(frozen=True, slots=True)
class MeasureEntry:
    """One measure: what it is and what values it takes.

    ``usual`` is the usual range of adults and ``possible`` the range outside which a value is refused;
    both in mm, degrees or kg as ``kind`` says, both ends included. ``iso`` is a clause of
    ISO 8559-1:2017, second-hand; ``iso_doubtful`` marks numbers that nothing confirms.
    ``waist_shift`` is the change of the value for each mm that the waist is tied lower.

    ``number`` is its place in the order in which a body is measured, from 1. ``level`` is the level of the
    body on which the tape lies or the length starts, ``landmarks`` the places to find first (both explained
    in :mod:`notchbook.body.landmark_table`), ``how`` how it is taken. Two readings may lie ``repeat`` apart
    (mm, degrees or kg); ``twice`` marks measures to be read twice, for nothing else betrays a slip in them.
    ``label_men`` is the trade's word for it on a man, empty where it is the same; ``asked_of_men`` and
    ``on_form`` say whether a man is asked for it and a dress form has it.
    """

    key: str
    number: int
    label: str
    definition: str
    level: str
    landmarks: tuple[str, ...]
    how: str
    repeat: float
    kind: MeasureKind
    sided: bool
    usual: tuple[float, float]
    usual_from: str
    usual_grade: str
    possible: tuple[float, float]
    iso: str | None = None
    iso_doubtful: bool = False
    waist_shift: int = 0
    twice: bool = False
    label_men: str = ""
    asked_of_men: bool = True
    on_form: bool = True

    @property
    def is_length(self) -> bool:
        """Whether the value is in mm (girths are lengths too)."""
        return self.kind in ("girth", "length")

    @property
    def unit(self) -> Literal["mm", "deg", "kg"]:
        """The unit of the value inside."""
        if self.is_length:
            return "mm"
        return "deg" if self.kind == "angle" else "kg"

    @property
    def short_how(self) -> str:
        """The first sentence of ``how``: the way of the tape alone."""
        return self.how.split(". ", 1)[0].removesuffix(".") + "."

    def label_for(self, population: str | None) -> str:
        """What it is called on a body of this population (``women``, ``men``, or None)."""
        return self.label_men if population == "men" and self.label_men else self.label

    def is_asked(self, kind: str, population: str | None) -> bool:
        """Whether it is asked for and estimated on such a thing (``body``, ``form``, ``chart``) at all."""
        return (self.on_form or kind != "form") and (self.asked_of_men or population != "men")

    def usual_at(self, waist_drop: float) -> tuple[float, float]:
        """The usual range where the waist lies so many mm below the natural one."""
        shift = self.waist_shift * waist_drop
        return (max(self.usual[0] + shift, 0.0), max(self.usual[1] + shift, 0.0))

    def short_name_for(self, population: str | None) -> str:
        """The short name in words, for this population: ``chest`` or ``seat`` of men, without ``girth``."""
        if population == "men" and self.label_men:
            return self.label_men.lower().removesuffix(" girth")
        return self.short_name.replace("_", " ")

    @property
    def short_name(self) -> str:
        """The name in the trade's notation: ``bust``, ``waist``, ``hip``, otherwise the key."""
        return _SHORT_NAMES.get(self.key, self.key)


@cache
def measure_table() -> Mapping[str, MeasureEntry]:
    """Every measure by key, in the order in which a body is measured."""
    text = files("notchbook.body").joinpath("measures.toml").read_text(encoding="utf-8")
    entries = enumerate(tomllib.loads(text).items(), start=1)
    return MappingProxyType({key: _entry(number, key, words) for number, (key, words) in entries})


@cache
def notation_names() -> Mapping[str, str]:
    """Short name -> key of every measure that an amount may read (lengths and girths only)."""
    return MappingProxyType(
        {entry.short_name: entry.key for entry in measure_table().values() if entry.is_length}
    )


def measure_entry(key: str) -> MeasureEntry:
    """The entry with this key; an unknown one is refused (``measure-unknown``) with the nearest."""
    found = measure_table().get(key)
    if found is None:
        raise InputError(
            "measure-unknown", key=quoted(key), suggestion=suggestion(key, measure_table()), where=""
        )
    return found


def _entry(number: int, key: str, words: dict[str, Any]) -> MeasureEntry:
    exact: dict[str, Any] = {name: (float(words[name][0]), float(words[name][1])) for name in _RANGES}
    exact["landmarks"] = tuple(words["landmarks"])
    exact["repeat"] = float(words["repeat"])
    return MeasureEntry(key=key, number=number, **{**words, **exact})
