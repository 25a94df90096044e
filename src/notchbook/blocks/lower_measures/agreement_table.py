"""The table of what must agree: ``agreements.toml``, read once."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from notchbook.blocks._trade_figures import trade_table


@dataclass(frozen=True, slots=True)
class Limit:
    """Between which values a figure may lie: a share, or mm."""

    least: float
    most: float

    def __contains__(self, value: float) -> bool:
        return self.least <= value <= self.most

    def nearest(self, value: float) -> float:
        """The value within that is nearest."""
        return min(max(value, self.least), self.most)


def asks_from(of: str) -> float:
    """How many standard deviations off a measure is asked about; ``of`` is crotch, thigh or stop."""
    return float(_table()["asks"][of]["value"])


def other_waist(of: str) -> float:
    """A figure of how another waist is weighed; ``of`` is spread, likelier or slip."""
    return float(_table()["other_waist"][of]["value"])


def limit(name: str) -> Limit:
    """The limit of this name."""
    row = _table()["limits"][name]
    return Limit(float(row["least"]), float(row["most"]))


@cache
def _table() -> Mapping[str, Any]:
    return trade_table("notchbook.blocks.lower_measures", "agreements.toml")
