"""Figures of the trade from a table in TOML: each row with its unit, its source and its grade."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from notchbook.errors import HouseFault
from notchbook.recipe.usual_ease import Grade


@dataclass(frozen=True, slots=True)
class TradeFigure:
    """One figure: its value and unit ("mm", "deg", "" for a share), where it comes from, how sure; its usual
    range where one is known."""

    value: float
    unit: str
    source: str
    grade: Grade
    least: float | None = None
    most: float | None = None

    @property
    def usual(self) -> tuple[float, float] | None:
        """From least to most, in its unit."""
        return None if self.least is None or self.most is None else (self.least, self.most)


def trade_figures(package: str, file: str) -> Mapping[str, TradeFigure]:
    """Every figure of the table in this package by its name, ``section.figure``.

    HouseFault ``trade-figure-unsound`` for a figure without a source or with a grade that there is not.
    """
    return figures_from_text(files(package).joinpath(file).read_text(encoding="utf-8"))


def figures_from_text(text: str) -> Mapping[str, TradeFigure]:
    """The figures of a table in TOML; refuses as ``trade_figures`` does."""
    sections: dict[str, dict[str, dict[str, Any]]] = tomllib.loads(text)
    return MappingProxyType(
        {
            f"{section}.{name}": _sound(f"{section}.{name}", row)
            for section, rows in sections.items()
            for name, row in rows.items()
        }
    )


def _sound(name: str, row: dict[str, Any]) -> TradeFigure:
    if not row.get("source"):
        raise HouseFault("trade-figure-unsound", name=name, what="source")
    if row.get("grade") not in get_args(Grade):
        raise HouseFault("trade-figure-unsound", name=name, what="grade")
    return TradeFigure(**row)
