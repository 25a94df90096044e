"""Figures of the trade from a table in TOML: each row with its unit, its source and its grade."""

import tomllib
from collections.abc import Iterator, Mapping
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


def trade_table(package: str, file: str) -> Mapping[str, Any]:
    """A table whose rows hold more than one figure, as it stands in TOML.

    A row is a table in which no other lies. HouseFault ``trade-figure-unsound`` as in ``trade_figures``.
    """
    return table_from_text(files(package).joinpath(file).read_text(encoding="utf-8"))


def figures_from_text(text: str) -> Mapping[str, TradeFigure]:
    """The figures of a table in TOML; refuses as ``trade_figures`` does."""
    return MappingProxyType(
        {
            f"{section}.{name}": TradeFigure(**row)
            for section, rows in table_from_text(text).items()
            for name, row in rows.items()
        }
    )


def table_from_text(text: str) -> Mapping[str, Any]:
    """The table in this text; refuses as ``trade_table`` does."""
    table = tomllib.loads(text)
    for name, row in _rows(table):
        _require_sound(name, row)
    return MappingProxyType(table)


def _rows(table: Mapping[str, Any], name: str = "") -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Each row with its name, ``section.row``; of rows in a list the number, from 1."""
    inner = dict(_tables_in(table))
    if not inner:
        yield name, table
    for word, below in inner.items():
        yield from _rows(below, f"{name}.{word}" if name else word)


def _tables_in(table: Mapping[str, Any]) -> Iterator[tuple[str, Mapping[str, Any]]]:
    for word, value in table.items():
        if isinstance(value, dict):
            yield word, value
        elif isinstance(value, list) and all(isinstance(one, dict) for one in value):
            yield from ((f"{word}.{number}", one) for number, one in enumerate(value, start=1))


def _require_sound(name: str, row: Mapping[str, Any]) -> None:
    if not row.get("source"):
        raise HouseFault("trade-figure-unsound", name=name, what="source")
    if row.get("grade") not in get_args(Grade):
        raise HouseFault("trade-figure-unsound", name=name, what="grade")
