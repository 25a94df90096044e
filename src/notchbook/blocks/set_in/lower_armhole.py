"""The lower part of the armhole as the hand traces it: directions at even steps from the underarm."""

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from notchbook.geometry import Path

_STEP = 2.0
"""mm between the traced places."""
_REACH = 160.0
"""mm from the underarm; no cap follows the armhole farther."""
_AROUND = 16.0
"""mm along the armhole on either side, in which the nearest place is sought."""
_PARTS = 24
"""Places looked at on each segment of the armhole."""


@dataclass(frozen=True, slots=True)
class LowerArmhole:
    """The lower armhole of front or back, each seen as running inward along +x and then up.

    ``headings`` are radians from inward toward up, ``corners`` the places (inward, up; mm), both at every
    2 mm from the underarm.
    """

    headings: tuple[float, ...]
    corners: tuple[tuple[float, float], ...]

    def heading(self, distance: float) -> float:
        """The direction at a distance from the underarm, radians; beyond the trace that of its end."""
        whole = int(distance / _STEP)
        if whole >= len(self.headings) - 1:
            return self.headings[-1]
        share = distance / _STEP - whole
        return self.headings[whole] * (1.0 - share) + self.headings[whole + 1] * share

    def even_headings(self, step: float, count: int) -> list[float]:
        """The directions at the underarm and after each of ``count`` steps (mm), radians."""
        headings, last = self.headings, len(self.headings) - 1
        found = []
        for index in range(count + 1):
            steps = index * step / _STEP
            whole = int(steps)
            if whole >= last:
                found.append(headings[-1])
                continue
            share = steps - whole
            found.append(headings[whole] * (1.0 - share) + headings[whole + 1] * share)
        return found

    def place(self, distance: float) -> tuple[float, float]:
        """The place at a distance from the underarm, mm; beyond the trace its end."""
        whole = min(int(distance / _STEP), len(self.corners) - 2)
        share = min(distance / _STEP - whole, 1.0)
        (x, y), (next_x, next_y) = self.corners[whole], self.corners[whole + 1]
        return x + share * (next_x - x), y + share * (next_y - y)

    def gap_to(self, x: float, y: float, near: float) -> float:
        """How far a place lies off the traced line, mm, sought round the distance ``near``.

        Positive on the outer side (lower and farther inward), negative inside the armhole.
        """
        low = max(int((near - _AROUND) / _STEP), 0)
        corners = self.corners[low : int((near + _AROUND) / _STEP) + 2]
        nearest, side = math.inf, 1.0
        # Written out, for it is gone through thousands of times for one sleeve.
        for (start_x, start_y), (end_x, end_y) in pairwise(corners):
            along_x, along_y = end_x - start_x, end_y - start_y
            off_x, off_y = x - start_x, y - start_y
            share = (off_x * along_x + off_y * along_y) / (along_x * along_x + along_y * along_y)
            share = 0.0 if share < 0.0 else min(share, 1.0)
            gap = math.hypot(off_x - share * along_x, off_y - share * along_y)
            if gap < nearest:
                nearest, side = gap, off_x * along_y - off_y * along_x
        return math.copysign(nearest, side)


@lru_cache(maxsize=64)
def lower_armhole(armhole: Path, inward: float) -> LowerArmhole:
    """Trace an armhole from the underarm; ``inward`` is +1 for the front, -1 for the back."""
    seen = _seen(armhole, inward)
    headings: list[float] = []
    corners: list[tuple[float, float]] = []
    for before, after in pairwise(seen):
        while len(headings) * _STEP <= after[0]:
            share = (len(headings) * _STEP - before[0]) / (after[0] - before[0])
            heading, x, y = (
                low + share * (high - low) for low, high in zip(before[1:], after[1:], strict=True)
            )
            headings.append(heading)
            corners.append((x, y))
    return LowerArmhole(tuple(headings), tuple(corners))


def _seen(armhole: Path, inward: float) -> list[tuple[float, float, float, float]]:
    """Distance, direction (never jumping by a full turn) and place at many parameters of the armhole."""
    found: list[tuple[float, float, float, float]] = []
    for segment in armhole.segments:
        if found and found[-1][0] > _REACH:
            break
        for part in range(_PARTS + 1):
            point, way = segment.at(part / _PARTS), segment.tangent(part / _PARTS)
            heading, x = math.atan2(way.y, inward * way.x), inward * point.x
            if not found:
                found.append((0.0, heading, x, point.y))
                continue
            distance, last, last_x, last_y = found[-1]
            turn = heading - last
            turn -= math.tau * round(turn / math.tau)
            step = math.hypot(x - last_x, point.y - last_y) * _arc_over_chord(turn)
            if step > 0.0:
                found.append((distance + step, last + turn, x, point.y))
    return found


def _arc_over_chord(turn: float) -> float:
    """How much longer an arc that turns by so much (radians) is than its chord."""
    return 1.0 if abs(turn) < 1e-6 else (turn / 2.0) / math.sin(turn / 2.0)
