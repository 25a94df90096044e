"""Arc lengths of cubics: Gauss-Legendre sums on as many pieces as the curve needs.

The speed of a cubic is the root of a quartic; it is smooth except near cusps, where the pieces are
halved until two estimates agree.
"""

import math
from bisect import bisect_right
from dataclasses import dataclass

from notchbook.geometry.tolerance import TOLERANCE

GAUSS_LEGENDRE_16 = (
    (0.09501250983763744, 0.18945061045506850),
    (0.28160355077925891, 0.18260341504492359),
    (0.45801677765722739, 0.16915651939500254),
    (0.61787624440264375, 0.14959598881657673),
    (0.75540440835500303, 0.12462897125553387),
    (0.86563120238783174, 0.09515851168249278),
    (0.94457502307323258, 0.06225352393864789),
    (0.98940093499164993, 0.02715245941175409),
)
"""Places and weights of the 16-point rule, one half (Abramowitz and Stegun 1964, table 25.4)."""

_DEPTH = 32
"""Halvings after which a piece is too short to matter, even at a cusp."""

_NEWTON_STEPS = 60

Coefficients = tuple[float, float, float, float, float, float]
"""The derivative as (x0, x1, x2, y0, y1, y2): x' = x0 + x1 t + x2 t², y' likewise."""


@dataclass(frozen=True, slots=True)
class ArcTable:
    """The arc length of a cubic at a few knots, with exact sums in between.

    ``knots`` are parameters from 0 to 1; ``lengths`` are the arc lengths there, mm.
    """

    speed: Coefficients
    knots: tuple[float, ...]
    lengths: tuple[float, ...]

    @property
    def total(self) -> float:
        """The whole length, mm."""
        return self.lengths[-1]

    def distance_at(self, t: float) -> float:
        """The arc length from the start to the parameter ``t``, mm."""
        if t <= 0.0:
            return 0.0
        if t >= 1.0:
            return self.lengths[-1]
        index = bisect_right(self.knots, t) - 1
        return self.lengths[index] + _sum(self.speed, self.knots[index], t)

    def parameter_at(self, distance: float) -> float:
        """The parameter at an arc length; the ends where the distance lies outside."""
        if distance <= 0.0:
            return 0.0
        if distance >= self.lengths[-1]:
            return 1.0
        index = bisect_right(self.lengths, distance) - 1
        knot, low, high = self.knots[index], self.knots[index], self.knots[index + 1]
        wanted = distance - self.lengths[index]
        span = self.lengths[index + 1] - self.lengths[index]
        t = low + (high - low) * wanted / span
        for _ in range(_NEWTON_STEPS):
            over = _sum(self.speed, knot, t) - wanted
            if abs(over) < TOLERANCE.arc_length_mm:
                break
            low, high = (low, t) if over > 0.0 else (t, high)
            speed = _speed_at(self.speed, t)
            proposed = t - over / speed if speed > 0.0 else low
            t = proposed if low < proposed < high else (low + high) / 2.0
        return t


def arc_table(speed: Coefficients) -> ArcTable:
    """The arc length table of a cubic with this derivative."""
    knots, lengths = [0.0], [0.0]
    waiting = [(0.0, 1.0, _sum(speed, 0.0, 1.0), 0)]
    while waiting:
        start, end, whole, depth = waiting.pop()
        middle = (start + end) / 2.0
        first, second = _sum(speed, start, middle), _sum(speed, middle, end)
        if abs(first + second - whole) <= TOLERANCE.arc_length_mm or depth >= _DEPTH:
            for knot, length in ((middle, first), (end, second)):
                knots.append(knot)
                lengths.append(lengths[-1] + length)
        else:
            waiting.append((middle, end, second, depth + 1))
            waiting.append((start, middle, first, depth + 1))
    return ArcTable(speed, tuple(knots), tuple(lengths))


def _speed_at(speed: Coefficients, t: float) -> float:
    x0, x1, x2, y0, y1, y2 = speed
    return math.hypot(x0 + t * (x1 + t * x2), y0 + t * (y1 + t * y2))


def _sum(speed: Coefficients, start: float, end: float) -> float:
    """The arc length between two parameters by the 16-point rule."""
    x0, x1, x2, y0, y1, y2 = speed
    middle, half = (start + end) / 2.0, (end - start) / 2.0
    total, root = 0.0, math.sqrt
    for place, weight in GAUSS_LEGENDRE_16:
        reach = half * place
        t, u = middle - reach, middle + reach
        dx, dy = x0 + t * (x1 + t * x2), y0 + t * (y1 + t * y2)
        ex, ey = x0 + u * (x1 + u * x2), y0 + u * (y1 + u * y2)
        total += weight * (root(dx * dx + dy * dy) + root(ex * ex + ey * ey))
    return total * half
