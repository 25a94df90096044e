"""An inseam that bends above the knee: a straight line from the crotch point, one even arc, a straight line.

A hand lays the curve over the knee, not to it: so the bend ends a little below, it is spread, and the inseam
leaves the crotch no more slanted than it must.
"""

from dataclasses import dataclass
from math import asinh, atan2, cos, sin, sqrt, tan

from notchbook.blocks.legs.proportions import proportion
from notchbook.geometry import Cubic, Line, Point, Segment

_ROUNDS = 7
"""Each brings the tip of the bend a digit nearer."""


@dataclass(frozen=True, slots=True)
class KneeBend:
    """The inseam from the crotch point to the hem, its ``length`` (mm); it leaves the crotch point leaning
    toward the crease by ``lean``, radians."""

    segments: tuple[Segment, ...]
    lean: float
    length: float


@dataclass(frozen=True, slots=True)
class BendPlan:
    """The tip of the bend lies ``up`` mm above the knee, higher where the inseam turns much; the bend
    begins and ends ``reach`` mm from it."""

    reach: float
    up: float


def bend_plan(share_of_large: float, above: float, below: float) -> BendPlan:
    """The bend for a body that counts as large by this share; ``above`` and ``below`` are the ways from the
    knee to the crotch level and to the hem, mm."""
    up, reach = (
        proportion(f"inseam.{word}")
        + share_of_large * (proportion(f"inseam.{word}_plus") - proportion(f"inseam.{word}"))
        for word in ("bend_up", "bend_reach")
    )
    reach = min(reach, proportion("inseam.bend_above") * above, proportion("inseam.bend_below") * below)
    return BendPlan(reach, min(up, 0.5 * reach))


def knee_bend(fork: Point, knee: Point, hem: Point, plan: BendPlan) -> KneeBend:
    """From the crotch point through the knee, which is met exactly, to the hem; the crease lies toward +x."""
    tip, at_knee = _tip(fork, knee, hem, plan)
    first = tip - (tip - fork).unit() * plan.reach
    last = tip + (hem - tip).unit() * plan.reach
    segments = (
        Line(fork, first),
        _parabola(first, first.lerp(tip, at_knee), knee),
        _parabola(knee, tip.lerp(last, at_knee), last),
        Line(last, hem),
    )
    lean = atan2(tip.x - fork.x, fork.y - tip.y)
    turn = lean - atan2(hem.x - tip.x, tip.y - hem.y)
    straight = (tip - fork).norm() + (hem - tip).norm() - 2.0 * plan.reach
    return KneeBend(segments, lean, straight + _arc(plan.reach, turn))


def _arc(reach: float, turn: float) -> float:
    """The length of a parabola with end tangents of this length, mm, that turns by so much, radians."""
    slope = abs(tan(turn / 2.0))
    half = reach * cos(turn / 2.0)
    return half * (sqrt(1.0 + slope * slope) + (asinh(slope) / slope if slope else 1.0))


def _tip(fork: Point, knee: Point, hem: Point, plan: BendPlan) -> tuple[Point, float]:
    """Where the lines above and below the bend would meet, so that the bend passes through the knee; and at
    which parameter it does."""
    up, reach, at_knee = _up(fork, knee, hem, plan), plan.reach, 0.5
    x, y = knee.x, knee.y + up
    above, below = fork.y - y, y - hem.y
    for _ in range(_ROUNDS):
        aside_above, aside_below = x - fork.x, hem.x - x
        long, short = sqrt(aside_above**2 + above**2), sqrt(aside_below**2 + below**2)
        down_above, down_below = above / long, below / short
        # On a parabola of tangents of one length: at t it lies reach (1 - t)² before the tip along the one
        # and reach t² behind it along the other.
        at_knee = _root(down_above - down_below, down_above, down_above + up / reach)
        before, behind = reach * (1.0 - at_knee) ** 2, reach * at_knee**2
        x = knee.x + before * aside_above / long - behind * aside_below / short
    return Point(x, y), at_knee


def _up(fork: Point, knee: Point, hem: Point, plan: BendPlan) -> float:
    """How far above the knee the tip of the bend lies, mm: so far that the knee lies hardly outside of the
    straight line below, about which the leg hangs."""
    turn = atan2(knee.x - fork.x, fork.y - knee.y) - atan2(hem.x - knee.x, knee.y - hem.y)
    if turn == 0.0:
        return plan.up
    # A parabola of tangents of one length leaves its end by s² sin(turn) / (4 reach), s the way from there.
    past_knee = sqrt(4.0 * plan.reach * proportion("inseam.knee_off") / abs(sin(turn)))
    return max(plan.up, min(proportion("inseam.highest_bend") * plan.reach, plan.reach - past_knee))


def _root(square: float, half: float, constant: float) -> float:
    """The smaller root of square t² - 2 half t + constant."""
    return constant / (half + sqrt(max(0.0, half * half - square * constant)))


def _parabola(start: Point, tip: Point, end: Point) -> Cubic:
    """The parabola from start to end whose end tangents meet at the tip."""
    return Cubic(start, start.lerp(tip, 2.0 / 3.0), end.lerp(tip, 2.0 / 3.0), end)
