"""Figures of fullness: how much is gathered, how tiers grow, how bias hangs. Each with source and grade."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from notchbook.recipe.usual_ease import Grade

Fullness = Literal["light", "standard", "full"]
Cloth = Literal["medium", "heavy", "sheer"]


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure of the trade: its usual value, from least to most, where it comes from and how sure."""

    value: float
    least: float
    most: float
    source: str
    grade: Grade


_RATIOS = "articles on gathering: 1.5 light, 2 standard, 2.5 to 3 full; heavy cloth 1.5 to 2, sheer to 3"

GATHERS: Mapping[Fullness, Figure] = MappingProxyType(
    {
        "light": Figure(1.5, 1.25, 1.75, _RATIOS, "common practice"),
        "standard": Figure(2.0, 1.75, 2.25, _RATIOS, "common practice"),
        "full": Figure(2.5, 2.25, 3.0, _RATIOS, "common practice"),
    }
)
"""Length of the cloth over the length that it is gathered to."""

GATHERED_CLOTH: Mapping[Cloth, Figure] = MappingProxyType(
    {
        "medium": Figure(2.0, 1.5, 2.5, _RATIOS, "common practice"),
        "heavy": Figure(1.5, 1.5, 2.0, _RATIOS, "common practice"),
        "sheer": Figure(3.0, 2.0, 3.0, _RATIOS, "common practice"),
    }
)
"""The same by cloth: what draws in flat, and what looks thin below it."""

TIERS = Figure(1.5, 1.5, 2.0, "each tier 1.5 to 2 times the one above: 72, 108, 162 cm", "common practice")
"""Length of a tier over the one above it."""

GODET_SPREAD = Figure(
    45.0, 15.0, 90.0, "a godet is a sector of a circle; a quarter circle is full", "common practice"
)
"""Degrees of the sector."""

BIAS_NARROWS = Figure(0.02, 0.0, 0.04, "bias hangs out: it grows longer and narrower", "own judgment")
"""Share by which a piece on the bias narrows while it hangs; told, and taken off only when asked."""

BIAS_HANG_OUT = Figure(24.0, 24.0, 48.0, "hang for a day before the hem is leveled", "common practice")
"""Hours that a piece on the bias hangs before its hem is leveled."""
