"""How a slash opens: the rigid motion of what lies beyond it."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform

GREATEST_ANGLE = 60.0
"""Degrees by which one slash may open: beyond, two parts of a flat piece would soon lie on each other, and
more slashes spread better. Own judgment."""


_ROUNDS = 60
"""The turn of a slash is found by repeating; each round leaves less than a hundredth of what was missing."""


@dataclass(frozen=True, slots=True)
class Opening:
    """One slash from ``start`` to ``end`` (mm, in the frame of the uncut piece), opened by ``at_start`` and
    ``at_end`` mm, straight from side to side. ``leftward`` says that what lies left of the slash, looking
    from its start to its end, is moved away; else what lies right of it. ``level`` is the direction in which
    strips that open at both ends are moved, either way; None: square to the slash."""

    start: Point
    end: Point
    at_start: float
    at_end: float
    leftward: bool
    level: Point | None = None

    @property
    def length(self) -> float:
        """The straight length of the slash, mm."""
        return self.start.distance_to(self.end)

    @property
    def angle(self) -> float:
        """Degrees by which the part beyond turns when it is moved square to the slash; positive where the
        start opens more than the end."""
        share = (self.at_start - self.at_end) / (2.0 * self.length)
        return math.degrees(2.0 * math.asin(share)) if abs(share) <= 1.0 else math.copysign(180.0, share)

    def motion(self) -> Transform:
        """The motion of the part beyond: both ends of the slash open by exactly what is said.

        The part turns about the end that opens less, and is moved by what opens there. StepRefused
        ``slash-opens-too-far`` when the slash would open by more than 60 degrees.
        """
        if abs(self.angle) > GREATEST_ANGLE:
            raise StepRefused(
                "slash-opens-too-far",
                opened=max(abs(self.at_start), abs(self.at_end)),
                length=self.length,
                angle=abs(self.angle),
            )
        opens_at_start = self.at_end <= self.at_start
        hinge = self.end if opens_at_start else self.start
        less, more = sorted((self.at_start, self.at_end))
        # Seen from its start, a slash that opens more there turns what lies left of it clockwise.
        clockwise = self.leftward == opens_at_start
        square = (self.end - self.start).unit().perpendicular()
        outward = square if self.leftward else -square
        turn = self._turn(outward, clockwise, less, more)
        moved = self._aside(outward, turn) * less
        return Transform.rotation(turn, hinge).then(Transform.translation(moved.x, moved.y))

    def _turn(self, outward: Point, clockwise: bool, less: float, more: float) -> float:
        """Degrees by which the part turns so that its far end opens by ``more`` in all."""
        turn, sign = 0.0, -1.0 if clockwise else 1.0
        for _ in range(_ROUNDS):
            between = outward.rotated(turn / 2.0).cross(self._aside(outward, turn))
            along = math.sqrt(max(1.0 - between * between, 0.0))
            chord = math.sqrt(max(more * more - (less * between) ** 2, 0.0)) - less * along
            found = sign * math.degrees(2.0 * math.asin(min(chord / (2.0 * self.length), 1.0)))
            if found == turn:
                break
            turn = found
        return turn

    def _aside(self, outward: Point, turn: float) -> Point:
        """The direction in which the part is moved: level, or square to the slash half way in its turn."""
        if self.level is None:
            return outward.rotated(turn / 2.0)
        return self.level if self.level.dot(outward) > 0.0 else -self.level


def motions_along(openings: Iterable[Opening]) -> tuple[Transform, ...]:
    """The motions of the parts in order: the first lies still, each next one follows the one before it."""
    found = [Transform.identity()]
    for opening in openings:
        found.append(opening.motion().then(found[-1]))
    return tuple(found)


def even_shares(count: int, begin: float = 0.0, finish: float = 1.0) -> tuple[float, ...]:
    """``count`` places spread evenly from ``begin`` to ``finish``: each in the middle of its own share.

    The first and the last lie half a space from the ends, so that every slash serves as much of the edge.
    """
    step = (finish - begin) / count
    return tuple(begin + step * (index + 0.5) for index in range(count))


def opened_by_angle(lengths: Sequence[float], angle: float) -> tuple[float, ...]:
    """What slashes of these lengths (mm), shut at their other ends, open when all of them together turn the
    piece by ``angle`` degrees: each turns by the same share of it."""
    each = math.radians(angle / len(lengths))
    return tuple(2.0 * length * math.sin(each / 2.0) for length in lengths)
