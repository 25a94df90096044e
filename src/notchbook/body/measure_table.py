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


@dataclass(frozen=True, slots=True)
class MeasureEntry:
    """One measure: what it is and what values it takes.

    ``usual`` is the usual range of adults and ``possible`` the range outside which a value is refused;
    both in mm, degrees or kg as ``kind`` says, both ends included. ``iso`` is a clause of
    ISO 8559-1:2017, second-hand; ``iso_doubtful`` marks numbers that nothing confirms.
    ``waist_shift`` is the change of the value for each mm that the waist is tied lower.
    """

    key: str
    label: str
    definition: str
    kind: MeasureKind
    sided: bool
    usual: tuple[float, float]
    usual_from: str
    usual_grade: str
    possible: tuple[float, float]
    iso: str | None = None
    iso_doubtful: bool = False
    waist_shift: int = 0

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

    def usual_at(self, waist_drop: float) -> tuple[float, float]:
        """The usual range where the waist lies so many mm below the natural one."""
        shift = self.waist_shift * waist_drop
        return (max(self.usual[0] + shift, 0.0), max(self.usual[1] + shift, 0.0))

    @property
    def short_name(self) -> str:
        """The name in the trade's notation: ``bust``, ``waist``, ``hip``, otherwise the key."""
        return _SHORT_NAMES.get(self.key, self.key)


@cache
def measure_table() -> Mapping[str, MeasureEntry]:
    """Every measure by key, in the order in which a body is measured."""
    text = files("notchbook.body").joinpath("measures.toml").read_text(encoding="utf-8")
    return MappingProxyType({key: _entry(key, words) for key, words in tomllib.loads(text).items()})


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


def _entry(key: str, words: dict[str, Any]) -> MeasureEntry:
    ranges = {name: (float(words[name][0]), float(words[name][1])) for name in ("usual", "possible")}
    return MeasureEntry(key=key, **{**words, **ranges})
