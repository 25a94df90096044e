"""How much a cloth lets itself be eased into the armhole, from the table ``fabrics.toml``."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Literal

from notchbook.blocks._trade_figures import trade_table
from notchbook.recipe import UsualEase
from notchbook.recipe.usual_ease import Grade

Fabric = Literal["knit", "shirting", "leather_or_coated", "light_woven", "wool_dress", "tailored_jacket"]
"""The cloths of the table."""


@dataclass(frozen=True, slots=True)
class FabricRow:
    """One cloth: the usual range of cap ease and what is drafted, mm of the whole cap."""

    least: float
    most: float
    drafted: float
    words: str
    source: str
    grade: Grade


@cache
def fabric_rows() -> Mapping[str, FabricRow]:
    """Every cloth by its word."""
    table = trade_table("notchbook.blocks.sleeve_pieces", "fabrics.toml")
    return MappingProxyType({name: FabricRow(**row) for name, row in table.items()})


def fabric_choices() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The words of the cloths, and each with its range as it is asked for."""
    rows = fabric_rows()
    said = tuple(f"{row.words}: {row.least:g} to {row.most:g} mm of cap ease" for row in rows.values())
    return tuple(rows), said


def cap_eases() -> tuple[UsualEase, ...]:
    """The table as the step states it; the cloth stands where other blocks have their silhouette."""
    return tuple(
        UsualEase(
            silhouette=name,
            parameter="cap_ease",
            of=f"cap, {row.words}",
            drafted=row.drafted,
            least=row.least,
            most=row.most,
            source=row.source,
            grade=row.grade,
        )
        for name, row in fabric_rows().items()
    )
