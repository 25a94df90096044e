"""Both legs below the hip: where hem, knee and crotch points lie, so that the seams of front and back agree.

The front's crotch level is y = 0. The back leg is the front's moved and made wider at either side of the
crease; its knee and hem lie a little higher or lower against its hip where that makes the side seams equal,
and its crotch point so low that its inseam has the wanted length. The knee is made wider where the back
inseam would turn too much there, the extensions longer where the thigh needs it.
"""

from dataclasses import dataclass, replace
from math import atan2, degrees, radians, tan

from notchbook.blocks._together import Together, Vector
from notchbook.blocks.legs.crease_place import (
    CreasePlaces,
    falling_places,
    hanging_places,
    short_places,
)
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.knee_bend import bend_plan
from notchbook.blocks.legs.large_bodies import of_size, share_of_large
from notchbook.blocks.legs.leg_lines import Inseam, Leg, inseam, length_of, side_below_hip
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.widths import leg_width
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Point, Segment

_ROUNDS = 50
_EXACT = 1e-8
"""mm."""

_NOTHING = 1e-7
"""mm: not widened at all."""


@dataclass(frozen=True, slots=True)
class LegsPlan:
    """What the legs are drawn from: the panels' widths at the hip, its level, how far the sides lean out
    there (degrees), extensions beyond the feet of the centers and how far these feet lie out of the hip's
    center, mm."""

    front_width: float
    back_width: float
    hip_y: float
    front_lean_out: float
    back_lean_out: float
    front_foot: float
    back_foot: float
    front_extension: float
    back_extension: float


@dataclass(frozen=True, slots=True)
class LegPanel:
    """One leg panel: the center of its hip line, the side seam below the hip, the inseam."""

    center: Point
    side: tuple[Segment, ...]
    inseam: Inseam
    leg: Leg

    @property
    def fork(self) -> Point:
        """The crotch point."""
        return self.inseam.segments[0].start

    def width(self, below: float) -> float:
        """So far below the crotch point, mm."""
        return leg_width(self.side, self.inseam.segments, below)


@dataclass(frozen=True, slots=True)
class Legs:
    """Both panels; ``knee`` is the girth there in use (None without a knee), ``wider`` by how much knee, or
    the hem of a leg without one, is wider than asked, ``hem_more`` by how much the hem of a leg with a knee
    follows it, ``for_thigh`` by how much both extensions together are longer than planned, mm."""

    front: LegPanel
    back: LegPanel
    knee: float | None
    wider: float
    hem_more: float
    for_thigh: float

    @property
    def reaches_below(self) -> bool:
        """Whether the legs reach to where the thigh is looked at again."""
        return self.back.leg.hem_y < self.back.fork.y - proportion("thigh.below") - proportion(
            "hem.least_below"
        )

    def girth(self, below: float) -> float:
        """Of the leg so far below the crotch points, mm."""
        return self.front.width(below) + self.back.width(below)


@dataclass(frozen=True, slots=True)
class _State:
    """What is sought: level of the front hem, how far the back's knee and hem lie higher, level of the back
    crotch point, by how much each half of the knee and both extensions are larger than planned, mm."""

    hem_y: float
    leg_up: float
    fork_y: float
    knee_more: float
    for_thigh: float


