"""How much smaller than the body a garment of this cloth is, from ``reductions.toml`` and ``shares.toml``."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, Literal

import numpy as np

from notchbook.blocks._trade_figures import trade_table
from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.recipe.usual_ease import Grade

Use = Literal["t_shirt", "fitted", "leggings", "dance", "swimsuit"]
"""What a stretch garment is for: it says how close it lies."""

Direction = Literal["width", "length"]

OVER_THE_BODY = 1.10
"""A pattern must stretch to so much of the body's girth that the cloth still gives. Common practice."""


@dataclass(frozen=True, slots=True)
class ReductionRow:
    """One use and direction: ``points`` of stretch and reduction, or an ``ease`` in mm of a whole girth;
    ``least`` and ``most`` are usual, in the row's own unit."""

    least: float
    most: float
    source: str
    grade: Grade
    points: tuple[tuple[float, float], ...] = ()
    ease: float | None = None

    def at(self, stretch: float) -> float:
        """The reduction for a cloth that stretches so much, a share of the body's measure."""
        stretches, reductions = zip(*self.points, strict=True)
        return float(np.interp(stretch, stretches, reductions))


@dataclass(frozen=True, slots=True)
class ShareRow:
    """Which share of a use's reduction a place takes, and how many times a loose garment's ease."""

    value: float
    loose: float
    direction: Direction
    source: str
    grade: Grade


@dataclass(frozen=True, slots=True)
class Reduced:
    """A measure and what the pattern has instead, mm. ``wished`` is what the use alone would give; it differs
    where the cloth does not stretch enough for that. ``usual`` is the range of ease that is usual for the
    use, None where the measure has no reduction of its own."""

    body: float
    pattern: float
    wished: float
    usual: tuple[float, float] | None = None

    @property
    def ease(self) -> float:
        """Pattern less body, mm: below 0 where the garment is smaller."""
        return self.pattern - self.body

    @property
    def is_held_back(self) -> bool:
        """Whether the cloth did not let the pattern be as small as the use asks."""
        return self.pattern > self.wished


@cache
def reduction_rows() -> Mapping[tuple[str, Direction], ReductionRow]:
    """Every row by use and direction."""
    table = trade_table("notchbook.blocks.stretch_fabric", "reductions.toml")
    return MappingProxyType(
        {(use, way): _row(row) for use, rows in table.items() for way, row in rows.items()}
    )


def _row(row: Mapping[str, Any]) -> ReductionRow:
    points = tuple((float(at), float(by)) for at, by in row.get("points", ()))
    return ReductionRow(**{**row, "points": points})


@cache
def share_rows() -> Mapping[str, ShareRow]:
    """Every place by its word."""
    table = trade_table("notchbook.blocks.stretch_fabric", "shares.toml")
    return MappingProxyType({place: ShareRow(**row) for place, row in table.items()})


def reduced(body: float, use: Use, place: str, cloth: Cloth, size: float = 1.0) -> Reduced:
    """A measure of the body as a garment of this use has it on the pattern, mm.

    ``size`` scales the ease of a loose garment for a small body.

    A girth is never smaller than what the cloth still stretches over the body by a tenth more.
    """
    share = share_rows()[place]
    row = reduction_rows()[use, share.direction]
    if row.ease is not None:
        wished = body + size * row.ease * share.loose
    else:
        stretch = cloth.across if share.direction == "width" else (cloth.along or 0.0)
        wished = body * (1.0 - row.at(stretch) * share.value)
    least = least_girth(body, cloth) if share.direction == "width" else wished
    return Reduced(body, max(wished, least), wished, _usual(body, row, share))


def _usual(body: float, row: ReductionRow, share: ShareRow) -> tuple[float, float] | None:
    """The usual ease of a place that takes the whole of its row, mm."""
    if row.ease is not None:
        return (row.least, row.most) if share.loose == 1.0 else None
    return (-row.most * body, -row.least * body) if share.value == 1.0 and row.most > 0.0 else None


def least_girth(body: float, cloth: Cloth) -> float:
    """The shortest girth on the pattern that the cloth stretches over the body and a tenth more, mm."""
    return OVER_THE_BODY * body / (1.0 + cloth.across)
