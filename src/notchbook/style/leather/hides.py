"""Hides and how large a panel they give, with source and grade."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from notchbook.recipe.usual_ease import Grade

HideName = Literal["lamb", "goat", "pig", "calf", "cow_side", "coated_cloth"]


@dataclass(frozen=True, slots=True)
class Hide:
    """What a hide is called on paper, and the largest panel without flank and flaws: along the backbone and
    across it, mm; 0 for what comes by the roll."""

    cloth: str
    length: float
    width: float
    source: str
    grade: Grade


HIDES: Final[Mapping[HideName, Hide]] = MappingProxyType(
    {
        "lamb": Hide("lamb leather", 700.0, 500.0, "skins of 5 to 7 sq ft, 0.5 to 0.65 m2", "memory"),
        "goat": Hide("goat leather", 650.0, 450.0, "skins of 4 to 6 sq ft, 0.4 to 0.55 m2", "memory"),
        "pig": Hide("pig leather", 950.0, 600.0, "skins of 10 to 14 sq ft, 0.9 to 1.3 m2", "memory"),
        "calf": Hide("calf leather", 1100.0, 700.0, "skins of 10 to 18 sq ft, 0.9 to 1.7 m2", "memory"),
        "cow_side": Hide("cow leather", 1900.0, 800.0, "sides of 18 to 26 sq ft, 1.7 to 2.4 m2", "memory"),
        "coated_cloth": Hide("coated cloth", 0.0, 0.0, "by the roll, 1.37 to 1.5 m wide", "common practice"),
    }
)
"""By the word of the step. Hides differ one by one: measure those that are bought."""
