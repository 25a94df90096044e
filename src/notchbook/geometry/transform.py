"""Affine maps of the plane: moves, turns, mirrors."""

from dataclasses import dataclass

from notchbook.errors import GeometryError
from notchbook.geometry.point import Point, cosine_and_sine


@dataclass(frozen=True, slots=True)
class Transform:
    """The map x' = a x + c y + e, y' = b x + d y + f (mm)."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    @staticmethod
    def identity() -> "Transform":
        """The map that moves nothing."""
        return Transform()

    @staticmethod
    def translation(dx: float, dy: float) -> "Transform":
        """A move by dx, dy."""
        return Transform(e=dx, f=dy)

    @staticmethod
    def rotation(degrees: float, about: Point | None = None) -> "Transform":
        """A counter-clockwise turn about a point (the origin when left out)."""
        cosine, sine = cosine_and_sine(degrees)
        center = Point(0.0, 0.0) if about is None else about
        return _about(cosine, sine, -sine, cosine, center, center)

    @staticmethod
    def reflection(first: Point, second: Point) -> "Transform":
        """The mirror image across the line through two points; ``no-direction`` when they coincide."""
        along = (second - first).unit()
        cosine, sine = along.x * along.x - along.y * along.y, 2.0 * along.x * along.y
        return _about(cosine, sine, sine, -cosine, first, first)

    @staticmethod
    def carrying(from_start: Point, from_end: Point, to_start: Point, to_end: Point) -> "Transform":
        """The rigid motion that lays ``from_start`` on ``to_start`` and one direction on the other.

        The lengths may differ: only the starts meet. ``no-direction`` when one pair coincides.
        """
        before, after = (from_end - from_start).unit(), (to_end - to_start).unit()
        cosine, sine = before.dot(after), before.cross(after)
        return _about(cosine, sine, -sine, cosine, from_start, to_start)

    def then(self, other: "Transform") -> "Transform":
        """This map first, the other one after it."""
        return Transform(
            other.a * self.a + other.c * self.b,
            other.b * self.a + other.d * self.b,
            other.a * self.c + other.c * self.d,
            other.b * self.c + other.d * self.d,
            other.a * self.e + other.c * self.f + other.e,
            other.b * self.e + other.d * self.f + other.f,
        )

    def inverse(self) -> "Transform":
        """The map back; GeometryError ``transform-flattens`` when there is none."""
        size = self.determinant
        if size == 0.0:
            raise GeometryError("transform-flattens")
        a, b, c, d = self.d / size, -self.b / size, -self.c / size, self.a / size
        return Transform(a, b, c, d, -(a * self.e + c * self.f), -(b * self.e + d * self.f))

    def apply(self, point: Point) -> Point:
        """Where the point goes."""
        return Point(
            self.a * point.x + self.c * point.y + self.e,
            self.b * point.x + self.d * point.y + self.f,
        )

    @property
    def determinant(self) -> float:
        """The factor of areas: 1 for a rigid motion, -1 for a mirror image."""
        return self.a * self.d - self.b * self.c

    @property
    def is_reflection(self) -> bool:
        """Whether left and right are swapped."""
        return self.determinant < 0.0


def _about(a: float, b: float, c: float, d: float, source: Point, target: Point) -> Transform:
    """The linear map that carries ``source`` to ``target``."""
    return Transform(
        a, b, c, d, target.x - a * source.x - c * source.y, target.y - b * source.x - d * source.y
    )
