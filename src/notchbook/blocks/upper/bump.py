"""Whether an armhole has a bump: a place that is slacker than those on both sides of it."""

import math
from collections.abc import Iterator, Sequence
from itertools import accumulate

from notchbook.geometry import Path

_WINDOW = 10
"""mm over which the eye takes in the roundness of a curve, as the check of the finished pattern has it."""

_HOOK = 0.25
"""Share of the armhole next to its tip where it may be round once more, to come in square to the shoulder."""

_PARTS = 24
"""Places looked at on each segment."""

_STRAIGHT = 1e-3
"""Degrees over the window below which an armhole is straight."""


def bump(armhole: Path) -> float:
    """By how much the slackest place between two rounder ones turns less than they do, degrees over 10 mm.

    Looked at from the underarm to a quarter before the tip, among stretches that turn to one side.
    """
    headings = _headings(armhole)
    turning = [after - before for before, after in zip(headings, headings[_WINDOW:], strict=False)]
    return max((_slack(stretch) for stretch in _one_sided(turning)), default=0.0)


def _headings(armhole: Path) -> list[float]:
    """The directions at every millimeter from where the hook ends to the underarm, degrees."""
    seen = list(_seen(armhole))
    whole = seen[-1][0]
    count = int((1.0 - _HOOK) * whole)
    places = [whole - count + 0.5 + number for number in range(count)]
    found, index = [], 0
    for place in places:
        while seen[index + 1][0] < place:
            index += 1
        (low, heading), (high, next_heading) = seen[index], seen[index + 1]
        found.append(heading + (place - low) / (high - low) * (next_heading - heading))
    return found


def _seen(armhole: Path) -> Iterator[tuple[float, float]]:
    """Distances from the tip, mm, and the directions there, degrees, never jumping by a full turn."""
    distance, heading, last = 0.0, 0.0, armhole.start
    for number, segment in enumerate(armhole.segments):
        for part in range(_PARTS + 1):
            share = part / _PARTS
            point, way = segment.at(share), segment.derivative(share)
            turn = math.atan2(way.y, way.x) - heading
            turn -= math.tau * round(turn / math.tau)
            step = math.hypot(point.x - last.x, point.y - last.y)
            if step > 0.0 or (number, part) == (0, 0):
                arc = step if part == 0 or abs(turn) < 1e-6 else step * turn / 2.0 / math.sin(turn / 2.0)
                distance, heading, last = distance + arc, heading + turn, point
                yield distance, math.degrees(heading)


def _one_sided(turning: Sequence[float]) -> Iterator[list[float]]:
    """How much the armhole turns in each stretch that turns to one side, straight places among them."""
    begin, side = 0, 0.0
    for index, turn in enumerate(turning):
        way = math.copysign(1.0, turn) if abs(turn) > _STRAIGHT else side
        if way * side < 0.0:
            yield [abs(one) for one in turning[begin:index]]
            begin = index
        side = way
    yield [abs(one) for one in turning[begin:]]


def _slack(turning: Sequence[float]) -> float:
    """How far the deepest place lies below the lower of what is highest before and after it."""
    before = accumulate(turning, max)
    after = reversed(list(accumulate(reversed(turning), max)))
    return max(
        (min(low, high) - here for low, high, here in zip(before, after, turning, strict=True)), default=0.0
    )
