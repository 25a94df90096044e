"""The eases of the bodice by silhouette and wearer, from the table ``eases.toml``."""

from dataclasses import dataclass
from functools import cache
from typing import Literal

from notchbook.blocks._trade_figures import trade_table
from notchbook.recipe import UsualEase
from notchbook.recipe.usual_ease import Grade

Silhouette = Literal["close", "fitted", "semi_fitted", "loose"]
"""How close the bodice lies: the words of the trade, from near to far."""

Wearer = Literal["women", "men", "children"]
"""Whom the eases are for: ``women`` stands for a bodice with bust shaping."""

EASES = ("bust", "waist", "hip", "across_back", "across_chest", "scye", "neck")
"""What has an ease of its own."""


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One ease, mm of the whole girth or width, and its usual range."""

    value: float
    least: float
    most: float
    source: str
    grade: Grade

    @property
    def usual(self) -> tuple[float, float]:
        """From least to most, mm."""
        return self.least, self.most


def ease_row(wearer: Wearer, silhouette: Silhouette, of: str) -> EaseRow:
    """The row of one ease."""
    return _rows()[wearer, silhouette, of]


def usual_eases() -> tuple[UsualEase, ...]:
    """The whole table, as the step states it."""
    return tuple(
        UsualEase(
            silhouette=silhouette,
            parameter=f"{of}_ease",
            of=of.replace("_", " "),
            drafted=row.value,
            least=row.least,
            most=row.most,
            source=row.source,
            grade=row.grade,
            wearer=wearer,
        )
        for (wearer, silhouette, of), row in _rows().items()
    )


@cache
def _rows() -> dict[tuple[str, str, str], EaseRow]:
    table = trade_table("notchbook.blocks.bodice_pieces", "eases.toml")
    return {
        (wearer, silhouette, of): EaseRow(
            float(row["value"]), float(row["least"]), float(row["most"]), row["source"], row["grade"]
        )
        for wearer, silhouettes in table.items()
        for silhouette, rows in silhouettes.items()
        for of, row in rows.items()
    }
