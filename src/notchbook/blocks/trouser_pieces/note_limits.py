"""From where on the trousers speak of themselves: the table ``note_limits.toml``."""

from collections.abc import Mapping
from functools import cache

from notchbook.blocks._trade_figures import TradeFigure, trade_figures

CHECK = "trousers-draft"
"""The name under which the draft speaks."""


def note_limit(name: str) -> float:
    """The limit of this name, ``section.figure``: mm, or a number of steps."""
    return _figures()[name].value


@cache
def _figures() -> Mapping[str, TradeFigure]:
    return trade_figures("notchbook.blocks.trouser_pieces", "note_limits.toml")
