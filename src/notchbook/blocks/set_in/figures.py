"""The figures of the trade that the sleeve rests on, read once from ``figures.toml``."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure: its value and unit ("mm", "deg", "" for a share), where it comes from, how sure."""

    value: float
    unit: str
    source: str
    grade: str


@cache
def figure_table() -> Mapping[str, Figure]:
    """Every figure by its name, ``section.figure``."""
    text = files("notchbook.blocks.set_in").joinpath("figures.toml").read_text(encoding="utf-8")
    sections: dict[str, dict[str, Any]] = tomllib.loads(text)
    rows = {
        f"{section}.{name}": Figure(**row)
        for section, figures in sections.items()
        for name, row in figures.items()
    }
    return MappingProxyType(rows)


def figure(name: str) -> float:
    """The value of one figure, in its unit."""
    return figure_table()[name].value
