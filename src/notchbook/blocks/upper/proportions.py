"""The figures of the trade that the bodice rests on, read once from ``proportions.toml``."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any


@dataclass(frozen=True, slots=True)
class Proportion:
    """One figure: its value and unit ("mm", "deg", "" for a share), where it comes from, how sure."""

    value: float
    unit: str
    source: str
    grade: str


@cache
def proportion_table() -> Mapping[str, Proportion]:
    """Every figure by its name, ``section.figure``."""
    text = files("notchbook.blocks.upper").joinpath("proportions.toml").read_text(encoding="utf-8")
    sections: dict[str, dict[str, Any]] = tomllib.loads(text)
    rows = {
        f"{section}.{name}": Proportion(**row)
        for section, figures in sections.items()
        for name, row in figures.items()
    }
    return MappingProxyType(rows)


def proportion(name: str) -> float:
    """The value of one figure, in its unit."""
    return proportion_table()[name].value
