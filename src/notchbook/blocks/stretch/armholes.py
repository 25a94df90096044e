"""Shoulders and armholes of the stretch blocks: the shoulder is narrowed with the bust."""

from dataclasses import dataclass
from math import cos, radians, tan

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.necks import Necks
from notchbook.blocks.upper.across import UpperArmhole
from notchbook.blocks.upper.armhole import Landing, draw_armhole
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, direction

_LEAST_SLOPE = 1.0
"""Degrees; on a level shoulder the armhole starts nearly upright."""


@dataclass(frozen=True, slots=True)
class Shoulder:
    """The shoulder seam in use: ``start`` and ``tip`` on the natural line, and by how much it is drafted
    shorter (longer below 0) than given, mm."""

    start: Point
    tip: Point
    shorter: float

    @property
    def path(self) -> Path:
        """The seam."""
        return Path.line(self.start, self.tip)


@dataclass(frozen=True, slots=True)
class Armholes:
    """Front and back armhole from the shoulder point to the underarm, and where each as drawn is upright.

    ``across_change`` is what was planned: by how much the whole across back is to be wider than given, mm.
    """

    front: Path
    back: Path
    front_across: Point
    back_across: Point
    shoulder: Shoulder
    across_change: float

    @property
    def girth(self) -> float:
        """The whole armhole, mm."""
        return self.front.length + self.back.length


def draw_armholes(given: TorsoGiven, necks: Necks, underarm: Point, arrival: float) -> Armholes:
    """Both armholes to this underarm, where they arrive in the direction ``arrival`` (degrees).

    DraftRefused ``stretch-shoulder-below-underarm``, ``stretch-shoulder-against-bust``,
    ``stretch-strap-narrow``.
    """
    shoulder = _shoulder(given, necks, underarm)
    tall = shoulder.tip.y - underarm.y
    if tall < figure("armhole.least_height"):
        raise DraftRefused("stretch-shoulder-below-underarm", tall=tall)
    if given.is_cut_in:
        levels, bottoms = ("cut_in_level", "cut_in_level"), ("cut_in_bottom", "cut_in_bottom")
        back_width = _cut_in_width(given, shoulder, underarm, tall)
    else:
        levels, bottoms = ("front_level", "back_level"), ("front_bottom", "back_bottom")
        back_width = _back_width(given, shoulder, underarm, tall)
    least = figure("armhole.least_room") * underarm.x
    if underarm.x - back_width < least or shoulder.tip.x > underarm.x:
        raise DraftRefused("stretch-shoulder-against-bust", shoulder=given.shoulder, bust=given.bust)
    inmost = shoulder.tip.x - _reach(given, tall, levels[0])
    front_width = max(back_width - _front_narrower(given), min(inmost, back_width))
    uppers = [
        UpperArmhole(
            shoulder.tip,
            underarm.y + _level(given, figure(f"armhole.{level}"), shoulder.tip, underarm, width) * tall,
            width,
            given.shoulder_slope,
        )
        for level, width in zip(levels, (front_width, back_width), strict=True)
    ]
    paths = [
        draw_armhole(
            upper,
            given.shoulder_slope,
            upper.width,
            Landing(underarm, arrival, figure(f"armhole.{bottom}") - _rounder(upper, underarm)),
        )
        for upper, bottom in zip(uppers, bottoms, strict=True)
    ]
    change = 2.0 * back_width - given.across_back
    return Armholes(paths[0], paths[1], _upright(paths[0]), _upright(paths[1]), shoulder, change)


def _upright(armhole: Path) -> Point:
    """Where an armhole is upright: there its upper half meets the lower one."""
    return armhole.segments[0].end


def _level(given: TorsoGiven, usual: float, tip: Point, underarm: Point, width: float) -> float:
    """Where over its height an armhole is upright: lower where the shoulder point lies far out, so that it
    bends evenly, and where the armhole is wide."""
    tall = tip.y - underarm.y
    aim = figure("armhole.even_bend") * tan(radians(max(given.shoulder_slope, _LEAST_SLOPE)))
    even = 1.0 - max(tip.x - width, 0.0) / aim / tall
    level = min(usual, max(even, usual - figure("armhole.most_level_lowering")))
    lowered = level - _lower(underarm.x - width, tall)
    return max(lowered, min(usual, figure("armhole.least_level")))


def _lower(room: float, tall: float) -> float:
    """How much lower, over its height, an armhole with so much room is upright: its hollow lies low."""
    low, high = figure("armhole.wide_from"), figure("armhole.wide_to")
    return figure("armhole.lower_wide") * min(max((room / tall - low) / (high - low), 0.0), 1.0)