class LegsDrafter:
    """Draws the legs of one body. Where they lay last is where the next search begins."""

    def __init__(self, given: TrousersGiven) -> None:
        self._given = given
        self._bend = bend_plan(
            share_of_large(given.hip),
            given.knee_depth - given.rise - given.depth_ease,
            given.length - given.knee_depth,
        )
        self._last: Vector | None = None
        self._together = Together(5, _EXACT, _ROUNDS)

    def draw(self, plan: LegsPlan) -> Legs:
        """The legs of this plan. DraftRefused ``trousers-hem-above-crotch``, ``trousers-thigh-against-hip``,
        ``trousers-knee-above-crotch``, ``trousers-inseam-unreachable``."""
        self._require_leg(plan)
        try:
            found = self._found(plan)
            if found is None:
                raise self._unreachable(plan)
            found = (*found[:3], *(0.0 if abs(more) < _NOTHING else more for more in found[3:]))
            legs = self._drawn(plan, _State(*found))[0]
        except GeometryError as error:
            raise self._unreachable(plan) from error
        self._last = found
        self._require(plan, _State(*found), legs)
        return legs

    def _found(self, plan: LegsPlan) -> Vector | None:
        """The state of the legs, sought from where they lay last, else from the usual."""
        usual = (plan.hip_y - self._below_hip, 0.0, -15.0, 0.0, 0.0)
        for start in (usual,) if self._last is None else (self._last, usual):
            found = self._together.settle(lambda amounts: self._drawn(plan, _State(*amounts))[1], start)
            if found is not None:
                return found
        return None

    @property
    def _below_hip(self) -> float:
        return self._given.length - self._given.hip_depth

    @property
    def _most_for_thigh(self) -> float:
        return proportion("thigh.most_more") * self._given.hip

    def _require_leg(self, plan: LegsPlan) -> None:
        """Hem and knee must lie below the crotch level, and the knee above the hem."""
        given, least = self._given, proportion("hem.least_below")
        crotch = plan.hip_y + given.hip_depth
        if given.length < crotch + least:
            raise DraftRefused("trousers-hem-above-crotch", length=given.length, crotch=crotch)
        if given.knee is not None and given.knee_depth < crotch + least:
            raise DraftRefused("trousers-knee-above-crotch", knee_depth=given.knee_depth, crotch=crotch)

    def _require(self, plan: LegsPlan, state: _State, legs: Legs) -> None:
        given = self._given
        most = self._most_for_thigh
        if state.for_thigh > most:
            raise DraftRefused(
                "trousers-thigh-against-hip",
                thigh=given.thigh,
                hip=given.hip,
                most=legs.girth(0.0),
            )
        if not proportion("fork.lowest") <= state.fork_y <= proportion("fork.highest"):
            raise self._unreachable(plan)

    def _unreachable(self, plan: LegsPlan) -> DraftRefused:
        below = self._given.length - self._given.hip_depth - plan.hip_y
        return DraftRefused("trousers-inseam-unreachable", inseam=below - self._given.inseam_stretch)

    def _drawn(self, plan: LegsPlan, state: _State) -> tuple[Legs, tuple[float, ...]]:
        """The legs in this state, and by how much its values are still to be moved."""
        share = proportion("thigh.front_share")
        widths = (
            plan.front_width + plan.front_foot + plan.front_extension + share * state.for_thigh,
            plan.back_width + plan.back_foot + plan.back_extension + (1.0 - share) * state.for_thigh,
        )
        places = self._places(widths, state)
        front = self._front(plan, widths[0], places, state)
        back = self._back(plan, widths[1], places, front.leg, state)
        knee_y = front.leg.knee_y
        knee = None if knee_y is None else (self._given.knee or 0.0) + 4.0 * state.knee_more
        hem_more = 4.0 * _hem_following(self._given, state.knee_more)
        legs = Legs(front, back, knee, 4.0 * state.knee_more, hem_more, state.for_thigh)
        side = length_of(front.side)
        return legs, (
            side - self._below_hip,
            length_of(back.side) - side,
            front.inseam.length - self._given.inseam_stretch - back.inseam.length,
            0.0
            if front.leg.falls
            else _within(state.knee_more, _knee_lacking(back, self._given.hip), back.leg),
            min(
                self._most_for_thigh + 1.0 - state.for_thigh, max(-state.for_thigh, self._thigh_lacking(legs))
            ),
        )

    def _places(self, widths: tuple[float, float], state: _State) -> CreasePlaces:
        """``widths`` are those of the panels from the side to the crotch point, mm."""
        given = self._given
        if given.knee is None and given.hem is None:
            return falling_places(*widths)
        if _has_knee(given):
            return hanging_places(*widths, given.hip)
        return short_places(*widths, given.hip, self._hem_half(state))

    def _hem_half(self, state: _State) -> float:
        """A quarter of the hem, mm."""
        given = self._given
        knee = 0.0 if given.knee is None else given.knee / 4.0 + state.knee_more
        hem = knee if given.hem is None else given.hem / 4.0
        return hem + (_hem_following(given, state.knee_more) if _has_knee(given) else state.knee_more)

    def _front(self, plan: LegsPlan, width: float, places: CreasePlaces, state: _State) -> LegPanel:
        side = Point(places.front_side, plan.hip_y)
        leg = self._leg(plan, places, state)
        fork = Point(side.x - width, 0.0)
        below = side_below_hip(side, plan.front_lean_out, leg)
        return LegPanel(Point(side.x - plan.front_width, plan.hip_y), below, inseam(fork, leg), leg)

    def _leg(self, plan: LegsPlan, places: CreasePlaces, state: _State) -> Leg:
        """Knee and hem of the front."""
        given, narrower = self._given, proportion("crease.back_wider") / 2.0
        knee_y = plan.hip_y - (given.knee_depth - given.hip_depth)
        knee = 0.0 if given.knee is None else given.knee / 4.0 + state.knee_more
        return Leg(
            knee - narrower,
            knee_y if _has_knee(given) else None,
            self._hem_half(state) - narrower - places.narrowed,
            state.hem_y,
            self._bend,
            given.knee is None and given.hem is None,
            max(proportion("thigh.least_hollow"), 1.0 - state.for_thigh / proportion("thigh.hollow_gone")),
        )

    def _back(
        self, plan: LegsPlan, width: float, places: CreasePlaces, front: Leg, state: _State
    ) -> LegPanel:
        wider = proportion("crease.back_wider")
        side = Point(places.back_side, plan.hip_y)
        leg = replace(
            front,
            knee_half=front.knee_half + wider,
            hem_half=front.hem_half + wider + 2.0 * places.narrowed,
            knee_y=None if front.knee_y is None else front.knee_y + state.leg_up,
            hem_y=front.hem_y + state.leg_up,
        )
        below = side_below_hip(side, plan.back_lean_out, leg)
        fork = Point(side.x - width, state.fork_y)
        return LegPanel(Point(side.x - plan.back_width, plan.hip_y), below, inseam(fork, leg), leg)

    def _thigh_lacking(self, legs: Legs) -> float:
        """By how much the leg is too narrow for the thigh, mm (below 0: room)."""
        below = proportion("thigh.below")
        lacking = self._given.thigh - legs.girth(0.0)
        if legs.reaches_below:
            less = proportion("thigh.less_below")
            lacking = max(lacking, self._given.thigh - less - legs.girth(below))
        return lacking


