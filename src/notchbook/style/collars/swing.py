"""How far a collar is swung at the shoulder, so that its outer edge lies on back and shoulder."""

import math

from notchbook.style.collars.curves import bend_for_rise
from notchbook.style.collars.figures import OUTER_EDGE_SHORT
from notchbook.style.collars.laid_neck import LaidNeck, parallel_length

_USUAL = 12.0
"""Degrees that a collar is swung where the garment cannot be laid out (common practice, no source)."""


def swing_of(back: float, width: float, lies: tuple[LaidNeck | None, float], asked: float | None) -> float:
    """The swing in degrees: that with which the center back swings by ``asked`` mm; None: so far that the
    outer edge is as long as the back of the garment where it lies, less half of what a collar gives.

    ``back``: the back neck; ``lies``: the laid neck and how far from it the outer edge comes to lie, mm.
    """
    laid, at = lies
    if asked is not None:
        return bend_for_rise(back, 0.0, asked)
    if laid is None:
        return _USUAL
    lacking = behind_there(laid, at) - OUTER_EDGE_SHORT.value / 2.0 - back
    return math.degrees(max(0.0, lacking) / width)


def behind_there(laid: LaidNeck, at: float) -> float:
    """How long the back of the garment is at a distance from its neck, center to shoulder, mm."""
    behind = laid.path.between(0.0, min(laid.back, laid.path.length))
    return parallel_length(behind, at)
