"""The figures of the trade that the stretch blocks rest on, read once from ``figures.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures


@cache
def stretch_figure_table() -> Mapping[str, TradeFigure]:
    """Every figure by its name, ``section.figure``."""
    return trade_figures("notchbook.blocks.stretch", "figures.toml")


def figure(name: str) -> float:
    """The value of one figure, in its unit."""
    return stretch_figure_table()[name].value