def _has_knee(given: TrousersGiven) -> bool:
    """Whether the leg is shaped at the knee: not where a hem near below it would pull both seams in at
    once."""
    shin = given.length - given.knee_depth
    if given.knee is None or shin <= proportion("knee.least_shin"):
        return False
    narrower = 0.0 if given.hem is None else (given.knee - given.hem) / 4.0
    return degrees(atan2(narrower, shin)) <= proportion("knee.most_shin_lean")


def _hem_following(given: TrousersGiven, knee_more: float) -> float:
    """By how much a quarter of a hem that nobody asked for is wider because the knee is, mm: until the leg
    tapers no more than is usual, but no more than the knee."""
    if not given.hem_follows or given.knee is None or given.hem is None or not _has_knee(given):
        return 0.0
    tapers = tan(radians(proportion("knee.most_taper"))) * (given.length - given.knee_depth)
    return max(0.0, min(knee_more, given.knee / 4.0 + knee_more - tapers - given.hem / 4.0))


def _within(more: float, lacking: float, leg: Leg) -> float:
    """By how much the half of knee or hem is to be moved, mm: it becomes no narrower than asked, and no wider
    than its limit."""
    most = proportion("hem.most_wider" if leg.knee_y is None else "knee.most_wider") / 4.0
    return min(most - more, max(-more, lacking))


def _knee_lacking(back: LegPanel, hip: float) -> float:
    """By how much each half of the knee, of the hem where there is none, is too narrow for the lean of the
    back inseam, mm (below 0: room); ``hip`` is the girth with its ease."""
    half, level = back.leg.first
    chord = proportion("hem.most_chord") if back.leg.knee_y is None else of_size("inseam.most_chord", hip)
    most = tan(radians(chord))
    return -half - back.fork.x - most * (back.fork.y - level)


def foot(hip_y: float, slant: float) -> float:
    """How far out of the hip's center the foot of the slanted center lies, mm."""
    return hip_y * tan(radians(slant))
