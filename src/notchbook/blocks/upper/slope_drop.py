"""The armhole follows the shoulder: square shoulders lift it, sloping ones lower it."""

from math import asin, degrees, radians, sin

from notchbook.errors import DraftRefused


def slope_drop(shoulder: float, slope: float, usual_slope: float) -> float:
    """By how much a scye depth that was not measured lies deeper at this slope than at the usual one, mm.

    As much as the shoulder point does: negative at square shoulders. A measured depth already holds it.
    Source: fitting practice, tip and armhole by the same amount (a patternmaker's review).
    """
    return shoulder * (sin(radians(slope)) - sin(radians(usual_slope)))


def raised_slope(shoulder: float, slope: float, raised: float) -> float:
    """The slope (degrees) of a shoulder seam of this length whose outer end lies so many mm higher.

    DraftRefused ``bodice-shoulder-raised`` where it would rise from the neck outward.
    """
    if raised == 0.0:
        return slope
    drop = sin(radians(slope)) - raised / shoulder
    if drop < 0.0:
        raise DraftRefused("bodice-shoulder-raised", raised=raised, most=shoulder * sin(radians(slope)))
    return degrees(asin(min(drop, 1.0)))
