"""A whole leg drawn at one stand of its levers: tops, legs, crotch curves."""

from dataclasses import dataclass
from math import atan, cos, degrees, radians

from notchbook.blocks.legs.corner_depths import wanted_depth
from notchbook.blocks.legs.crotch_curve import Corner, CrotchCurve, crotch_curve
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.hip_in_use import waist_in_use
from notchbook.blocks.legs.legs_below import LegPanel, Legs, LegsDrafter, LegsPlan, foot
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.pull import Pulled
from notchbook.blocks.legs.top import Top, TopDrafter, TopPlan, dart_lengths
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
        self.front = TopDrafter(given.front_darts)
        self.back = TopDrafter(given.back_darts)


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
    lengths = dart_lengths(given)
    tops = (
        drafters.front.draw(
            TopPlan(widths[0], given.hip_depth, front_slant, leans[0], lengths[0], pull.raised), waist.front
        ),
        drafters.back.draw(
            TopPlan(widths[1], given.hip_depth, pull.slant, leans[1], lengths[1], pull.back_raised),
            waist.back,
        ),
    )
    share = _fork_share(legs)
    return Drawn(
        _panel("front", tops[0], legs.front, front_slant, share, hip),
        _panel("back", tops[1], legs.back, pull.slant, -share, hip),
        pull,
        waist,
        hip,
        legs,
        share,
    )


def _lean_out(given: TrousersGiven, belly: Belly, take_in: float) -> float:
    """How far a side leans out at the hip, degrees: where the waist lies outside of the hip, so far that the
    side bends one way only from the leg up."""
    return max(belly.lean_out, proportion("side.lean_out") * degrees(atan(-take_in / given.hip_depth)), 0.0)


def _fork_share(legs: Legs) -> float:
    usual = proportion("fork.share") * (legs.back.inseam.lean - proportion("fork.from_lean"))
    most = min(proportion("fork.most"), proportion("fork.most_front_lean") - legs.front.inseam.lean)
    return min(max(0.0, most), max(0.0, usual))


def _panel(name: str, top: Top, leg: LegPanel, slant: float, share: float, hip: float) -> DrawnPanel:
    corner = Corner(
        Point(leg.center.x - foot(leg.center.y, slant), 0.0), slant, leg.fork, leg.inseam.lean + share
    )
    wanted, start = wanted_depth(name, corner.extension, hip), proportion(f"curve.{name}_start")
    try:
        curve = crotch_curve(corner, wanted, start)
    except GeometryError as error:
        raise DraftRefused("trousers-crotch-flat", lean=corner.lean, extension=corner.extension) from error
    drawn = DrawnPanel(top, leg, slant, corner, curve)
    if drawn.straight < proportion("curve.least_center"):
        raise DraftRefused("trousers-crotch-flat", lean=corner.lean, extension=corner.extension)
    return drawn
