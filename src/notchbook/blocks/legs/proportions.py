"""The figures of the trade that trousers rest on, read once from ``proportions.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures


@cache
def proportion_table() -> Mapping[str, TradeFigure]:
    """Every figure by its name, ``section.figure``."""
    return trade_figures("notchbook.blocks.legs", "proportions.toml")


@cache
def proportion(name: str) -> float:
    """The value of one figure, in its unit."""
    return proportion_table()[name].value


def of_wearer(name: str, wearer: str | None) -> float:
    """The value of a figure that women and men have each their own of."""
    own = f"{name}_{wearer}"
    return proportion(own if own in proportion_table() else name)
