"""How the sleeve narrows from the biceps to the hem: both underarm seams lean in alike."""

import math

from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven

_ROUNDS = 8
_STRAIGHT = 1e-9
"""Radians; a seam that leans less is upright."""


def taper_tilt(given: SleeveGiven, biceps: float, height: float) -> float:
    """How far each underarm seam leans in, radians; held between the limits of the table.

    The hem is an arc that stands square to both seams, so its chord is a little shorter than its girth.
    Where the elbow asks for more width than the straight way to the hem leaves, the seams lean in less
    and the hem comes out wider.
    """
    down = max(given.down(height), figure("below.least_seam"))
    tilt = math.atan((biceps - given.hem) / 2.0 / down)
    for _ in range(_ROUNDS):
        chord = given.hem * _chord_over_arc(tilt)
        tilt = math.atan((biceps - chord) / 2.0 / (down + hem_rise(given.hem, tilt)))
    if given.elbow is not None and (level := elbow_depth(given, height)) is not None:
        tilt = min(tilt, math.atan((biceps - given.elbow) / 2.0 / level))
    least, most = math.radians(figure("below.least_tilt")), math.radians(figure("below.most_tilt"))
    return min(max(tilt, least), most)


def elbow_depth(given: SleeveGiven, height: float) -> float | None:
    """How far the elbow lies below the biceps line, mm; None where the sleeve ends above it."""
    if given.elbow_length is None:
        return None
    reach = figure("below.bend_reach")
    depth = given.elbow_length - height
    return depth if reach < depth < given.down(height) - reach else None


def hem_rise(hem: float, tilt: float) -> float:
    """How much higher the middle of the hem lies than its ends, mm (negative when it flares)."""
    return 0.0 if abs(tilt) < _STRAIGHT else hem / (2.0 * tilt) * (1.0 - math.cos(tilt))


def _chord_over_arc(tilt: float) -> float:
    return 1.0 if abs(tilt) < _STRAIGHT else math.sin(tilt) / tilt
