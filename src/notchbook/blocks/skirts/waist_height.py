"""How high the waist of a skirt panel lies at its center, over the hip line."""

from dataclasses import dataclass
from math import radians, tan

from notchbook.geometry import Point

FLATNESS = 0.78
"""How flat the sewn waistline lies at the center: 1 is the arc of a circle. Set by eye on drafts."""

LEAST_FLATNESS = 0.60
"""Below this the line hooks up near the side seam. Set by eye on drafts."""

ROUNDEST_LOWERED = 1.0
"""A center back that is lowered keeps its waistline no rounder than the arc of a circle, so that it does not
bend back. Own judgment."""

LEAST_RISE, USUAL_RISE = 8.0, 13.0
"""mm; a higher rise from center to side shows as an ear. Usual 8 to 13 (patternmaker's review)."""


@dataclass(frozen=True, slots=True)
class WaistHeight:
    """The waist's height at the center: measured, else so that the line is flat and rises little.

    ``side`` is the height of the waist at the side on flat cloth; by ``drop`` the center lies lower, mm.
    ``rise`` from center to side is what it shall be, mm, as near to it as the line stays fair (None: usual).
    """

    side: float
    fixed: float | None
    drop: float = 0.0
    rise: float | None = None

    def __call__(self, closed_side: Point, turn: float) -> float:
        """The height, mm: for the side point, darts closed, and the turn of the closed waist, degrees."""
        if self.fixed is not None:
            return self.fixed
        span = closed_side.x * tan(radians(turn / 2.0))
        usual = closed_side.y - FLATNESS * span
        flattest = closed_side.y - LEAST_FLATNESS * span
        if turn <= 0.0:
            return usual
        roundest = closed_side.y - ROUNDEST_LOWERED * span
        if self.rise is None:
            height = max(usual, min(flattest, self.side - USUAL_RISE))
        else:
            height = max(roundest, min(flattest, self.side - self.rise))
        return max(height - self.drop, min(height, roundest))
