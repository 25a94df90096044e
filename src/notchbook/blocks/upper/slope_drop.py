"""The armhole follows the shoulder: square shoulders lift it, sloping ones lower it."""

from math import radians, sin


def slope_drop(shoulder: float, slope: float, usual_slope: float) -> float:
    """By how much a scye depth that was not measured lies deeper at this slope than at the usual one, mm.

    As much as the shoulder point does: negative at square shoulders. A measured depth already holds it.
    Source: fitting practice, tip and armhole by the same amount (a patternmaker's review).
    """
    return shoulder * (sin(radians(slope)) - sin(radians(usual_slope)))
