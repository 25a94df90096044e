"""One armhole of a stretch block: from the shoulder to where it is upright, then one J to the underarm."""

from dataclasses import dataclass
from math import atan2, degrees, sqrt

from notchbook.blocks.stretch.armhole_widths import slope_of
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.round_curve import round_curve
from notchbook.geometry import Cubic, Path, Point, curve_between, direction


@dataclass(frozen=True, slots=True)
class ArmholePlan:
    """What one armhole is drawn from.

    ``tip`` is the shoulder point, ``slope`` that of the shoulder seam (degrees), ``across`` the place where
    the armhole is upright, ``arrival`` the direction (degrees) in which it reaches the ``underarm``, square
    to the side seam. ``bottom`` is for how long it stays square to it, over its side of the triangle that
    the directions at both ends of the J make.
    """

    tip: Point
    slope: float
    across: Point
    underarm: Point
    arrival: float
    bottom: float


def draw_armhole(plan: ArmholePlan) -> Path:
    """From the shoulder point, square to its seam, over ``across`` to the underarm.

    Upright at ``across`` where the shoulder point lies outside of it; where that lies inside, it leans out
    there as much as it must.
    """
    outward = degrees(atan2(plan.across.x - plan.tip.x, plan.tip.y - plan.across.y))
    turn = max(figure("armhole.least_turn"), figure("armhole.turn_share") * (plan.slope + outward))
    heading = -90.0 + max(outward + turn, 0.0)
    upper = _upper(plan, heading)
    return Path.of(*upper, _hook(plan, heading, abs(upper[-1].curvature(1.0))))


def _upper(plan: ArmholePlan, heading: float) -> tuple[Cubic, ...]:
    """From the shoulder point to ``across``: one curve, or where that would leave the shoulder in a hook, a
    rounder one that takes most of the turn and one that goes on from it."""
    leaving, pull = -90.0 - plan.slope, _upper_pull(plan)
    whole = curve_between(plan.tip, leaving, plan.across, heading, 1.0, pull)
    if abs(whole.curvature(0.0)) * figure("armhole.least_shoulder_radius") <= 1.0:
        return (whole,)
    onward = leaving + figure("armhole.shoulder_turn_share") * (heading - leaving)
    way = direction((onward + heading) / 2.0)
    fall = direction(leaving) + direction(onward) * figure("armhole.shoulder_fall")
    place = plan.tip + fall * ((plan.across - plan.tip).cross(way) / fall.cross(way))
    if not plan.across.y < place.y < plan.tip.y:
        return (whole,)
    rest = curve_between(place, onward, plan.across, heading, 1.0, figure("armhole.rest_pull"))
    return round_curve(plan.tip, leaving, place, onward), rest


def _upper_pull(plan: ArmholePlan) -> float:
    """How long the upper part keeps the direction of the upright, over a batten: as long as an arc does where
    the shoulder point lies so far out that it is one, or it would bend quickly there."""
    down, out = plan.tip.y - plan.across.y, plan.tip.x - plan.across.x
    if down <= 0.0 or out <= 0.0:
        return figure("armhole.upper_pull")
    arc = out / (figure("armhole.even_bend") * slope_of(plan.slope) * down)
    begins = figure("armhole.arc_begins")
    share = min(max((arc - begins) / (1.0 - begins), 0.0), 1.0)
    return figure("armhole.upper_pull") + share * (1.0 - figure("armhole.upper_pull"))


def _hook(plan: ArmholePlan, heading: float, curvature: float) -> Cubic:
    """The J: it begins as curved as the upper part ends, as far as that leaves a hollow."""
    leaving, arriving = direction(heading), direction(plan.arrival)
    chord = plan.underarm - plan.across
    turn = leaving.cross(arriving)
    down, along = chord.cross(arriving) / turn, leaving.cross(chord) / turn
    last = plan.underarm - arriving * (plan.bottom * along)
    beside = abs(leaving.cross(last - plan.across))
    least, most = figure("armhole.least_upright"), figure("armhole.most_upright")
    share = most
    if curvature > 0.0 and down > 0.0:
        share = min(max(sqrt(2.0 / 3.0 * beside / curvature) / down, least), most)
    return Cubic(plan.across, plan.across + leaving * (share * down), last, plan.underarm)
