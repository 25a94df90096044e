"""The side of a skirt panel or a gore from the hip down to the hem."""

from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin

from notchbook.geometry import Line, Path, Point, curve_between

CHORD_SHARE = 0.78
"""How far the chord of a curved flare turns away from where it begins, over how far it turns to the hem: half
would be the arc of a circle and look like a trumpet; more brings the turn up, so that it is nearly straight
below. Set by eye."""


@dataclass(frozen=True)
class LowerSeam:
    """The seam below the hip: ``straight`` mm as it leaves the hip, then ``flared`` mm. It leaves the hip
    with ``hip_lean`` and reaches the hem with ``hem_lean``, degrees toward the middle on the way up; where
    the two are the same it is one straight line."""

    hip_lean: float
    hem_lean: float
    straight: float
    flared: float

    @cached_property
    def path(self) -> Path:
        """From the hem up to the hip at (0, 0)."""
        hip = Point(0.0, 0.0)
        if self.hip_lean == self.hem_lean:
            return Path.line(_below(hip, self.straight + self.flared, self.hip_lean), hip)
        begin = _below(hip, self.straight, self.hip_lean)
        chord = self.flared / self._flare(begin, 1.0).length
        flare = self._flare(begin, chord)
        return Path.of(*flare.segments, Line(begin, hip)) if self.straight else flare

    @property
    def excursion(self) -> float:
        """How much farther from the middle the hem lies than the hip, mm."""
        return self.path.start.x

    def _flare(self, begin: Point, chord: float) -> Path:
        lean = self.hip_lean + CHORD_SHARE * (self.hem_lean - self.hip_lean)
        end = _below(begin, chord, lean)
        return Path.of(curve_between(end, 90.0 + self.hem_lean, begin, 90.0 + self.hip_lean))


def _below(point: Point, length: float, lean: float) -> Point:
    return point + Point(length * sin(radians(lean)), -length * cos(radians(lean)))
