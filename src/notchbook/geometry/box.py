"""Upright boxes around shapes."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from notchbook.errors import GeometryError
from notchbook.geometry.point import Point


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle, mm."""

    min_x: float
    min_y: float
    max_x: float
    max_y: float

    @staticmethod
    def around(points: Iterable[Point]) -> "Box":
        """The smallest box with all these points; GeometryError ``path-empty`` without any."""
        listed = list(points)
        if not listed:
            raise GeometryError("path-empty")
        xs, ys = [point.x for point in listed], [point.y for point in listed]
        return Box(min(xs), min(ys), max(xs), max(ys))

    @property
    def width(self) -> float:
        """Extent along x, mm."""
        return self.max_x - self.min_x

    @property
    def height(self) -> float:
        """Extent along y, mm."""
        return self.max_y - self.min_y

    @property
    def center(self) -> Point:
        """The middle of the box."""
        return Point((self.min_x + self.max_x) / 2.0, (self.min_y + self.max_y) / 2.0)

    def union(self, other: "Box") -> "Box":
        """The smallest box around both."""
        return Box(
            min(self.min_x, other.min_x),
            min(self.min_y, other.min_y),
            max(self.max_x, other.max_x),
            max(self.max_y, other.max_y),
        )

    def is_near(self, other: "Box", margin_mm: float = 0.0) -> bool:
        """Whether the boxes overlap or come within the margin of each other."""
        return (
            self.min_x <= other.max_x + margin_mm
            and other.min_x <= self.max_x + margin_mm
            and self.min_y <= other.max_y + margin_mm
            and other.min_y <= self.max_y + margin_mm
        )

    def holds(self, point: Point) -> bool:
        """Whether the point lies in the box or on its edge."""
        return self.min_x <= point.x <= self.max_x and self.min_y <= point.y <= self.max_y

    def gap_to(self, point: Point) -> float:
        """The distance from a point to the box, mm; 0 inside."""
        over_x = max(self.min_x - point.x, 0.0, point.x - self.max_x)
        over_y = max(self.min_y - point.y, 0.0, point.y - self.max_y)
        return math.hypot(over_x, over_y)
