"""Bodies of the upper blocks that come from tables: sizes of published tables, and bodies at the edges.

Files in tests/reference/bodice; what a table does not give is filled as it says.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools")]

from make_upper_bodies import CHEST_LESS_THAN_BACK, FOUR_KEYS, UPPER_KEYS
from notchbook.body import Measure, MeasureSet
from notchbook.body.charts import read_chart
from notchbook.body.estimating import with_estimates
from notchbook.body.population import population

FOLDER = ROOT / "tests" / "reference" / "bodice"


@dataclass(frozen=True)
class TableBody:
    """One size of a table, or one body at the edge; ``label`` tells it from the others of its table."""

    table: str
    label: str
    measures: MeasureSet

    @property
    def name(self) -> str:
        """Table and size in one line."""
        return f"{self.table} {self.label}".strip()


def table_bodies() -> Iterator[TableBody]:
    """Every size of every table, filled."""
    for table, fill, size in bare_sizes():
        filled = from_proportions(size) if fill == "proportions" else from_population(size)
        yield TableBody(table, size.name.removeprefix(f"{table} "), filled)


def bare_sizes() -> Iterator[tuple[str, str, MeasureSet]]:
    """Every size of every table with what the table gives and a height: (table, how it is filled, size)."""
    for table in _read("tables.toml")["table"]:
        chart = read_chart((FOLDER / table["file"]).resolve())
        for size in chart.sizes:
            bare = replace(size, kind="body", label_size="", name=f"{chart.name} {size.label_size}")
            if not bare.has("height"):
                bare = bare.with_value("height", Measure(float(table["height"]), "chart"))
            yield chart.name, table["fill"], bare


def extreme_bodies() -> Iterator[TableBody]:
    """The bodies at the edges."""
    for body in _read("extremes.toml")["body"]:
        yield TableBody("", body["name"], filled_from_four(body["name"], body["given"]))


def filled_from_four(name: str, given: Mapping[str, float]) -> MeasureSet:
    """A woman of whom height, bust, waist and hip were taken and some more that agree with nothing: the
    estimates rest on the four alone, so that what was taken beside them stays as far out as it is."""
    four = MeasureSet.from_mm(name, {key: given[key] for key in FOUR_KEYS}, population="women")
    filled = from_population(four)
    for key, value in given.items():
        filled = filled.with_value(key, float(value))
    return filled


def from_population(measures: MeasureSet, keys: tuple[str, ...] = UPPER_KEYS) -> MeasureSet:
    """The set with estimates for these measures; men's across chest from the across back."""
    if measures.population is None:
        raise ValueError(f"{measures.name} names no population")
    known = population(measures.population).keys
    filled = with_estimates(measures, tuple(key for key in keys if key in known and not measures.has(key)))
    back = filled.find("across_back")
    if filled.population == "men" and back is not None:
        filled = filled.with_value("across_chest", replace(back, value=back.value - CHEST_LESS_THAN_BACK))
    return filled


def from_proportions(measures: MeasureSet, lines: Path = FOLDER / "children.toml") -> MeasureSet:
    """A child's set with what a file of straight lines assumes where the table gives nothing; such values
    count as read in a chart."""
    height, bust = measures.value("height"), measures.value("bust_girth")
    for key, line in tomllib.loads(lines.read_text(encoding="utf-8")).items():
        if not measures.has(key):
            value = line["constant"] + line["height"] * height + line["bust"] * bust
            measures = measures.with_value(key, Measure(value, "chart"))
    return measures


def _read(file: str) -> dict[str, Any]:
    return tomllib.loads((FOLDER / file).read_text(encoding="utf-8"))
