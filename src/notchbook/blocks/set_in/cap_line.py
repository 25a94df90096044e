"""Half a cap as a line of given length: hollow like the armhole, then round to the crown.

The line is given by how it turns along its length, so that its length is exact whatever its shape:

* from the underarm it turns as the armhole does (by the share ``deeper`` more, where it must be straighter
  later), all of it at first, then less and less, evenly, until it goes straight at the place ``turn_over``
  (its one inflection);
* from there it turns the other way, more and more over the share ``rise`` of the rest, then evenly (or
  less and less, down to the share ``top`` of the strongest turning), until it is level at the crown.

What comes out are its width and its height.
"""

import math
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.lower_armhole import LowerArmhole

_HOLLOW_STEPS = 30
_NODES = (
    (0.03376524289842399, 0.08566224618958517),
    (0.16939530676686776, 0.18038078652406930),
    (0.38069040695840156, 0.23395696728634552),
    (0.61930959304159844, 0.23395696728634552),
    (0.83060469323313224, 0.18038078652406930),
    (0.96623475710157601, 0.08566224618958517),
)
"""Places in [0, 1] and weights of the 6-point rule of Gauss (Abramowitz and Stegun 1964, table 25.4)."""

Place = tuple[float, float, float]
"""Inward (mm), up (mm) and heading (radians from inward toward up)."""


@dataclass(frozen=True)
class CapLine:
    """Half a cap. ``length`` runs to the crown, ``tilt`` (radians) is the lean of the underarm seam."""

    lower: LowerArmhole
    length: float
    turn_over: float
    deeper: float
    rise: float
    top: float
    tilt: float

    @cached_property
    def hollow(self) -> tuple[Place, ...]:
        """Places at even steps from the underarm to the turn-over."""
        step = self.turn_over / _HOLLOW_STEPS
        ramp = self.turn_over * figure("cap.ramp_share")
        followed = self.lower.even_headings(step, _HOLLOW_STEPS)
        heading = followed[0] + self.tilt
        x = y = 0.0
        found = [(x, y, heading)]
        turn_over, by, cosine, sine = self.turn_over, 1.0 + self.deeper, math.cos, math.sin
        # Written out: this loop is where a sleeve spends its time.
        for index, (before, after) in enumerate(pairwise(followed)):
            share = (turn_over - (index + 0.5) * step) / ramp
            turn = (share if share < 1.0 else 1.0) * by * (after - before)
            middle = heading + turn / 2.0
            x, y, heading = x + cosine(middle) * step, y + sine(middle) * step, heading + turn
            found.append((x, y, heading))
        return tuple(found)

    @property
    def steepest(self) -> float:
        """The heading at the turn-over, radians: the steepest of the line."""
        return self.hollow[-1][2]

    @cached_property
    def end(self) -> Place:
        """The crown."""
        return self.at(self.length)

    def at(self, distance: float) -> Place:
        """The place at a distance from the underarm, mm."""
        if distance <= self.turn_over:
            return self._hollow_at(distance)
        x, y, heading = self.hollow[-1]
        rest = self.length - self.turn_over
        share = min((distance - self.turn_over) / rest, 1.0)
        stops = [0.0, min(self.rise, share), share] if share > self.rise else [0.0, share]
        for low, high in pairwise(stops):
            for node, weight in _NODES:
                way = heading * (1.0 - self._turned(low + node * (high - low)))
                x += math.cos(way) * weight * (high - low) * rest
                y += math.sin(way) * weight * (high - low) * rest
        return x, y, heading * (1.0 - self._turned(share))

    def _turned(self, share: float) -> float:
        """The share of its round that is turned at a share of the way from turn-over to crown."""
        rise, fall = self.rise, 1.0 - self.rise
        whole = (rise + fall * (1.0 + self.top)) / 2.0
        if share < rise:
            return share * share / (2.0 * rise) / whole
        past = share - rise
        lost = (1.0 - self.top) * past * past / (2.0 * fall) if fall > 0.0 else 0.0
        return (rise / 2.0 + past - lost) / whole

    def _hollow_at(self, distance: float) -> Place:
        step = self.turn_over / _HOLLOW_STEPS
        index = min(int(distance / step), _HOLLOW_STEPS - 1)
        share = distance / step - index
        before, after = self.hollow[index], self.hollow[index + 1]
        x, y, heading = (low + share * (high - low) for low, high in zip(before, after, strict=True))
        return x, y, heading

    def laid_gap(self, reach: float) -> float:
        """The greatest distance of the first ``reach`` mm from the armhole, the underarms together, mm."""
        count = math.ceil(reach / 5.0)
        return max(abs(self.gap_at(reach * index / count)) for index in range(1, count + 1))

    def gap_at(self, distance: float) -> float:
        """How far one place of the cap lies off the armhole, the underarms laid together, mm.

        Positive where the cap runs outside the armhole (lower and farther inward), negative inside it.
        """
        cosine, sine = math.cos(self.tilt), math.sin(self.tilt)
        x, y, _ = self.at(distance)
        return self.lower.gap_to(x * cosine + y * sine, y * cosine - x * sine, distance)
