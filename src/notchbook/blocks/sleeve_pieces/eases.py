"""Eases, hems and lengths of the sleeve, from the table ``eases.toml``."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from notchbook.blocks.sleeve_pieces.fabrics import cap_eases
from notchbook.recipe import UsualEase
from notchbook.recipe.usual_ease import Grade


@dataclass(frozen=True, slots=True)
class SleeveRow:
    """One figure: mm, or a share of the arm length; its usual range where one is known."""

    value: float
    source: str
    grade: Grade
    least: float | None = None
    most: float | None = None

    @property
    def usual(self) -> tuple[float, float] | None:
        """From least to most, mm."""
        return None if self.least is None or self.most is None else (self.least, self.most)


@cache
def sleeve_rows() -> Mapping[str, SleeveRow]:
    """Every figure by its name, ``section.figure``."""
    text = (files("notchbook.blocks.sleeve_pieces") / "eases.toml").read_text(encoding="utf-8")
    table: dict[str, dict[str, dict[str, Any]]] = tomllib.loads(text)
    return MappingProxyType(
        {
            f"{section}.{name}": SleeveRow(**row)
            for section, rows in table.items()
            for name, row in rows.items()
        }
    )


def usual_eases() -> tuple[UsualEase, ...]:
    """What the step states: the arm's eases, then the cap's by cloth."""
    rows = sleeve_rows()
    arm = tuple(
        UsualEase(
            silhouette="",
            parameter=f"{of}_ease",
            of=of.replace("_", " "),
            drafted=rows[f"ease.{of}"].value,
            least=rows[f"ease.{of}"].least,
            most=rows[f"ease.{of}"].most,
            source=rows[f"ease.{of}"].source,
            grade=rows[f"ease.{of}"].grade,
        )
        for of in ("upper_arm", "wrist")
    )
    return (*arm, *cap_eases())
