"""What a stretch band is made of: how much shorter than its opening it is, and how far it stretches."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from notchbook.recipe.usual_ease import Grade

BandMaterial = Literal["rib", "jersey", "self", "elastic"]


@dataclass(frozen=True, slots=True)
class BandRow:
    """One material: the band's length over that of its opening, usual and from least to most; ``stretch`` is
    what it gives along the band as a share (None: it must be tested); ``layers`` as sewn; ``words`` what
    it is called."""

    share: float
    least: float
    most: float
    stretch: float | None
    layers: int
    words: str
    source: str
    grade: Grade


BAND_ROWS: Mapping[BandMaterial, BandRow] = MappingProxyType(
    {
        "rib": BandRow(
            share=0.85,
            least=0.80,
            most=0.90,
            stretch=1.00,
            layers=2,
            words="rib",
            source="neck rib 0.80 to 0.90 of the seam; rib stretches to twice its length and more",
            grade="memory",
        ),
        "jersey": BandRow(
            share=0.85,
            least=0.85,
            most=0.92,
            stretch=None,
            layers=2,
            words="jersey",
            source="neck band of jersey 0.85 of the seam",
            grade="memory",
        ),
        "self": BandRow(
            share=0.90,
            least=0.85,
            most=0.95,
            stretch=None,
            layers=2,
            words="garment's own cloth",
            source="the garment's own cloth draws in less than a rib",
            grade="own judgment",
        ),
        "elastic": BandRow(
            share=0.85,
            least=0.75,
            most=0.95,
            stretch=1.00,
            layers=1,
            words="elastic",
            source="elastic 0.85 to 0.95 of the body at the waist, 0.75 to 0.85 in swimwear",
            grade="common practice",
        ),
    }
)
"""The table of bands by material."""
