"""Cubic Bezier segments."""

import math
from dataclasses import dataclass
from functools import cached_property

from notchbook.errors import GeometryError
from notchbook.geometry.box import Box
from notchbook.geometry.length import ArcTable, arc_table
from notchbook.geometry.places import clamped
from notchbook.geometry.point import Point
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.tolerance import TOLERANCE
from notchbook.geometry.transform import Transform


@dataclass(frozen=True)
class Cubic:
    """A cubic Bezier curve, mm. Handles may lie on their ends; the direction is still defined.

    Only a curve whose four points coincide has no direction.
    """

    start: Point
    start_handle: Point
    end_handle: Point
    end: Point

    @property
    def length(self) -> float:
        """The arc length, mm, within 1e-6."""
        return self._arc.total

    def at(self, t: float) -> Point:
        """The point at the parameter ``t`` in [0, 1]."""
        if t == 0.0:
            return self.start
        if t == 1.0:
            return self.end
        (x1, x2, x3), (y1, y2, y3) = self.powers
        return Point(self.start.x + t * (x1 + t * (x2 + t * x3)), self.start.y + t * (y1 + t * (y2 + t * y3)))

    def derivative(self, t: float) -> Point:
        """The derivative by the parameter, mm."""
        (x1, x2, x3), (y1, y2, y3) = self.powers
        return Point(x1 + t * (2.0 * x2 + t * 3.0 * x3), y1 + t * (2.0 * y2 + t * 3.0 * y3))

    def second_derivative(self, t: float) -> Point:
        """The second derivative by the parameter, mm."""
        (_, x2, x3), (_, y2, y3) = self.powers
        return Point(2.0 * x2 + 6.0 * t * x3, 2.0 * y2 + 6.0 * t * y3)

    def parameter_at(self, distance: float) -> float:
        """The parameter at an arc length from the start, mm."""
        return self._arc.parameter_at(clamped(distance, self.length))

    def distance_at(self, t: float) -> float:
        """The arc length from the start to the parameter ``t``, mm."""
        return self._arc.distance_at(t)

    def point_at(self, distance: float) -> Point:
        """The point at an arc length from the start, mm."""
        return self.at(self.parameter_at(distance))

    def tangent_at(self, distance: float) -> Point:
        """The unit direction of travel at an arc length; behind the tip where that is an inner cusp."""
        return self.tangent(self.parameter_at(distance))

    def tangent(self, t: float) -> Point:
        """The unit direction of travel at a parameter; where the curve stands still, its limit there.

        At an inner cusp this is the direction after the tip; at the end, the direction of arrival.
        """
        first = self.derivative(t)
        if first.norm() > TOLERANCE.speed_mm:
            return first.unit()
        second = self.second_derivative(t)
        if second.norm() > TOLERANCE.speed_mm:
            # Near an end at which the curve comes to rest, it is still on its way there.
            comes_to_rest = t > 0.5 and self.derivative(1.0).norm() <= TOLERANCE.speed_mm
            return (-second if comes_to_rest else second).unit()
        (_, _, x3), (_, _, y3) = self.powers
        if math.hypot(x3, y3) <= TOLERANCE.speed_mm:
            raise GeometryError("no-direction")
        return Point(x3, y3).unit()

    def curvature_at(self, distance: float) -> float:
        """The signed curvature at an arc length, 1/mm: left turns positive."""
        return self.curvature(self.parameter_at(distance))

    def curvature(self, t: float) -> float:
        """The signed curvature at a parameter, 1/mm: left turns positive.

        Infinite where the curve stands still but turns (a handle of no length, a cusp).
        """
        first, second = self.derivative(t), self.second_derivative(t)
        speed = first.norm()
        if speed > TOLERANCE.speed_mm:
            return first.cross(second) / speed**3
        (_, _, x3), (_, _, y3) = self.powers
        turn = second.cross(Point(x3, y3))
        if abs(turn) <= TOLERANCE.speed_mm**2:
            return 0.0
        return math.copysign(math.inf, turn)

    def split_at(self, distance: float) -> tuple["Cubic", "Cubic"]:
        """The parts before and after an arc length."""
        return self.split(self.parameter_at(distance))

    def split(self, t: float) -> tuple["Cubic", "Cubic"]:
        """The parts before and after the parameter ``t`` (de Casteljau)."""
        first = self.start.lerp(self.start_handle, t)
        middle = self.start_handle.lerp(self.end_handle, t)
        last = self.end_handle.lerp(self.end, t)
        before, after = first.lerp(middle, t), middle.lerp(last, t)
        place = before.lerp(after, t)
        return Cubic(self.start, first, before, place), Cubic(place, after, last, self.end)

    def reversed(self) -> "Cubic":
        """The same curve traveled the other way."""
        return Cubic(self.end, self.end_handle, self.start_handle, self.start)

    def transformed(self, transform: Transform) -> "Cubic":
        """The image of the curve."""
        return Cubic(
            transform.apply(self.start),
            transform.apply(self.start_handle),
            transform.apply(self.end_handle),
            transform.apply(self.end),
        )

    def with_ends(self, start: Point, end: Point) -> "Cubic":
        """The curve with other ends; each handle moves with its end, so that the tangents stay."""
        return Cubic(start, self.start_handle + (start - self.start), self.end_handle + (end - self.end), end)

    def bounds(self) -> Box:
        """The smallest upright box around the curve (not its handles)."""
        return self._bounds

    @cached_property
    def powers(self) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
        """The coefficients of t, t², t³ of x and of y (the constant terms are the start)."""
        p, q, r, s = self.start, self.start_handle, self.end_handle, self.end
        return (
            (3.0 * (q.x - p.x), 3.0 * (p.x - 2.0 * q.x + r.x), s.x - p.x + 3.0 * (q.x - r.x)),
            (3.0 * (q.y - p.y), 3.0 * (p.y - 2.0 * q.y + r.y), s.y - p.y + 3.0 * (q.y - r.y)),
        )

    @cached_property
    def _arc(self) -> ArcTable:
        (x1, x2, x3), (y1, y2, y3) = self.powers
        return arc_table((x1, 2.0 * x2, 3.0 * x3, y1, 2.0 * y2, 3.0 * y3))

    @cached_property
    def _bounds(self) -> Box:
        ends = Box.around((self.start, self.end))
        if ends.holds(self.start_handle) and ends.holds(self.end_handle):
            return ends  # a curve stays within its four points
        places = [self.start, self.end]
        for one, two, three in self.powers:
            places.extend(self.at(t) for t in unit_roots((one, 2.0 * two, 3.0 * three)))
        return Box.around(places)
