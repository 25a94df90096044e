"""Figures of fullness: how much is gathered, how tiers grow, how bias hangs. Each with source and grade."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from notchbook.recipe.style_figure import RangedFigure

Fullness = Literal["light", "standard", "full"]
Cloth = Literal["medium", "heavy", "sheer"]

_OVER = "length of the cloth over the length that it is gathered to"

_RATIOS = "articles on gathering: 1.5 light, 2 standard, 2.5 to 3 full; heavy cloth 1.5 to 2, sheer to 3"

GATHERS: Mapping[Fullness, RangedFigure] = MappingProxyType(
    {
        "light": RangedFigure(1.5, _OVER, _RATIOS, "common practice", 1.25, 1.75),
        "standard": RangedFigure(2.0, _OVER, _RATIOS, "common practice", 1.75, 2.25),
        "full": RangedFigure(2.5, _OVER, _RATIOS, "common practice", 2.25, 3.0),
    }
)
"""By how full it is to be."""

GATHERED_CLOTH: Mapping[Cloth, RangedFigure] = MappingProxyType(
    {
        "medium": RangedFigure(2.0, _OVER, _RATIOS, "common practice", 1.5, 2.5),
        "heavy": RangedFigure(1.5, _OVER, _RATIOS, "common practice", 1.5, 2.0),
        "sheer": RangedFigure(3.0, _OVER, _RATIOS, "common practice", 2.0, 3.0),
    }
)
"""The same by cloth: what draws in flat, and what looks thin below it."""

TIERS = RangedFigure(
    1.5,
    "length of a tier over the one above it",
    "each tier 1.5 to 2 times the one above: 72, 108, 162 cm",
    "common practice",
    1.5,
    2.0,
)

GODET_SPREAD = RangedFigure(
    45.0,
    "degrees of the sector",
    "a godet is a sector of a circle; a quarter circle is full",
    "common practice",
    15.0,
    90.0,
)

BIAS_NARROWS = RangedFigure(
    0.02,
    "share by which a piece on the bias narrows while it hangs; told, and taken off only when asked",
    "bias hangs out: it grows longer and narrower",
    "own judgment",
    0.0,
    0.04,
)

BIAS_HANG_OUT = RangedFigure(
    24.0,
    "hours that a piece on the bias hangs before its hem is leveled",
    "hang for a day before the hem is leveled",
    "common practice",
    24.0,
    48.0,
)
