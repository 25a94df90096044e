"""One smooth cubic from two ends and two directions."""

import math
from dataclasses import dataclass

from notchbook.errors import GeometryError
from notchbook.geometry.cubic import Cubic
from notchbook.geometry.point import Point, direction
from notchbook.geometry.tolerance import TOLERANCE

CONVEX_SHARE = 0.8
"""Greatest share of a side of the tangent triangle that a handle may take: below 1 no inflection is possible.

Common practice in our own drafts, no source; at 1 both handles would meet in the tip of the triangle.
"""

GREATEST_VELOCITY = 4.0
"""A handle is never longer than this many chords: the cap of Hobby's own program (from memory)."""


@dataclass(frozen=True, slots=True)
class _Ends:
    """Two ends: the chord (mm) and the angles (radians) by which the curve leaves and meets it."""

    chord: float
    leaving: float
    arriving: float


def curve_between(
    start: Point,
    start_direction_deg: float,
    end: Point,
    end_direction_deg: float,
    start_pull: float = 1.0,
    end_pull: float = 1.0,
    keep_convex: bool = True,
) -> Cubic:
    """The smooth cubic that leaves ``start`` and reaches ``end`` in the given directions of travel.

    The handles follow the velocity formula of J. D. Hobby, "Smooth, easy to compute interpolating
    splines", Discrete and Computational Geometry 1 (1986): close to the shape of a bent batten. The
    pulls multiply the handles: more than 1 keeps the end direction longer.

    With ``keep_convex`` both handles stay within 0.8 of their side of the triangle of the two
    tangents, where there is one, so that no inflection appears. Where the directions ask for an S
    there is none and nothing is cut.

    Directions in degrees. GeometryError ``points-coincide`` when the ends do, ``pull-not-positive``.
    """
    chord = end - start
    if chord.norm() <= TOLERANCE.join_mm:
        raise GeometryError("points-coincide", point=(start.x, start.y))
    if not (0.0 < start_pull < math.inf and 0.0 < end_pull < math.inf):
        raise GeometryError("pull-not-positive", start_pull=start_pull, end_pull=end_pull)
    leaving, arriving = direction(start_direction_deg), direction(end_direction_deg)
    ends = _Ends(
        chord.norm(),
        math.atan2(chord.cross(leaving), chord.dot(leaving)),
        math.atan2(arriving.cross(chord), arriving.dot(chord)),
    )
    first = ends.chord * velocity(ends.leaving, ends.arriving) * start_pull
    last = ends.chord * velocity(ends.arriving, ends.leaving) * end_pull
    if keep_convex:
        first_limit, last_limit = _triangle_sides(ends)
        first, last = min(first, CONVEX_SHARE * first_limit), min(last, CONVEX_SHARE * last_limit)
    return Cubic(start, start + leaving * first, end - arriving * last, end)


def velocity(here: float, there: float) -> float:
    """The length of the handle as a share of the chord, for the angles (radians) at its end and the other.

    Hobby 1986; both angles are measured so that they are equal for an arc of a circle.
    """
    sine_here, sine_there = math.sin(here), math.sin(there)
    cosine_here, cosine_there = math.cos(here), math.cos(there)
    root_5 = math.sqrt(5.0)
    shape = (
        math.sqrt(2.0)
        * (sine_here - sine_there / 16.0)
        * (sine_there - sine_here / 16.0)
        * (cosine_here - cosine_there)
    )
    size = 1.0 + 0.5 * (root_5 - 1.0) * cosine_here + 0.5 * (3.0 - root_5) * cosine_there
    share = (2.0 + shape) / (3.0 * size) if size > 0.0 else GREATEST_VELOCITY
    return min(share, GREATEST_VELOCITY)


def _triangle_sides(ends: _Ends) -> tuple[float, float]:
    """The distances from the ends to the meeting of the tangents, mm; infinite when there is none ahead."""
    leaving, arriving = math.sin(ends.leaving), math.sin(ends.arriving)
    tip = math.sin(ends.leaving + ends.arriving)
    is_triangle = leaving * arriving > 0.0 and abs(ends.leaving + ends.arriving) < math.pi
    if not is_triangle or tip == 0.0:
        return math.inf, math.inf
    return ends.chord * arriving / tip, ends.chord * leaving / tip
