"""Where the hem of a torso or dress lies: by a word of the trade or a length of its own."""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

from notchbook.recipe import StepContext

SkirtLength = Literal["thigh", "knee", "mid_calf", "ankle"]
"""The words for a hem below the hip."""


@dataclass(frozen=True, slots=True)
class HemLength:
    """From the waist to the hem at the center back, mm; whether the way to the knee was taken from the
    height because nobody measured it."""

    length: float
    is_assumed: bool = False


def hem_length(context: StepContext, word: SkirtLength, own_length: str | None) -> HemLength:
    """The length of its own where one is given, else by the word.

    InputError ``amount-not-positive`` for a length of its own that is none.
    """
    if own_length is not None:
        return HemLength(context.positive(own_length, "own_length", "both"))
    share = _value("share_of_knee_depth", word)
    knee = context.find("knee_depth", "both")
    if knee is not None:
        return HemLength(share * knee)
    height = context.find("height", "both")
    if height is not None:
        return HemLength(share * _value("substitute", "knee_depth_of_height") * height, is_assumed=True)
    back = context.measure("back_waist_length", "both")
    return HemLength(share * _value("substitute", "knee_depth_of_back_length") * back, is_assumed=True)


def _value(group: str, word: str) -> float:
    return _table()[group, word]


@cache
def _table() -> dict[tuple[str, str], float]:
    path = files("notchbook.blocks.joined") / "lengths.toml"
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return {(group, word): float(row["value"]) for group, rows in table.items() for word, row in rows.items()}
