"""How far the dart point stays short of the bust point: by the cup, from the table ``cups.toml``."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Any, Literal

from notchbook.blocks._trade_figures import trade_table

CupFrom = Literal["under_bust", "upper_bust", "unknown"]
"""What the cup was told from."""


@dataclass(frozen=True, slots=True)
class PointDistance:
    """How far the point is drawn back, mm, what told it, and the difference of girths behind it, mm."""

    short_by: float
    told_from: CupFrom
    difference: float | None = None


def point_distance(bust: float, under_bust: float | None, upper_bust: float | None) -> PointDistance:
    """From the bust girth less the under-bust girth, else less the upper bust girth, else the usual; mm."""
    if under_bust is not None:
        return PointDistance(_read("under_bust", bust - under_bust), "under_bust", bust - under_bust)
    if upper_bust is not None:
        return PointDistance(_read("upper_bust", bust - upper_bust), "upper_bust", bust - upper_bust)
    return PointDistance(float(_table()["unknown"]["value"]), "unknown")


def _read(rows_of: str, difference: float) -> float:
    """The value at a difference, in proportion between the rows, mm."""
    rows = [(float(row["difference"]), float(row["value"])) for row in _table()[rows_of]]
    if difference <= rows[0][0]:
        return rows[0][1]
    for (low, at_low), (high, at_high) in pairwise(rows):
        if difference <= high:
            return at_low + (at_high - at_low) * (difference - low) / (high - low)
    return rows[-1][1]


@cache
def _table() -> Mapping[str, Any]:
    return trade_table("notchbook.blocks.bodice_pieces", "cups.toml")
