"""The shoulder seams of a stretch block: narrowed with the bust, cut in or cut to a strap where asked."""

from dataclasses import dataclass
from math import cos, radians, sin

from notchbook.blocks.stretch.armhole_widths import limits, reach
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.necks import Necks
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, direction


@dataclass(frozen=True, slots=True)
class Shoulder:
    """The shoulder seams in use, ``front`` and ``back`` equally long; ``tip`` is the shoulder point on the
    body's own slope, between the ends of both. ``shorter`` is by how much they are drafted shorter (longer
    below 0) than given, mm."""

    front: Path
    back: Path
    tip: Point
    shorter: float


def draw_shoulder(given: TorsoGiven, necks: Necks, underarm: Point) -> Shoulder:
    """The seams whose outer end suits the narrowed bust.

    DraftRefused ``stretch-strap-narrow``.
    """
    start, edges = given.neck_opened, given.strap_edges
    if edges is not None:
        length, shorter = edges[1], 0.0
    else:
        natural = _natural_length(given, necks, underarm)
        length, shorter = natural - given.shoulder_in, given.shoulder - natural
    if start < 0.0 or length - start < figure("neck.least_strap") or length > _longest(given):
        raise DraftRefused("stretch-strap-narrow", shoulder=given.shoulder, left=length - start)

    def at(slope: float, along: float) -> Point:
        return necks.base + direction(-slope) * along

    front, back = (
        Path.line(at(slope, start), at(slope, length)) for slope in (given.front_slope, given.back_slope)
    )
    return Shoulder(front, back, at(given.shoulder_slope, length), shorter)


def _natural_length(given: TorsoGiven, necks: Necks, underarm: Point) -> float:
    """From the side-neck point to a shoulder point that lies over the room that the bust leaves, mm."""
    slope = radians(given.shoulder_slope)
    tall = max(necks.base.y - given.shoulder * sin(slope) - underarm.y, 1.0)
    farthest_in = reach(given.back_slope, (1.0 - figure("armhole.back_level")) * tall)
    inmost, outmost = limits(given, underarm.x)
    wanted = min(max(given.across_back / 2.0, inmost), outmost)

    def over(width: float, out: float) -> float:
        """Along the shoulder to a point so far outside of this width."""
        return (width + out - necks.base.x) / cos(slope)

    out = figure("armhole.tip_out")
    least, most = over(wanted, out), over(wanted, farthest_in)
    if given.is_close:
        given_up = over((1.0 - figure("armhole.gives_for_shoulder")) * wanted, out)
        least = max(min(least, given.shoulder + figure("armhole.close_dropping")), given_up)
    longest = _longest(given)
    shortest = (1.0 - figure("armhole.most_narrowing_share")) * given.shoulder
    return min(max(min(max(given.shoulder, least), longest), shortest), max(most, shortest))


def _longest(given: TorsoGiven) -> float:
    """The longest shoulder seam, mm: so far it may drop over the arm."""
    return given.shoulder + figure("armhole.most_dropping")
