"""What the bodice takes where nothing was measured or chosen, from the table ``substitutes.toml``."""

from collections.abc import Mapping
from functools import cache
from typing import Any

from notchbook.blocks._trade_figures import trade_table
from notchbook.blocks.bodice_pieces.eases import Wearer


def usual_slope(wearer: Wearer) -> tuple[float, float]:
    """The shoulder slope between the bony points and its ±, degrees."""
    row = _table()["shoulder_slope"][wearer]
    return float(row["value"]), float(row["plus_minus"])


def usual_back_shoulder(wearer: Wearer, how: str) -> float:
    """The intake of the back shoulder dart or the ease of the back shoulder, mm."""
    key = f"children_{how}" if wearer == "children" else how
    return float(_table()["back_shoulder"][key]["value"])


@cache
def _table() -> Mapping[str, Any]:
    return trade_table("notchbook.blocks.bodice_pieces", "substitutes.toml")
