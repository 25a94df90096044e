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


def turned(
    bust_point: Point,
    underarm: Point,
    wanted_y: float,
    upper_width: float | None,
    most_narrowed: float | None = None,
) -> Turned:
    """The bust dart; an angle below 4 degrees is left out.

    ``upper_width``, where the upper bust was measured, is what is left of half of it for the front, mm.
    The wider the dart, the narrower the front under the arm: so the upper bust is second evidence for
    the angle. Its own angle is weighed with 0.3 against that of the lengths (errors of about 6 and 4
    degrees) and may turn the dart by 4.3 degrees at most; it makes it narrower by no more than
    ``most_narrowed`` degrees, where that is said, and never takes it away where the lengths ask for one.
    DraftRefused ``bodice-front-too-long`` above 50 degrees.
    """
    raw = raw_angle(bust_point, underarm, wanted_y)
    by_upper = 0.0
    if upper_width is not None:
        by_upper = _by_upper(raw, width_angle(bust_point, underarm, upper_width), most_narrowed)
        raw += by_upper
    if raw > proportion("bust.most_dart"):
        raise DraftRefused(
            "bodice-front-too-long", rise=wanted_y - bust_point.y, reach=underarm.x - bust_point.x
        )
    angle = raw if raw >= proportion("bust.least_dart") else 0.0
    return Turned(angle, raw, by_upper, underarm.rotated(angle, bust_point))


def _by_upper(raw: float, other: float, most_narrowed: float | None) -> float:
    """By how much the upper bust, which asks for the angle ``other``, turns the dart of the lengths, degrees.

    Alone it is too weak a witness to leave out a dart: that would lose the bust without a word of the tape.
    """
    most, least = proportion("bust.most_upper_turn"), proportion("bust.least_dart")
    narrowed = most if most_narrowed is None else min(most_narrowed, most)
    turn = min(max(proportion("bust.upper_weight") * (other - raw), -narrowed), most)
    if raw + turn < least <= raw:
        return max(turn, min(proportion("bust.least_kept_dart") - raw, 0.0))
    return turn
