"""How the stretch blocks are cut where somebody chooses by a word, from the table ``cuts.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures


@cache
def cut_rows() -> Mapping[str, TradeFigure]:
    """Every figure by its name, ``section.figure``: mm, or a share of what the table names."""
    return trade_figures("notchbook.blocks.stretch_pieces", "cuts.toml")


def cut(name: str) -> float:
    """One figure."""
    return cut_rows()[name].value
