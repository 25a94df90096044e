"""How far from the center the armholes of a stretch block are upright, between bust and shoulder."""

from math import radians, tan

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
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
    usual = (1.0 - figure("armhole.least_room_share")) * underarm_x
    held = (1.0 - figure("armhole.most_across_narrowing")) * given.across_back / 2.0
    farthest = (1.0 - figure("armhole.least_flagged_share")) * underarm_x
    inmost = (1.0 - figure("armhole.most_room_share")) * underarm_x
    return inmost, max(usual, min(held, farthest))


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
