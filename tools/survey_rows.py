"""The rows of the survey in data/survey/ansur, and the measures of the book that stand in them."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache

from house import ROOT
from notchbook.body import MeasureSet, PopulationName
from notchbook.body.population import definitions

SOURCE = ROOT / "data" / "survey" / "ansur"

HELD_BACK_EVERY = 10
"""Rows whose number can be divided by this are held back: a fifth of the rows at hand (these are even)."""

Row = Mapping[str, float]


@cache
def rows(name: PopulationName) -> tuple[Row, ...]:
    """Every row at hand, mm (weightkg: kg x 10), with ``row``, its number in the original file."""
    with (SOURCE / f"{name}.csv").open(encoding="utf-8", newline="") as stream:
        return tuple({column: float(text) for column, text in row.items()} for row in csv.DictReader(stream))


def build_rows(name: PopulationName) -> tuple[Row, ...]:
    """The rows that the shipped population is made from."""
    return tuple(row for row in rows(name) if row["row"] % HELD_BACK_EVERY)


def held_back_rows(name: PopulationName) -> tuple[Row, ...]:
    """The rows that it is judged on, and never made or tuned from."""
    return tuple(row for row in rows(name) if not row["row"] % HELD_BACK_EVERY)


def survey_values(row: Row, name: PopulationName) -> dict[str, float]:
    """All measures of the book that the survey took, as it took them (mm, kg), the waist at the navel."""
    return {
        key: sum(weight * row[column] for column, weight in one.columns.items())
        for key, one in definitions(name).items()
        if one.in_survey
    }


def survey_set(row: Row, name: PopulationName, keys: tuple[str, ...] = ()) -> MeasureSet:
    """The row as a set of measures taken as the survey took them; only these keys, if any are named."""
    values = survey_values(row, name)
    wanted = {key: values[key] for key in keys} if keys else values
    bare = MeasureSet.from_mm(f"{name[0]}{row['row']:.0f}", wanted)
    return MeasureSet(bare.name, bare.values, population=name, waist_level="navel", taken_as="survey")
