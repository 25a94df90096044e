"""The armholes of the stretch blocks: upright at the across widths, then a J to the underarm."""

from dataclasses import dataclass

from notchbook.blocks.stretch.armhole_curve import ArmholePlan, draw_armhole
from notchbook.blocks.stretch.armhole_widths import back_width, cut_in_width, front_narrower, reach, slope_of
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.necks import Necks
from notchbook.blocks.stretch.shoulders import Shoulder, draw_shoulder
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point


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
    shoulder = draw_shoulder(given, necks, underarm)
    tip = shoulder.tip
    if tip.y - underarm.y < figure("armhole.least_height"):
        raise DraftRefused("stretch-shoulder-below-underarm", tall=tip.y - underarm.y)
    wide = cut_in_width(given, tip, underarm) if given.is_cut_in else back_width(given, tip, underarm)
    least = figure("armhole.least_room") * underarm.x
    if underarm.x - wide < least or tip.x > underarm.x:
        raise DraftRefused("stretch-shoulder-against-bust", shoulder=given.shoulder, bust=given.bust)
    front = _armhole(
        given, shoulder, "front", _front_width(given, shoulder, underarm, wide), underarm, arrival
    )
    back = _armhole(given, shoulder, "back", wide, underarm, arrival)
    change = 2.0 * wide - given.across_back
    return Armholes(front, back, _upright(front), _upright(back), shoulder, change)


def _armhole(
    given: TorsoGiven, shoulder: Shoulder, which: str, width: float, underarm: Point, arrival: float
) -> Path:
    """One of both, upright so wide (mm) from the center."""
    tip, slope = shoulder.front.end, given.front_slope
    if which == "back":
        tip, slope = shoulder.back.end, given.back_slope
    word = "cut_in" if given.is_cut_in else which
    upright = _level(slope, figure(f"armhole.{word}_level"), tip, underarm, width)
    across = Point(width, underarm.y + upright * (tip.y - underarm.y))
    bottom = figure(f"armhole.{word}_bottom") + _fuller(underarm.x - width, tip.y - underarm.y)
    return draw_armhole(ArmholePlan(tip, slope, across, underarm, arrival, bottom))


def _front_width(given: TorsoGiven, shoulder: Shoulder, underarm: Point, wide: float) -> float:
    """How far from the center the front is upright, mm: farther in than the back, as far as its shoulder
    reaches."""
    tip = shoulder.front.end
    level = figure(f"armhole.{'cut_in' if given.is_cut_in else 'front'}_level")
    inmost = tip.x - reach(given.front_slope, (1.0 - level) * (tip.y - underarm.y))
    return max(wide - front_narrower(given), min(inmost, wide))


def _upright(armhole: Path) -> Point:
    """Where an armhole is upright: there its upper part meets the J."""
    return armhole.segments[-1].start


def _level(slope: float, usual: float, tip: Point, underarm: Point, width: float) -> float:
    """Where over its height an armhole is upright: lower where the shoulder point lies far out, so that its
    upper part bends evenly; higher where it is wide, so that its J has the height for its width."""
    tall = tip.y - underarm.y
    even = 1.0 - max(tip.x - width, 0.0) / (figure("armhole.even_bend") * slope_of(slope)) / tall
    level = min(usual, max(even, usual - figure("armhole.most_level_lowering")))
    wide = figure("armhole.least_hook") * (underarm.x - width) / tall
    return max(level, min(wide, figure("armhole.most_level")))


def _fuller(room: float, tall: float) -> float:
    """How much longer a narrow armhole stays square to the side seam: it is no shelf, and the sleeve lies on
    it."""
    narrow, wide = figure("armhole.narrow"), figure("armhole.no_longer_narrow")
    return figure("armhole.fuller_narrow") * min(max((wide - room / tall) / (wide - narrow), 0.0), 1.0)
