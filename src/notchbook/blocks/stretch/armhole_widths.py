"""How far from the center the armholes of a stretch block are upright, between bust and shoulder."""

from math import pi, radians, tan

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import StretchSleeveGiven, TorsoGiven
from notchbook.geometry import Point

_LEAST_SLOPE = 1.0
"""Degrees; on a level shoulder the armhole starts nearly upright."""


def slope_of(shoulder_slope: float) -> float:
    """How far a start square to a shoulder of this slope (degrees) runs inward over each mm downward."""
    return tan(radians(max(shoulder_slope, _LEAST_SLOPE)))


def reach(shoulder_slope: float, upper_tall: float) -> float:
    """How far out of the upright the shoulder point may lie, ``upper_tall`` mm above it, for an armhole that
    starts square to a shoulder of this slope and never bends back, mm."""
    return figure("armhole.tip_slack") * upper_tall * slope_of(shoulder_slope)


def limits(given: TorsoGiven, underarm_x: float) -> tuple[float, float]:
    """How near to the center and how far from it the back armhole may be upright, mm.

    Very stretchy cloth narrows the bust much; the across back follows it only so far, and the armhole is
    hollowed less instead.
    """
    usual = underarm_x - least_room(given, underarm_x)
    held = (1.0 - figure("armhole.most_across_narrowing")) * given.across_back / 2.0
    farthest = (1.0 - figure("armhole.least_flagged_share")) * underarm_x
    inmost = (1.0 - most_room_share(given)) * underarm_x
    return inmost, max(usual, min(held, farthest))


def most_room_share(given: TorsoGiven) -> float:
    """The most way from the upright of the back armhole to the underarm, over a quarter of the bust."""
    return figure("armhole.close_room_share" if given.is_close else "armhole.most_room_share")


def least_room(given: TorsoGiven, underarm_x: float) -> float:
    """The least way from the upright of the back armhole to the underarm, mm: front and back together hold
    the arm as its sleeve has it; a full arm is no reason for more than the bust leaves usually."""
    usual = figure("armhole.least_room_share") * underarm_x
    if given.sleeve is None:
        return usual
    return min(usual, max(_arm_room(given.sleeve, given), figure("armhole.least_flagged_share") * underarm_x))


def _arm_room(sleeve: StretchSleeveGiven, given: TorsoGiven) -> float:
    """The back's part of the diameter of the arm, mm; the front has more, as it is hollowed farther in."""
    return (sleeve.biceps / pi - front_narrower(given)) / 2.0


def suited_bust(given: TorsoGiven) -> float:
    """The bust nearest to the one that is given under which the across back keeps its width: with room for
    the arm and no pouch, mm. ``bust_limits`` do not count."""
    half = given.across_back / 2.0
    quarter = half / (1.0 - figure("armhole.least_room_share"))
    if given.sleeve is not None:
        narrow = half / (1.0 - figure("armhole.least_flagged_share"))
        quarter = min(quarter, max(half + _arm_room(given.sleeve, given), narrow))
    widest = half / (1.0 - most_room_share(given))
    return 4.0 * min(max(given.bust / 4.0, quarter), widest)


def back_width(given: TorsoGiven, tip: Point, underarm: Point) -> float:
    """Half the across back in use, mm: as given, within what the bust leaves and the shoulder point reaches.
    Where the bust is so wide that its armhole would be a shelf, the across back takes a part of that."""
    upper_tall = (1.0 - figure("armhole.back_level")) * (tip.y - underarm.y)
    inmost, widest = limits(given, underarm.x)
    wanted = max(given.across_back / 2.0, inmost, tip.x - reach(given.back_slope, upper_tall))
    return min(wanted, tip.x - figure("armhole.tip_out"), widest)


def cut_in_width(given: TorsoGiven, tip: Point, underarm: Point) -> float:
    """The same where the shoulder is cut in: under its end, or a little farther out for a wide bust."""
    upper_tall = (1.0 - figure("armhole.cut_in_level")) * (tip.y - underarm.y)
    wanted = (1.0 - figure("armhole.cut_in_room")) * underarm.x
    farthest = tip.x + figure("armhole.cut_in_lean") * upper_tall
    under = min(tip.x - figure("armhole.tip_out"), limits(given, underarm.x)[1])
    return max(under, min(wanted, farthest))


def front_narrower(given: TorsoGiven) -> float:
    """By how much half the front is upright farther in than half the back, mm: without a dart no more than
    leaves both armholes nearly as long."""
    if given.across_chest is None:
        return figure("armhole.front_narrower")
    wanted = (given.across_back - given.across_chest) / 2.0
    least, most = figure("armhole.least_front_narrower"), figure("armhole.most_front_narrower")
    return min(max(wanted, least), most)
