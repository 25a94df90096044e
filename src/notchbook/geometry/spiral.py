"""Euler spirals: curves whose curvature changes evenly along their length.

A spiral between two points with given end directions is what a thin strip of wood nearly does, and its
curvature is monotone. Found by one unknown, after R. Levien, "From Spiral to Spline" (dissertation,
University of California, Berkeley, 2009): tangent angle = bend s + growth s² / 2 for s from -1/2 to 1/2.
"""

import cmath
import math
from dataclasses import dataclass

from notchbook.errors import GeometryError
from notchbook.geometry.length import GAUSS_LEGENDRE_16
from notchbook.geometry.point import Point

_STEPS = 40
_ANGLE_NOISE = 1e-13
"""Radians: the chord of a spiral that points this near to where it should is found."""

GREATEST_ANGLE = math.radians(175.0)
"""An end direction that leaves the chord by more than this runs backward (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Spiral:
    """A spiral from ``start``, mm; ``angle`` is the direction (radians) of its middle.

    ``bend`` is the whole turn (radians, left positive), ``growth`` the change of curvature over the
    length, in turns of one length.
    """

    start: Point
    angle: float
    bend: float
    growth: float
    length: float

    def curvature_at(self, share: float) -> float:
        """The signed curvature at a share of the length, 1/mm."""
        return (self.bend + self.growth * (share - 0.5)) / self.length

    def direction_at(self, share: float) -> Point:
        """The unit direction of travel at a share of the length."""
        s = share - 0.5
        angle = self.angle + self.bend * s + self.growth * s * s / 2.0
        return Point(math.cos(angle), math.sin(angle))

    def point_at(self, share: float) -> Point:
        """The point at a share of the length."""
        reach = cmath.rect(self.length, self.angle) * _integral(self.bend, self.growth, -0.5, share - 0.5)
        return Point(self.start.x + reach.real, self.start.y + reach.imag)


def spiral_between(start: Point, leaving: float, end: Point, arriving: float) -> Spiral:
    """The spiral from ``start`` to ``end``, which leaves and reaches the chord at these angles.

    Angles in radians, left of the chord positive.

    GeometryError ``curve-not-fair`` when an end runs backward or no spiral is found.
    """
    chord = end - start
    bend, wanted = arriving - leaving, arriving + leaving
    if max(abs(leaving), abs(arriving)) > GREATEST_ANGLE:
        raise GeometryError("curve-not-fair")
    growth = _growth(bend, wanted)
    reach = _integral(bend, growth, -0.5, 0.5)
    if abs(reach) < 1e-6:
        raise GeometryError("curve-not-fair")
    along = math.atan2(chord.y, chord.x)
    return Spiral(start, along - cmath.phase(reach), bend, growth, chord.norm() / abs(reach))


def _growth(bend: float, wanted: float) -> float:
    """The growth for which the ends stand at the wanted angles from the chord: secant steps."""
    earlier, earlier_miss = 0.0, -wanted
    growth = 6.0 * wanted
    for _ in range(_STEPS):
        miss = growth / 4.0 - 2.0 * cmath.phase(_integral(bend, growth, -0.5, 0.5)) - wanted
        if abs(miss) <= _ANGLE_NOISE or growth == earlier or miss == earlier_miss:
            return growth
        step = miss * (growth - earlier) / (miss - earlier_miss)
        earlier, earlier_miss = growth, miss
        growth -= step
    raise GeometryError("curve-not-fair")


def _integral(bend: float, growth: float, low: float, high: float) -> complex:
    """The sum of unit steps along the spiral of length 1 whose middle points along +x."""
    middle, half = (low + high) / 2.0, (high - low) / 2.0
    x = y = 0.0
    for place, weight in GAUSS_LEGENDRE_16:
        for s in (middle - half * place, middle + half * place):
            angle = s * (bend + s * growth / 2.0)
            x += weight * math.cos(angle)
            y += weight * math.sin(angle)
    return complex(x * half, y * half)
