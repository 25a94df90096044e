"""The lines that a tape draws: rings, ways along the body, straight lengths, slopes; mm of the body, y up."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.body.figure.curve_through import curve_through
from notchbook.geometry import Cubic, Line, Path, Point, curve_between

_END_STROKE: Final = 9.0
"""Half the length of the strokes at the ends of a straight length."""

_QUARTER: Final = 4.0 / 3.0 * (math.sqrt(2.0) - 1.0)
"""The handle of a quarter of a ring, as share of its radius."""


@dataclass(frozen=True, slots=True)
class TapeLines:
    """What is seen of a tape, the line that carries its number first, and what the body covers."""

    seen: tuple[Path, ...]
    hidden: tuple[Path, ...] = ()


def ring(start: Point, end: Point, sag: float) -> TapeLines:
    """A girth seen as a flat ring from ``start`` to ``end``; its near half hangs by ``sag`` of its width."""
    across = (end - start) * 0.5
    down = Point(across.y, -across.x) * (2.0 * sag)
    return TapeLines((_half_ring(start, across, down),), (_half_ring(start, across, down * -1.0),))


def loop(points: Sequence[Point]) -> TapeLines:
    """A ring seen whole: through the points and back to the first."""
    closed = curve_through([*points[-2:], *points, *points[:3]])
    return TapeLines((Path(closed.segments[2 : 2 + len(points)]),))


def along(points: Sequence[Point]) -> TapeLines:
    """A curve on the body."""
    return TapeLines((curve_through(points),))


def bent(points: Sequence[Point]) -> TapeLines:
    """Straight pieces."""
    return TapeLines((Path.polyline(points),))


def span(points: Sequence[Point]) -> TapeLines:
    """A straight length with a stroke square to it at either end."""
    start, end = points
    heading = (end - start) * (1.0 / (end - start).norm())
    square = Point(-heading.y, heading.x) * _END_STROKE
    strokes = [Path.line(point - square, point + square) for point in (start, end)]
    return TapeLines((Path.line(start, end), *strokes))


def slope(points: Sequence[Point]) -> TapeLines:
    """The angle below level of the line from the first point to the second: an arc and the level line."""
    start, end = points
    reach = end - start
    side = math.copysign(1.0, reach.x)
    radius = reach.norm()
    level = Point(start.x + side * radius, start.y)
    turn = math.degrees(math.atan2(reach.y, abs(reach.x)))
    arc = curve_between(level, -90.0, end, -90.0 + side * turn)
    return TapeLines((Path.of(arc), Path.of(Line(start, Point(level.x + side * 20.0, level.y)))))


def _half_ring(start: Point, across: Point, down: Point) -> Path:
    middle, lowest = start + across, start + across + down
    end = middle + across
    return Path.of(
        Cubic(start, start + down * _QUARTER, lowest - across * _QUARTER, lowest),
        Cubic(lowest, lowest + across * _QUARTER, end + down * _QUARTER, end),
    )
