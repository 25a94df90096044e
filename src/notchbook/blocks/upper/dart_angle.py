"""The bust dart's angle from the lengths, and where the front's underarm comes to lie.

The front's armhole is as tall as the back's, less a share (the balance) by which a front without bust
is shorter. The outer part of the front is turned about the bust point until that holds: the angle that
this takes is the bust dart's.
"""

from dataclasses import dataclass
from math import acos, asin, atan2, degrees, hypot

from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class Turned:
    """The dart's angle (degrees), what the measures ask for (``raw``; below 0: a front too short), by how
    much the upper bust turned it (``by_upper``), and the front's underarm in the upper frame."""

    angle: float
    raw: float
    by_upper: float
    underarm: Point


def raw_angle(bust_point: Point, underarm: Point, wanted_y: float) -> float:
    """The turn about the bust point that brings the underarm to a height, degrees.

    DraftRefused ``bodice-front-too-long`` when no turn does.
    """
    beside, above = underarm.x - bust_point.x, underarm.y - bust_point.y
    reach, rise = hypot(beside, above), wanted_y - bust_point.y
    if beside <= 0.0 or abs(rise) >= reach:
        raise DraftRefused("bodice-front-too-long", rise=rise, reach=max(beside, 0.0))
    return degrees(asin(rise / reach) - atan2(above, beside))


def width_angle(bust_point: Point, underarm: Point, width: float) -> float:
    """The turn about the bust point that brings the underarm to this distance from the center, degrees.

    Where the front cannot become so wide, the turn that makes it widest.
    """
    beside, above = underarm.x - bust_point.x, underarm.y - bust_point.y
    share = (width - bust_point.x) / hypot(beside, above)
    return degrees(acos(min(max(share, -1.0), 1.0)) - atan2(above, beside))


def turned(bust_point: Point, underarm: Point, wanted_y: float, upper_width: float | None) -> Turned:
    """The bust dart; an angle below 4 degrees is left out.

    ``upper_width``, where the upper bust was measured, is what is left of half of it for the front, mm.
    The wider the dart, the narrower the front under the arm: so the upper bust is second evidence for
    the angle. Its own angle is weighed with 0.3 against that of the lengths (errors of about 6 and 4
    degrees) and may turn the dart by 4.3 degrees at most. DraftRefused ``bodice-front-too-long`` above 50
    degrees.
    """
    raw = raw_angle(bust_point, underarm, wanted_y)
    by_upper = 0.0
    if upper_width is not None:
        most = proportion("bust.most_upper_turn")
        other = width_angle(bust_point, underarm, upper_width)
        by_upper = min(max(proportion("bust.upper_weight") * (other - raw), -most), most)
        raw += by_upper
    if raw > proportion("bust.most_dart"):
        raise DraftRefused(
            "bodice-front-too-long", rise=wanted_y - bust_point.y, reach=underarm.x - bust_point.x
        )
    angle = raw if raw >= proportion("bust.least_dart") else 0.0
    return Turned(angle, raw, by_upper, underarm.rotated(angle, bust_point))
