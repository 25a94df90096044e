"""Points, which are vectors as well."""

import math
from dataclasses import dataclass

from notchbook.errors import GeometryError

_RIGHT_ANGLES = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))


def cosine_and_sine(degrees: float) -> tuple[float, float]:
    """Cosine and sine of an angle in degrees; exact at multiples of 90."""
    if not math.isfinite(degrees):
        raise GeometryError("place-not-finite", value=degrees)
    turns, rest = divmod(degrees, 90.0)
    if rest == 0.0:
        return _RIGHT_ANGLES[int(turns) % 4]
    radians = math.radians(degrees)
    return math.cos(radians), math.sin(radians)


@dataclass(frozen=True, slots=True)
class Point:
    """A place or a vector in the plane, mm, y up. Numbers that are not finite are refused."""

    x: float
    y: float

    def __post_init__(self) -> None:
        if not math.isfinite(self.x + self.y):
            raise GeometryError("place-not-finite", value=(self.x, self.y))

    def __add__(self, other: "Point") -> "Point":
        return Point(self.x + other.x, self.y + other.y)

    def __sub__(self, other: "Point") -> "Point":
        return Point(self.x - other.x, self.y - other.y)

    def __mul__(self, factor: float) -> "Point":
        return Point(self.x * factor, self.y * factor)

    __rmul__ = __mul__

    def __truediv__(self, divisor: float) -> "Point":
        if divisor == 0.0:
            raise GeometryError("division-by-zero")
        return Point(self.x / divisor, self.y / divisor)

    def __neg__(self) -> "Point":
        return Point(-self.x, -self.y)

    def dot(self, other: "Point") -> float:
        """The dot product, mm²."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: "Point") -> float:
        """The cross product, mm²: positive when ``other`` lies to the left of this vector."""
        return self.x * other.y - self.y * other.x

    def norm(self) -> float:
        """The length of the vector, mm."""
        return math.hypot(self.x, self.y)

    def unit(self) -> "Point":
        """The vector of length 1 in this direction; GeometryError ``no-direction`` for a zero vector."""
        size = math.hypot(self.x, self.y)
        if size == 0.0:
            raise GeometryError("no-direction")
        return Point(self.x / size, self.y / size)

    def perpendicular(self) -> "Point":
        """The vector turned by +90 degrees, to the left."""
        return Point(-self.y, self.x)

    def rotated(self, degrees: float, about: "Point | None" = None) -> "Point":
        """The point turned counter-clockwise about ``about`` (the origin when left out)."""
        cosine, sine = cosine_and_sine(degrees)
        center_x, center_y = (0.0, 0.0) if about is None else (about.x, about.y)
        x, y = self.x - center_x, self.y - center_y
        return Point(center_x + cosine * x - sine * y, center_y + sine * x + cosine * y)

    def distance_to(self, other: "Point") -> float:
        """The straight distance to another point, mm."""
        return math.hypot(other.x - self.x, other.y - self.y)

    def direction(self) -> float:
        """The angle of the vector in degrees, in (-180, 180]; ``no-direction`` for a zero vector."""
        if self.x == 0.0 and self.y == 0.0:
            raise GeometryError("no-direction")
        angle = math.degrees(math.atan2(self.y, self.x))
        return 180.0 if angle <= -180.0 else angle

    def lerp(self, other: "Point", t: float) -> "Point":
        """The point at the share ``t`` of the way to ``other``: 0 here, 1 there."""
        return Point(self.x + (other.x - self.x) * t, self.y + (other.y - self.y) * t)


def direction(degrees: float) -> Point:
    """The unit vector at this angle: 0 along +x, 90 along +y."""
    return Point(*cosine_and_sine(degrees))