def _rounder(upper: UpperArmhole, underarm: Point) -> float:
    """How much shorter a wide armhole stays square to the side seam, so that it is no box."""
    wide = (underarm.x - upper.width) / (upper.across_y - underarm.y)
    low, high = figure("armhole.rounder_from"), figure("armhole.rounder_to")
    return figure("armhole.most_rounder") * min(max((wide - low) / (high - low), 0.0), 1.0)


def _front_narrower(given: TorsoGiven) -> float:
    """By how much half the front is upright farther in than half the back, mm: without a dart no more than
    leaves both armholes nearly as long."""
    if given.across_chest is None:
        return figure("armhole.front_narrower")
    wanted = (given.across_back - given.across_chest) / 2.0
    least, most = figure("armhole.least_front_narrower"), figure("armhole.most_front_narrower")
    return min(max(wanted, least), most)


def _limits(given: TorsoGiven, underarm: Point) -> tuple[float, float]:
    """How near to the center and how far from it the back armhole may be upright, mm.

    Very stretchy cloth narrows the bust much; the across back follows it only so far, and the armhole is
    hollowed less instead.
    """
    usual = (1.0 - figure("armhole.least_room_share")) * underarm.x
    held = (1.0 - figure("armhole.most_across_narrowing")) * given.across_back / 2.0
    farthest = (1.0 - figure("armhole.least_flagged_share")) * underarm.x
    inmost = (1.0 - figure("armhole.most_room_share")) * underarm.x
    return inmost, max(usual, min(held, farthest))


def _back_width(given: TorsoGiven, shoulder: Shoulder, underarm: Point, tall: float) -> float:
    """Half the across back in use: as given, within what the bust leaves and the shoulder point reaches."""
    inmost = shoulder.tip.x - _reach(given, tall, "back_level")
    outmost = shoulder.tip.x - figure("armhole.tip_out")
    return min(max(given.across_back / 2.0, inmost), outmost, _limits(given, underarm)[1])


def _cut_in_width(given: TorsoGiven, shoulder: Shoulder, underarm: Point, tall: float) -> float:
    """The same where the shoulder is cut in: under its end, or farther out for a wide bust."""
    wanted = (1.0 - figure("armhole.cut_in_room")) * underarm.x
    farthest = shoulder.tip.x + figure("armhole.cut_in_lean") * _upper_tall(tall, "cut_in_level")
    under = min(shoulder.tip.x - figure("armhole.tip_out"), _limits(given, underarm)[1])
    return max(under, min(wanted, farthest))


def _reach(given: TorsoGiven, tall: float, level: str) -> float:
    """How far out of the upright the shoulder point may lie for an armhole that starts square to the
    shoulder and never bends back, mm."""
    slope = tan(radians(max(given.shoulder_slope, _LEAST_SLOPE)))
    return figure("armhole.tip_slack") * _upper_tall(tall, level) * slope


def _upper_tall(tall: float, level: str) -> float:
    """The height of the shoulder point over the level, mm."""
    return (1.0 - figure(f"armhole.{level}")) * tall


def _shoulder(given: TorsoGiven, necks: Necks, underarm: Point) -> Shoulder:
    """The seam whose outer end suits the narrowed bust, cut in or cut to a strap where that is asked."""
    along = direction(-given.shoulder_slope)
    start, edges = given.neck_opened, given.strap_edges
    if edges is not None:
        length, shorter = edges[1], 0.0
    else:
        natural = _natural_length(given, necks, underarm)
        length, shorter = natural - given.shoulder_in, given.shoulder - natural
    if start < 0.0 or length - start < figure("neck.least_strap") or length > _longest(given):
        raise DraftRefused("stretch-strap-narrow", shoulder=given.shoulder, left=length - start)
    return Shoulder(necks.base + along * start, necks.base + along * length, shorter)


def _natural_length(given: TorsoGiven, necks: Necks, underarm: Point) -> float:
    """From the side-neck point to a shoulder point that lies over the room that the bust leaves, mm."""
    slope = radians(given.shoulder_slope)
    tip_y = necks.base.y - given.shoulder * tan(slope) * cos(slope)
    tall = max(tip_y - underarm.y, 1.0)
    reach = _reach(given, tall, "back_level")
    inmost, outmost = _limits(given, underarm)
    wanted = min(max(given.across_back / 2.0, inmost), outmost)
    least = (wanted + figure("armhole.tip_out") - necks.base.x) / cos(slope)
    most = (wanted + reach - necks.base.x) / cos(slope)
    longest = _longest(given)
    shortest = (1.0 - figure("armhole.most_narrowing_share")) * given.shoulder
    return min(max(min(max(given.shoulder, least), longest), shortest), max(most, shortest))


def _longest(given: TorsoGiven) -> float:
    """The longest shoulder seam, mm: so far it may drop over the arm."""
    return given.shoulder + figure("armhole.most_dropping")
