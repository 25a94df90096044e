"""The crotch curve: from the straight center to the crotch point, as deep into its corner as is wanted.

The corner is the foot of the straight center on the crotch level. The curve keeps within the triangle of its
two end tangents, so that it bends one way only; how far its handles reach toward the tip of that triangle
sets how deep it lies in the corner. So a long extension too gives a hollow and no diagonal.
"""

from dataclasses import dataclass
from math import atan2, cos, degrees, radians, sin, sqrt

from notchbook.blocks.legs.closing import closed
from notchbook.blocks.legs.one_root import one_root
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Point, direction
from notchbook.geometry.solve import solve_rising

SQRT_HALF = sqrt(0.5)

_PLACES = 40
"""On a curve, at which its roundness is looked at."""

_CLOSE = 1e-6
"""mm: a corner depth that is met."""


@dataclass(frozen=True, slots=True)
class Corner:
    """The frame of a crotch curve: foot of the straight center, its slant (degrees) and the crotch point.

    ``lean`` is the angle below the level at which the curve arrives at the crotch point, degrees.
    """

    foot: Point
    slant: float
    fork: Point
    lean: float

    @property
    def extension(self) -> float:
        """Along the crotch level from the foot to the crotch point, mm."""
        return self.foot.x - self.fork.x

    def on_center(self, up: float) -> Point:
        """The place on the straight center so far up from its foot."""
        return self.foot + direction(90.0 - self.slant) * up

    @property
    def tip(self) -> float:
        """How far up the center the end tangent of the curve meets it, mm."""
        lean, across = radians(self.lean), self.foot - self.fork
        return (across.x * sin(lean) - across.y * cos(lean)) / cos(lean + radians(self.slant))


@dataclass(frozen=True, slots=True)
class CrotchCurve:
    """A drawn curve, and how deep it lies in its corner, mm."""

    curve: Cubic
    depth: float

    @property
    def least_radius(self) -> float:
        """The radius where it bends most, mm."""
        most = 0.0
        for step in range(_PLACES + 1):
            way, bend = (f(step / _PLACES) for f in (self.curve.derivative, self.curve.second_derivative))
            most = max(most, abs(way.cross(bend)) / way.norm() ** 3)
        return 1.0 / most

    @property
    def end_hollow(self) -> float:
        """How far the last third of the curve lies from the straight way between its ends, over that way."""
        begins = self.curve.parameter_at(2.0 / 3.0 * self.curve.length)
        start, end = self.curve.at(begins), self.curve.end
        chord = end - start
        away = (
            abs(chord.cross(self.curve.at(begins + (1.0 - begins) * step / _PLACES) - start))
            for step in range(_PLACES)
        )
        return max(away) / chord.dot(chord)


def flattest_lean(corner: Corner, depth: float, share: float) -> float:
    """The lean at the crotch point whose end tangent passes the corner, at 45 degrees, at this share of the
    depth: steeper, and the curve is a hook that comes no nearer to its corner. Degrees."""
    aside = share * depth * SQRT_HALF
    across, up = corner.foot - corner.fork, corner.fork.y - corner.foot.y
    return degrees(atan2(aside - up, across.x - aside))


def crotch_curve(corner: Corner, wanted_depth: float, start_share: float) -> CrotchCurve:
    """The curve whose corner depth is the wanted one, or as near to it as its limits allow.

    ``start_share`` is how far up the center it usually begins, over the extension. DraftRefused
    ``trousers-crotch-flat`` where the inseam leans so far that no hollow is left.
    """
    tip, extension = corner.tip, corner.extension
    if extension <= 0.0 or tip < proportion("curve.lowest_tip") * extension:
        raise DraftRefused("trousers-crotch-flat", lean=corner.lean, extension=extension)
    low = max(
        tip + proportion("curve.least_straight") * extension, proportion("curve.lowest_start") * extension
    )
    usual = max(start_share * extension, low)
    least, most = proportion("curve.least_reach"), proportion("curve.most_reach")
    reach = _reach_through(corner, tip, usual, wanted_depth, least, most)
    drawn = _drawn(corner, tip, usual, reach)
    if abs(drawn.depth - wanted_depth) < _CLOSE:
        return drawn
    high = max(proportion("curve.highest_start") * extension, usual)
    start = (
        closed(lambda up: _drawn(corner, tip, up, reach).depth - wanted_depth, usual, 0.3, low, high, 5.0)
        if _is_between(corner, tip, reach, wanted_depth, low, high)
        else (low if drawn.depth > wanted_depth else high)
    )
    return _drawn(corner, tip, start, reach)


def _is_between(corner: Corner, tip: float, reach: float, wanted: float, low: float, high: float) -> bool:
    return _drawn(corner, tip, low, reach).depth < wanted < _drawn(corner, tip, high, reach).depth


def _reach_through(
    corner: Corner, tip: float, start: float, depth: float, least: float, most: float
) -> float:
    """The reach of the handles with which the curve lies so deep in its corner, kept within its limits.

    At a parameter t the curve is A(t) + reach C(t); that it goes through the place in the corner leaves one
    equation in t.
    """
    first, peak, fork = corner.on_center(start), corner.on_center(tip), corner.fork
    place = corner.foot + direction(135.0) * depth
    to_peak, from_fork = peak - first, peak - fork

    def middle(t: float) -> Point:
        return first * ((1.0 - t) ** 2 * (1.0 + 2.0 * t)) + fork * (t * t * (3.0 - 2.0 * t))

    def pull(t: float) -> Point:
        return to_peak * (3.0 * t * (1.0 - t) ** 2) + from_fork * (3.0 * t * t * (1.0 - t))

    def beside(t: float) -> float:
        return (place - middle(t)).cross(to_peak * (1.0 - t) + from_fork * t)

    if _drawn(corner, tip, start, least).depth <= depth:
        return least
    if (place - first).cross(to_peak) * (place - fork).cross(from_fork) >= 0.0:
        return most
    t = solve_rising(beside, 0.5, 0.25, 0.0, 1.0)
    way = pull(t)
    return min(most, max(least, (place - middle(t)).dot(way) / way.dot(way)))


def _drawn(corner: Corner, tip: float, start: float, reach: float) -> CrotchCurve:
    first, peak = corner.on_center(start), corner.on_center(tip)
    curve = Cubic(first, first.lerp(peak, reach), corner.fork.lerp(peak, reach), corner.fork)
    return CrotchCurve(curve, _corner_depth(curve, corner.foot))


def _corner_depth(curve: Cubic, foot: Point) -> float:
    """The way from the foot at 45 degrees up toward the crotch point to the curve, mm."""
    (x1, x2, x3), (y1, y2, y3) = curve.powers
    start = curve.start - foot
    place = one_root(start.x + start.y, x1 + y1, x2 + y2, x3 + y3)
    return (curve.at(place) - foot).norm()
