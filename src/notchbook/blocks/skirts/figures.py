"""The figures of the trade that skirts share, read once from ``figures.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures
from notchbook.recipe.usual_ease import UsualEase


@cache
def skirt_figures() -> Mapping[str, TradeFigure]:
    """Every figure by its name, ``section.figure``."""
    return trade_figures("notchbook.blocks.skirts", "figures.toml")


def skirt_figure(name: str) -> float:
    """The value of one figure, in its unit."""
    return skirt_figures()[name].value


def usual_skirt_ease(of: str) -> tuple[float, float] | None:
    """From least to most, mm, of the ``waist`` or the ``hip``."""
    return skirt_figures()[f"ease.{of}"].usual


def usual_eases() -> tuple[UsualEase, ...]:
    """The ease table of a skirt, as its step states it."""
    return tuple(_stated(of, skirt_figures()[f"ease.{of}"]) for of in ("waist", "hip"))


def _stated(of: str, row: TradeFigure) -> UsualEase:
    return UsualEase("", f"{of}_ease", of, row.value, row.least, row.most, row.source, row.grade)
