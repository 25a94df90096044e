"""Drafting one of the wearer's sides so that it meets the other at the front neck.

The neck pit belongs to both sides; where shoulders or necks differ it lies at the mean of the two. The other
centers are drafted from measures of the center, which are one for both.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from notchbook.blocks.stretch.given import BodysuitGiven, TorsoGiven
from notchbook.blocks.stretch.shapes import BodysuitHalf, TorsoHalf
from notchbook.recipe import StepContext
from notchbook.units import TOLERANCES

GivenT = TypeVar("GivenT", TorsoGiven, BodysuitGiven)
HalfT = TypeVar("HalfT", TorsoHalf, BodysuitHalf)


def draft_to_meet(
    context: StepContext, own: GivenT, read_other: Callable[[], GivenT], draw: Callable[[GivenT], HalfT]
) -> HalfT:
    """This side, its neck pit where the other side's is; ``read_other`` is asked only where they differ."""
    half = draw(own)
    if context.sides_are_alike():
        return half
    apart = half.front.neck.start.y - draw(read_other()).front.neck.start.y
    if abs(apart) < TOLERANCES.join:
        return half
    return draw(_lowered(own, apart / 2.0))


def _lowered(given: GivenT, by: float) -> GivenT:
    if isinstance(given, BodysuitGiven):
        return replace(given, torso=_lowered(given.torso, by))
    return replace(given, front_neck_lower=given.front_neck_lower + by)
