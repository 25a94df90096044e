"""A whole leg drawn at one stand of its levers: tops, legs, crotch curves."""

from dataclasses import dataclass, replace
from math import atan, cos, degrees, radians

from notchbook.blocks.legs.corner_depths import wanted_depth
from notchbook.blocks.legs.crotch_curve import Corner, CrotchCurve, crotch_curve, flattest_lean
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.hip_in_use import waist_in_use
from notchbook.blocks.legs.legs_below import LegPanel, Legs, LegsDrafter, LegsPlan, foot
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.pull import Pulled
from notchbook.blocks.legs.top import Top, TopDrafter, TopPlan, back_places, dart_lengths, front_places
from notchbook.blocks.legs.waist_plan import WaistPlan, panel_widths
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class Belly:
    """What was done for girths between waist and hip: each panel fuller by this (mm), taken up by its darts;
    the side leaning out at the hip (degrees); the hip girth wider (mm)."""

    fullness: float = 0.0
    lean_out: float = 0.0
    wider: float = 0.0


class Drafters:
    """What draws the parts of one body's trousers, again and again."""

    def __init__(self, given: TrousersGiven) -> None:
        self.legs = LegsDrafter(given)
        self.front = TopDrafter(given.front_darts + given.front_empty)
        self.back = TopDrafter(given.back_darts + given.back_empty)


@dataclass(frozen=True)
class DrawnPanel:
    """One panel: its top (in the frame of its hip line, whose origin is the leg's center), its leg, its
    crotch."""

    top: Top
    leg: LegPanel
    slant: float
    corner: Corner
    curve: CrotchCurve

    @property
    def straight(self) -> float:
        """The straight part of the crotch seam above its curve, mm (below 0: there is none)."""
        hip = (self.leg.center.y - self.corner.foot.y) / cos(radians(self.slant))
        return hip + self.top.center - (self.curve.curve.start - self.corner.foot).norm()

    @property
    def crotch(self) -> float:
        """The crotch seam from the waist to the crotch point, mm."""
        return self.straight + self.curve.curve.length


@dataclass(frozen=True)
class Drawn:
    """Both panels of a leg. ``fork_share`` is by how much the front's corner at the crotch point is wider
    than square and the back's less, degrees."""

    front: DrawnPanel
    back: DrawnPanel
    pulled: Pulled
    waist: WaistPlan
    hip: float
    legs: Legs
    fork_share: float

    @property
    def crotch(self) -> float:
        """The whole crotch seam, mm."""
        return self.front.crotch + self.back.crotch


def draw(given: TrousersGiven, drafters: Drafters, belly: Belly, pull: Pulled) -> Drawn:
    """The leg at this stand. DraftRefused as its parts refuse."""
    hip_y = given.rise + pull.depth - given.hip_depth
    hip, waist = waist_in_use(given, pull.slant, belly.fullness, belly.wider)
    front_slant = degrees(atan(waist.front.center / given.hip_depth))
    widths = panel_widths(given, hip)
    leans = _lean_out(given, belly, waist.front.side), _lean_out(given, belly, waist.back.side)
    plan = LegsPlan(
        *widths,
        hip_y,
        *leans,
        foot(hip_y, front_slant),
        foot(hip_y, pull.slant),
        pull.front_extension - foot(hip_y, front_slant),
        pull.back_extension,
    )
    legs = drafters.legs.draw(plan)
    lengths = dart_lengths(given, waist)
    places = (
        front_places(given, front_slant, lengths[0], waist.front, -legs.front.center.x),
        back_places(given),
    )
    slants, raised = (front_slant, pull.slant), (pull.raised, pull.back_raised)
    front, back = (
        TopPlan(widths[i], given.hip_depth, slants[i], leans[i], lengths[i], places[i], sewn, raised[i])
        for i, sewn in enumerate((given.front_darts, given.back_darts))
    )
    tops = (drafters.front.draw(front, waist.front), drafters.back.draw(back, waist.back))
    corners = _corners(legs, (front_slant, pull.slant), hip)
    return Drawn(
        _panel("front", tops[0], legs.front, corners[0], hip),
        _panel("back", tops[1], legs.back, corners[1], hip),
        pull,
        waist,
        hip,
        legs,
        corners[0].lean - legs.front.inseam.lean,
    )


def _lean_out(given: TrousersGiven, belly: Belly, take_in: float) -> float:
    """How far a side leans out at the hip, degrees: where the waist lies outside of the hip, so far that the
    side bends one way only from the leg up."""
    return max(belly.lean_out, proportion("side.lean_out") * degrees(atan(-take_in / given.hip_depth)), 0.0)


def _corners(legs: Legs, slants: tuple[float, float], hip: float) -> tuple[Corner, Corner]:
    """The corners of front and back, where both inseams are straight across at the crotch point.

    Square to both inseams the back curve of a large seat would run down too steeply for a hollow: then its
    corner at the crotch point is less than square and the front's more.
    """
    front, back = (
        Corner(Point(leg.center.x - foot(leg.center.y, slant), 0.0), slant, leg.fork, leg.inseam.lean)
        for leg, slant in zip((legs.front, legs.back), slants, strict=True)
    )
    share = _fork_share(front, back, hip)
    return replace(front, lean=front.lean + share), replace(back, lean=back.lean - share)


def _fork_share(front: Corner, back: Corner, hip: float) -> float:
    """By how much the back's corner at the crotch point is less than square and the front's more, degrees.

    So much that the last of the back curve is fair as long as the front's stays so; more where the back would
    be no hollow at all, as far as the front has room.
    """
    fair_front, fair_back = (_lean_room(front, "front", hip, "fair"), _lean_room(back, "back", hip, "fair"))
    front_room, back_room = (_lean_room(front, "front", hip, "room"), _lean_room(back, "back", hip, "room"))
    share = max(min(-fair_back, fair_front), min(-back_room, (front_room - back_room) / 2.0), 0.0)
    return min(share, proportion("fork.most"))


def _lean_room(corner: Corner, panel: str, hip: float, word: str) -> float:
    """By how much the crotch curve may run down more steeply at the crotch point, degrees, until its end
    tangent passes the corner no farther off than this (``fork.<word>_<panel>``); below 0 where it does."""
    depth, share = wanted_depth(panel, corner.extension, hip), proportion(f"fork.{word}_{panel}")
    return flattest_lean(corner, depth, share) - corner.lean


def _panel(name: str, top: Top, leg: LegPanel, corner: Corner, hip: float) -> DrawnPanel:
    wanted, start = wanted_depth(name, corner.extension, hip), proportion(f"curve.{name}_start")
    try:
        curve = crotch_curve(corner, wanted, start)
    except GeometryError as error:
        raise DraftRefused("trousers-crotch-flat", lean=corner.lean, extension=corner.extension) from error
    drawn = DrawnPanel(top, leg, corner.slant, corner, curve)
    if drawn.straight < proportion("curve.least_center"):
        raise DraftRefused("trousers-crotch-flat", lean=corner.lean, extension=corner.extension)
    return drawn
