"""The seam of a gore from the hip up to the waist."""

from dataclasses import dataclass
from math import cos, radians, sin

from notchbook.geometry import Cubic, Point, curve_between

LEAN_SHARE = 0.6
"""How far the seam turns on beyond its chord at the waist, over how far its chord leans off the direction at
the hip. Set by eye: with 1.6 times the lean of the chord alone most seams bend back."""


@dataclass(frozen=True, slots=True)
class UpperSeam:
    """The seam above the hip: it leaves the hip with ``hip_lean`` and its chord leans by ``chord_lean``,
    degrees toward the middle of the gore; ``length`` is the hip depth, mm."""

    hip_lean: float
    chord_lean: float
    length: float

    @property
    def waist_lean(self) -> float:
        """How the seam leans at the waist, degrees."""
        return self.chord_lean + LEAN_SHARE * (self.chord_lean - self.hip_lean)

    @property
    def chord(self) -> float:
        """The straight way from hip to waist, mm: the shape is drawn with chord 1 and then enlarged."""
        return self.length / self._shape(1.0).length

    @property
    def take_in(self) -> float:
        """How much nearer to the middle the waist lies than the hip, mm."""
        return self.chord * sin(radians(self.chord_lean))

    def curve(self) -> Cubic:
        """From the hip at (0, 0) up to the waist."""
        return self._shape(self.chord)

    def _shape(self, chord: float) -> Cubic:
        lean = radians(self.chord_lean)
        waist = Point(-chord * sin(lean), chord * cos(lean))
        return curve_between(Point(0.0, 0.0), 90.0 + self.hip_lean, waist, 90.0 + self.waist_lean)
