"""A circle skirt in numbers: the ring, or the part of one, whose inner edge is the waist.

Closed forms of the trade: radius of the waist = waist / (2 pi share), of the hem = that + length.
"""

from dataclasses import dataclass
from math import pi, radians, sin


@dataclass(frozen=True, slots=True)
class Ring:
    """The share of a whole circle (1 is full, 1/2 half), its waist as sewn and its length, mm."""

    share: float
    waist: float
    length: float

    @property
    def waist_radius(self) -> float:
        """From the apex to the waist, mm."""
        return self.waist / (2.0 * pi * self.share)

    @property
    def hem_radius(self) -> float:
        """From the apex to the hem, mm."""
        return self.waist_radius + self.length

    def girth_at(self, depth: float) -> float:
        """The whole girth so far below the waist, mm."""
        return self.waist + 2.0 * pi * self.share * depth

    @property
    def hem(self) -> float:
        """The whole hem, mm."""
        return self.girth_at(self.length)

    @property
    def area(self) -> float:
        """The cloth inside the sew lines, mm²."""
        return pi * self.share * (self.hem_radius**2 - self.waist_radius**2)

    def span(self, panels: int) -> float:
        """Degrees that one of so many equal panels takes of the circle."""
        return 360.0 * self.share / panels

    def width_of(self, span: float) -> float:
        """The level width of a piece of this span that lies evenly to both sides of its grain, mm."""
        return 2.0 * self.hem_radius * (1.0 if span >= 180.0 else sin(radians(span / 2.0)))


def least_share(waist: float, girth: float, depth: float) -> float:
    """The least share of a circle that passes over a girth so far below the waist, mm."""
    return max(0.0, (girth - waist) / (2.0 * pi * depth))
