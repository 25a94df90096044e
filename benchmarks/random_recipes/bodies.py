"""Bodies for recipes at random: rows of the survey and sizes of published tables, women and men."""

from __future__ import annotations

from functools import cache
from random import Random
from typing import Final, get_args

from lower_tables import lower_tables
from make_bodies import Group
from make_lower_bodies import STRETCH_KEYS, stretch_body
from notchbook.body import MeasureSet
from survey_rows import rows

WOMEN: Final = 2 / 3
"""Share of recipes that are written for women."""

OF_TABLES: Final = 0.5
"""Share of recipes that are written on a size of a table; the others on a surveyed body."""


def some_group(chance: Random) -> Group:
    """Women or men."""
    women, men = get_args(Group)
    found: Group = women if chance.random() < WOMEN else men
    return found


def base_body(chance: Random, group: Group) -> MeasureSet:
    """The body on which a recipe is written."""
    return chance.choice(_tables(group)) if chance.random() < OF_TABLES else surveyed(chance, group)


def surveyed(chance: Random, group: Group) -> MeasureSet:
    """A body of the survey with every measure that a block reads."""
    row = chance.choice(rows(group))
    return stretch_body(row, "natural", "measured", group).measures


@cache
def _tables(group: Group) -> tuple[MeasureSet, ...]:
    return tuple(one.measures for one in lower_tables(STRETCH_KEYS) if one.measures.population == group)
