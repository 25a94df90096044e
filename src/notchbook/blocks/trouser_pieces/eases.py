"""The eases of trousers by silhouette and wearer, from the table ``eases.toml``."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, Literal

from notchbook.blocks._trade_figures import trade_table
from notchbook.blocks.lower_measures.limits import SITTING_LONGER
from notchbook.recipe import UsualEase
from notchbook.recipe.usual_ease import Grade

Silhouette = Literal["fitted", "straight", "wide", "shorts", "culottes"]
"""How the leg falls."""

Wearer = Literal["women", "men", "children"]
"""Whom the eases are for."""

_EVERYBODY = "everybody"
_FROM_STANDING = f" (sitting); from the standing rise {SITTING_LONGER:.0f} mm more"


def ease_row(wearer: Wearer, silhouette: Silhouette, of: str) -> UsualEase:
    """One ease of the table: ``of`` is waist, hip, thigh, crotch, sitting_rise or standing_rise."""
    rows = _rows()
    return rows.get((wearer, silhouette, of)) or rows["", silhouette, of]


def usual_eases() -> tuple[UsualEase, ...]:
    """The whole table, as the step states it."""
    return tuple(_rows().values())


@cache
def _rows() -> Mapping[tuple[str, str, str], UsualEase]:
    table = trade_table("notchbook.blocks.trouser_pieces", "eases.toml")
    return {
        (row.wearer, row.silhouette, row.parameter.removesuffix("_ease")): row
        for wearer, silhouettes in table.items()
        for silhouette, rows in silhouettes.items()
        for row in _rows_of("" if wearer == _EVERYBODY else wearer, silhouette, rows)
    }


def _rows_of(wearer: str, silhouette: str, rows: Mapping[str, Any]) -> Iterator[UsualEase]:
    for of, row in rows.items():
        yield _row(wearer, silhouette, of, row)
        if of == "sitting_rise":
            yield _row(wearer, silhouette, "standing_rise", _standing(row))


def _standing(row: Mapping[str, Any]) -> dict[str, Any]:
    """The ease from the standing rise that comes to the same crotch level: by what that is shorter."""
    more = {name: row[name] + SITTING_LONGER for name in ("value", "least", "most")}
    return {**row, **more, "source": row["source"] + _FROM_STANDING}


def _row(wearer: str, silhouette: str, of: str, row: Mapping[str, Any]) -> UsualEase:
    grade: Grade = row["grade"]
    return UsualEase(
        silhouette=silhouette,
        parameter=f"{of}_ease",
        of=of.replace("_", " "),
        drafted=float(row["value"]),
        least=float(row["least"]),
        most=float(row["most"]),
        source=row["source"],
        grade=grade,
        wearer=wearer,
    )
