"""Drafting one of the wearer's sides so that it meets the other at the center front.

The neck pit belongs to both sides; where shoulders or necks differ it lies at the mean of the two. So does
what the front is longer over the bust: by as much as both side seams ease in, and the rest at its lower end.
The other centers are drafted from measures of the center, which are one for both.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from notchbook.blocks.stretch.front_length import shared
from notchbook.blocks.stretch.given import BodysuitGiven, TorsoGiven
from notchbook.blocks.stretch.shapes import BodysuitHalf, TorsoHalf
from notchbook.recipe import StepContext
from notchbook.units import TOLERANCES

GivenT = TypeVar("GivenT", TorsoGiven, BodysuitGiven)
HalfT = TypeVar("HalfT", TorsoHalf, BodysuitHalf)


def draft_to_meet(
    context: StepContext, own: GivenT, read_other: Callable[[], GivenT], draw: Callable[[GivenT], HalfT]
) -> HalfT:
    """This side, its front as long as the other's; ``read_other`` is asked only where they differ."""
    half = draw(own)
    if context.sides_are_alike():
        return half
    other = draw(read_other())
    apart = half.front.neck.start.y - other.front.neck.start.y
    longer, lower = shared(half.front_length, other.front_length)
    has_both = (half.front_length.longer, half.front_length.lower) == (longer, lower)
    if abs(apart) < TOLERANCES.join and has_both:
        return half
    return draw(_longer(_lowered(own, apart / 2.0), longer, lower))


def _longer(given: GivenT, longer: float, lower: float) -> GivenT:
    if isinstance(given, BodysuitGiven):
        return replace(given, torso=_longer(given.torso, longer, lower))
    return replace(given, front_longer=longer, front_lower=lower)


def _lowered(given: GivenT, by: float) -> GivenT:
    if isinstance(given, BodysuitGiven):
        return replace(given, torso=_lowered(given.torso, by))
    return replace(given, front_neck_lower=given.front_neck_lower + by)
