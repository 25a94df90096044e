"""Bodies of the lower and the stretch blocks that come from tables: sizes of published tables, and edges.

The tables are those of the upper blocks (tests/reference/bodice); what they lack is filled as they say, for
children from tests/reference/trousers/children.toml. The edges stand in tests/reference/trousers.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tools")]

from make_lower_bodies import LOWER_KEYS, STRETCH_KEYS
from make_upper_bodies import FOUR_KEYS
from notchbook.body import Measure, MeasureSet
from upper_tables import TableBody, bare_sizes, from_population, from_proportions

FOLDER = ROOT / "tests" / "reference" / "trousers"


def lower_tables(keys: tuple[str, ...] = LOWER_KEYS) -> Iterator[TableBody]:
    """Every size of every table, filled with these measures."""
    for table, fill, size in bare_sizes():
        if fill == "population":
            filled = from_population(size, keys)
        else:
            filled = from_proportions(size, FOLDER / "children.toml")
            filled = from_proportions(filled) if keys == STRETCH_KEYS else filled
        yield TableBody(table, size.name.removeprefix(f"{table} "), filled)


def lower_extremes(keys: tuple[str, ...] = LOWER_KEYS) -> Iterator[TableBody]:
    """The bodies at the edges, women; the estimates rest on height, bust, waist and hip alone."""
    for body in tomllib.loads((FOLDER / "extremes.toml").read_text(encoding="utf-8"))["body"]:
        given = {key: float(value) for key, value in body["given"].items()}
        four = MeasureSet.from_mm(body["name"], {key: given[key] for key in FOUR_KEYS}, population="women")
        filled = from_population(four, keys)
        for key, value in given.items():
            filled = filled.with_value(key, value)
        for key, more in body.get("off", {}).items():
            if filled.has(key):
                filled = filled.with_value(key, Measure(filled.value(key) + more, "measured"))
        yield TableBody("", body["name"], filled)
