"""The shapes of a neckline, from the center to the shoulder seam, each in the direction in which it
is to arrive there."""

from dataclasses import dataclass
from typing import Final, Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Cubic, Line, Path, Point, curve_between, direction
from notchbook.style.edges.figures import LEAST_NECK, NECK_BEND
from notchbook.style.edges.one_point_curve import tangent_sides

CURVED: Final = ("round", "scoop", "u")
"""The shapes that go on in the slant of the neck before; the others are square to the shoulder seam."""

NeckShape = Literal["round", "scoop", "u", "boat", "v", "square"]
"""``round``: one even curve; ``scoop``: fuller; ``u``: straight from the shoulder to a full bowl; ``boat``:
flat across and turned up at the shoulder; ``v``: straight to the center; ``square``: level, then
upright."""

_BOAT_PULLS: Final = (1.7, 0.7)
"""How long a boat keeps its direction at the center and at the shoulder. Own judgment, by eye."""

_FULL: Final = {"round": (0.8, 0.48), "scoop": (0.8, 0.62), "u": (0.9, 0.8), "boat": (0.8, 0.4)}
"""How far both handles of a full curve reach to where its two directions meet, as shares: below 1 it never
waves. A round one is as full as the neck of the bodice block, so that a little lower is a little lower all
along. Own judgment, by eye."""


@dataclass(frozen=True, slots=True)
class NeckEnds:
    """Where a neckline leaves the center and arrives at the shoulder, directions of travel in degrees.

    ``upward`` is the direction of the grain toward the shoulder.
    """

    center: Point
    leaving: float
    shoulder: Point
    arriving: float
    upward: float


def neckline(shape: NeckShape, ends: NeckEnds) -> Path:
    """The neckline of the shape; a square one has a corner at the end of its first segment.

    StepRefused ``neckline-not-below`` where the center does not lie below the shoulder far enough for a V
    or a square.
    """
    if shape == "v":
        return _pointed(ends)
    if shape == "square":
        return _square(ends)
    sides = tangent_sides(ends.center, direction(ends.leaving), ends.shoulder, direction(ends.arriving))
    if sides is None:
        return _narrow(ends, _FULL[shape])
    if shape == "boat":
        curve = curve_between(ends.center, ends.leaving, ends.shoulder, ends.arriving, *_BOAT_PULLS)
        return Path.of(curve)
    return Path.of(_bowl(ends.center, ends.leaving, ends.shoulder, ends.arriving, sides, _FULL[shape]))


def _bowl(
    start: Point,
    leaving: float,
    end: Point,
    arriving: float,
    sides: tuple[float, float],
    shares: tuple[float, float],
) -> Cubic:
    """The curve whose handles are these shares of the way to where its two directions meet."""
    return Cubic(
        start,
        start + direction(leaving) * (sides[0] * shares[0]),
        end - direction(arriving) * (sides[1] * shares[1]),
        end,
    )


def _narrow(ends: NeckEnds, shares: tuple[float, float]) -> Path:
    """Deep and narrow, so that a line square to the shoulder would run past the center: a bowl with upright
    sides, which bend near the shoulder to meet it square.

    StepRefused ``neckline-too-narrow`` where no room is left between the center and the bend.
    """
    turn, reach = _turn(ends)
    level, up = direction(ends.leaving), direction(ends.upward)
    out, rise = (turn - ends.center).dot(level), (turn - ends.center).dot(up) - reach
    if out <= LEAST_NECK.value or rise <= reach:
        raise StepRefused("neckline-too-narrow", width=max(out, 0.0), least=LEAST_NECK.value)
    top = turn - up * reach
    bowl = _bowl(ends.center, ends.leaving, top, ends.upward, (out, rise), shares)
    bend = curve_between(top, ends.upward, ends.shoulder, ends.arriving)
    return Path.of(bowl, bend)


def _turn(ends: NeckEnds) -> tuple[Point, float]:
    """Where the straight part of a V or a square turns toward the shoulder, and how far its bend reaches from
    there to both sides: the last part of it lies square to the shoulder."""
    reach = min(NECK_BEND.value / 2.0, ends.center.distance_to(ends.shoulder) / 5.0)
    return ends.shoulder - direction(ends.arriving) * reach, reach


def _pointed(ends: NeckEnds) -> Path:
    """Straight from the center, bent near the shoulder to meet it square."""
    turn, reach = _turn(ends)
    start = turn - (turn - ends.center).unit() * reach
    bend = curve_between(start, (turn - ends.center).direction(), ends.shoulder, ends.arriving)
    return Path.of(Line(ends.center, start), bend)


def _square(ends: NeckEnds) -> Path:
    """Square to the center as far as the side lies, then along the grain, bent to meet the shoulder."""
    turn, reach = _turn(ends)
    level, up = direction(ends.leaving), direction(ends.upward)
    corner = ends.center + level * (turn - ends.center).dot(level)
    rise = (turn - corner).dot(up)
    if rise <= 2.0 * reach:
        raise StepRefused("neckline-not-below", rise=rise, least=2.0 * reach)
    start = turn - up * reach
    bend = curve_between(start, ends.upward, ends.shoulder, ends.arriving)
    return Path.of(Line(ends.center, corner), Line(corner, start), bend)
