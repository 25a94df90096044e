"""Eases, hems and lengths of the sleeve, from the table ``eases.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures
from notchbook.blocks.sleeve_pieces.fabrics import cap_eases
from notchbook.recipe import UsualEase


@cache
def sleeve_rows() -> Mapping[str, TradeFigure]:
    """Every figure by its name, ``section.figure``: mm, or a share of the arm length."""
    return trade_figures("notchbook.blocks.sleeve_pieces", "eases.toml")


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
