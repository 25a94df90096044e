"""The levels of a dress form, and what laying wadding on them does to a girth.

Steiner's formula: an even layer of thickness t on a convex section adds 2 * pi * t to its girth, whatever the
shape; on the front or back half alone, whose outline turns by half a turn, pi * t. A tape bridges hollows, so
to the tape every section is convex.
"""

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Final

MAIN_GIRTHS: Final = ("bust_girth", "waist_girth", "hip_girth")
"""A form on which one of these is not known cannot be held to do (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class PaddingLevel:
    """One level: the girth there, the measure of its front half, and the share of padding in front."""

    key: str
    front_share: float
    grade: str
    front_arc: str | None = None


@cache
def padding_levels() -> Mapping[str, PaddingLevel]:
    """Every level by the key of its girth, from the neck down."""
    text = files("notchbook.body.charts.padding").joinpath("levels.toml").read_text(encoding="utf-8")
    found = {key: PaddingLevel(key, **words) for key, words in tomllib.loads(text).items()}
    return MappingProxyType(found)


def girth_added(front: float, back: float) -> float:
    """mm by which a girth grows under padding of these thicknesses, mm, on the front and back half."""
    return math.pi * (front + back)


def thickness_for(added: float) -> float:
    """The thickness in mm that adds so many mm to one half of a section."""
    return added / math.pi
