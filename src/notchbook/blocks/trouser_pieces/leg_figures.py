"""Widths and lengths of the legs, and substitutes for missing measures, from the table ``legs.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures
from notchbook.blocks.trouser_pieces.eases import Silhouette
from notchbook.blocks.trouser_pieces.parameters import LegLength

SILHOUETTE_LENGTHS: Mapping[Silhouette, LegLength] = {
    "fitted": "ankle",
    "straight": "full",
    "wide": "full",
    "shorts": "short",
    "culottes": "calf",
}
"""The length that a silhouette has unless another is asked for."""


def find_figure(section: str, name: str) -> float | None:
    """A figure of the table, mm or a share; None where it has no such row."""
    row = _figures().get(f"{section}.{name}")
    return None if row is None else row.value


def leg_figure(section: str, name: str) -> float:
    """A figure of the table that must be there."""
    return _figures()[f"{section}.{name}"].value


@cache
def _figures() -> Mapping[str, TradeFigure]:
    return trade_figures("notchbook.blocks.trouser_pieces", "legs.toml")
