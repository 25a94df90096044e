"""Straight segments."""

from dataclasses import dataclass
from functools import cached_property

from notchbook.errors import GeometryError
from notchbook.geometry.box import Box
from notchbook.geometry.places import clamped
from notchbook.geometry.point import Point
from notchbook.geometry.tolerance import TOLERANCE
from notchbook.geometry.transform import Transform


@dataclass(frozen=True)
class Line:
    """A straight segment from ``start`` to ``end``, mm. It may have no length; then it has no direction."""

    start: Point
    end: Point

    @cached_property
    def length(self) -> float:
        """The length, mm."""
        return self.start.distance_to(self.end)

    def at(self, t: float) -> Point:
        """The point at the parameter ``t`` in [0, 1]."""
        return self.end if t == 1.0 else self.start.lerp(self.end, t)

    def derivative(self, t: float) -> Point:  # noqa: ARG002 - the same at every parameter
        """The derivative by the parameter, mm."""
        return self.end - self.start

    def parameter_at(self, distance: float) -> float:
        """The parameter at a distance from the start, mm."""
        place = clamped(distance, self.length)
        return place / self.length if self.length else 0.0

    def distance_at(self, t: float) -> float:
        """The distance from the start at the parameter ``t``, mm."""
        return self.length * t

    def point_at(self, distance: float) -> Point:
        """The point at a distance from the start, mm."""
        return self.at(self.parameter_at(distance))

    def tangent_at(self, distance: float) -> Point:
        """The unit direction of travel; GeometryError ``no-direction`` when there is no length."""
        clamped(distance, self.length)
        return self.tangent(0.0)

    def tangent(self, t: float) -> Point:  # noqa: ARG002 - the same at every parameter
        """The unit direction of travel; GeometryError ``no-direction`` when there is no length."""
        if self.length <= TOLERANCE.join_mm:
            raise GeometryError("no-direction")
        return (self.end - self.start) / self.length

    def curvature_at(self, distance: float) -> float:
        """Zero: a line does not turn."""
        clamped(distance, self.length)
        return 0.0

    def curvature(self, t: float) -> float:  # noqa: ARG002 - the same at every parameter
        """Zero: a line does not turn."""
        return 0.0

    def split_at(self, distance: float) -> tuple["Line", "Line"]:
        """The parts before and after a distance."""
        return self.split(self.parameter_at(distance))

    def split(self, t: float) -> tuple["Line", "Line"]:
        """The parts before and after the parameter ``t``."""
        middle = self.at(t)
        return Line(self.start, middle), Line(middle, self.end)

    def reversed(self) -> "Line":
        """The same line traveled the other way."""
        return Line(self.end, self.start)

    def transformed(self, transform: Transform) -> "Line":
        """The image of the line."""
        return Line(transform.apply(self.start), transform.apply(self.end))

    def with_ends(self, start: Point, end: Point) -> "Line":
        """The line between other ends."""
        return Line(start, end)

    def bounds(self) -> Box:
        """The smallest upright box around the line."""
        return self._bounds

    @cached_property
    def _bounds(self) -> Box:
        return Box.around((self.start, self.end))
