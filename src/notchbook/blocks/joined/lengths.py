"""Where the hem of a torso or dress lies: by a word of the trade or a length of its own."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from notchbook.blocks._trade_figures import TradeFigure, trade_figures
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
    return _table()[f"{group}.{word}"].value


@cache
def _table() -> Mapping[str, TradeFigure]:
    return trade_figures("notchbook.blocks.joined", "lengths.toml")
