"""A legging above the crotch level: both crotch seams and the waist edge, for one slant of the centers."""

from dataclasses import dataclass
from math import atan2, degrees, radians, tan

from notchbook.blocks.stretch.center_curves import CenterPlan, CrotchSeam, crotch_seam
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch.leggings_balance import (
    Rises,
    crotch_depth,
    evened_depth,
    limits,
    moved_to_front,
)
from notchbook.geometry import Cubic, Path, Point, curve_between

_ROUNDS = 2
"""A lower crotch moves the hip line along the slanted centers and so the curves: it settles at once."""


@dataclass(frozen=True, slots=True)
class LegWidths:
    """Widths of one leg, mm: at the crotch level, and how much of it are the two extensions; of these the
    front has ``front_share``."""

    crotch: float
    fork: float
    front_share: float

    @property
    def front_fork(self) -> float:
        """The extension of the front beyond the straight center."""
        return self.front_share * self.fork

    @property
    def back_fork(self) -> float:
        """The same behind."""
        return self.fork - self.front_fork


@dataclass(frozen=True, slots=True)
class Pull:
    """The slant of both centers over their most, by how much the crotch lies lower than the rise says, and
    by how much the front crotch is longer (the back shorter) than given, mm."""

    slants: float
    depth: float
    moved: float


@dataclass(frozen=True, slots=True)
class UpperLeg:
    """Both crotch seams and waist edges, each with its center toward +x; ``side_top`` is the waist at the
    side."""

    front: CrotchSeam
    back: CrotchSeam
    front_waist: Cubic
    back_waist: Cubic
    side_top: Point
    pull: Pull

    @property
    def waist(self) -> float:
        """The waist edge of one leg, mm."""
        return self.front_waist.length + self.back_waist.length

    @property
    def rises(self) -> Rises:
        """How high the waist stands at the centers over that at the side, mm."""
        return Rises(self.front.top.y - self.side_top.y, self.back.top.y - self.side_top.y)


def leg_widths(given: LeggingsGiven) -> LegWidths:
    """The extensions: usual, but no wider than the thigh bears and wide enough to reach it."""
    half = given.hip / 2.0
    least, usual, most = (
        figure(f"leggings.{word}fork_share") * given.hip for word in ("least_", "", "most_")
    )
    borne = figure("leggings.fork_over_thigh") * given.thigh - half
    fork = min(max(min(usual, borne), least, given.thigh - half), most)
    return LegWidths(half + fork, fork, _front_share(given, fork / given.hip))


def _front_share(given: LeggingsGiven, narrow: float) -> float:
    """The front's share of the extensions: more for a man, and where they are narrow over the hip
    (``narrow``), or the front crotch would end in a short hook."""
    if given.has_front_room:
        return figure("leggings.roomy_fork_share")
    usual, most = figure("leggings.front_fork_share"), figure("leggings.most_front_fork_share")
    wide, least = figure("leggings.fork_share"), figure("leggings.narrow_fork_share")
    return usual + (most - usual) * min(max((wide - narrow) / (wide - least), 0.0), 1.0)


def hip_level(given: LeggingsGiven, widths: LegWidths, depth: float) -> float:
    """The height over the crotch level at which the hip's width is held, mm: the hip line, or a little
    higher where the back crotch would else have no room to curve."""
    least = figure("leggings.least_hip_share") * widths.back_fork
    return max(given.rise + depth - given.hip_depth, least)


def draw_upper_leg(given: LeggingsGiven, widths: LegWidths, seam: Path, slants: float) -> UpperLeg:
    """The upper leg with its depth settled."""
    bounds = limits(given.hip)
    depth = 0.0
    for _ in range(_ROUNDS):
        front, back = _seams(given, widths, seam, Pull(slants, depth, 0.0))
        level = Rises(front.top.y - given.rise, back.top.y - given.rise)
        depth = crotch_depth(level, bounds)
    front, back = _seams(given, widths, seam, Pull(slants, depth, 0.0))
    level = Rises(front.top.y - given.rise, back.top.y - given.rise)
    depth = evened_depth(level, depth, bounds, _lift(given, back))
    front, back = _seams(given, widths, seam, Pull(slants, depth, 0.0))
    top = Point(_side_take_in(given), given.rise + depth)
    rises = Rises(front.top.y - top.y, back.top.y - top.y)
    moved = moved_to_front(rises, bounds, figure("leggings.most_even_rise") * _lift(given, back))
    pull = Pull(slants, depth, moved)
    front, back = _seams(given, widths, seam, pull)
    lean = side_lean(top, hip_level(given, widths, depth))
    slope = _side_slope(top, front, back, lean)
    return UpperLeg(
        front,
        back,
        curve_between(top, -lean - slope, front.top, front.slant, keep_convex=given.side_seam),
        curve_between(top, slope - lean, back.top, back.slant, keep_convex=given.side_seam),
        top,
        pull,
    )


def side_lean(top: Point, hip_y: float) -> float:
    """How far (degrees) a side seam leans in where it reaches the waist: it comes up from the hip upright and
    bends one way."""
    return 2.0 * degrees(atan2(top.x, top.y - hip_y))


def _lift(given: LeggingsGiven, back: CrotchSeam) -> float:
    """By how much the slant of the center back lifts a straight waist edge over its width, mm."""
    return tan(radians(max(back.slant, 0.0))) * (back.top.x - _side_take_in(given))


def _side_slope(top: Point, front: CrotchSeam, back: CrotchSeam, lean: float) -> float:
    """How much (degrees) the waist edge rises to the back where it passes the side: enough that its front
    bends one way, and its back still does."""
    front_rise, back_rise = (front.top - top).direction(), (back.top - top).direction()
    most = figure("leggings.most_side_slope")
    usual = min(max(figure("leggings.side_slope") * (back_rise - front_rise), -most), most)
    if front.slant <= front_rise:
        return usual
    return max(usual, min(figure("leggings.least_waist_turn") - front_rise, back_rise) - lean)


def _seams(given: LeggingsGiven, widths: LegWidths, seam: Path, pull: Pull) -> tuple[CrotchSeam, CrotchSeam]:
    end = widths.crotch / 2.0
    hip_y = hip_level(given, widths, pull.depth)
    lean = -90.0 - seam.tangent_at(0.0, "after").direction()
    fall = figure("leggings.front_drop_share") * lean
    front = CenterPlan(
        hip=Point(end - widths.front_fork, hip_y),
        crotch_point=Point(end, 0.0),
        slant=pull.slants * figure("leggings.front_slant"),
        fall=fall,
        start_share=figure("leggings.front_start"),
        pull=figure("leggings.front_curve_pull"),
    )
    back = CenterPlan(
        hip=Point(end - widths.back_fork, hip_y),
        crotch_point=Point(end, 0.0),
        slant=pull.slants * figure("leggings.back_slant"),
        fall=2.0 * lean - fall,
        start_share=figure("leggings.back_start"),
        pull=figure("leggings.back_curve_pull"),
        end_pull=figure("leggings.back_end_pull"),
    )
    return (
        crotch_seam(front, given.crotch_front + pull.moved),
        crotch_seam(back, given.crotch_back - pull.moved),
    )


def _side_take_in(given: LeggingsGiven) -> float:
    """What a side seam takes in at the waist on each panel, mm; below 0 outward."""
    if not given.side_seam:
        return 0.0
    wanted = figure("leggings.side_share") * (given.hip - given.waist) / 4.0
    most = figure("leggings.most_side")
    return min(max(wanted, -most), most)
