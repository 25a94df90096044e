"""Darts in the flat, as they are sewn: what lies beyond a dart moves toward it, most at its mouth."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.pattern import InnerDart, Intake, Piece

_FADES: Final = 170.0
"""mm above the mouth of a dart in a side seam over which the piece comes back to where it was: about from the
underarm to the shoulder. Own judgment: a picture."""

_APART: Final = 60.0
"""mm beside a dart from which the cloth follows it softly: beside its leg it follows the leg, so that the two
legs lie on each other. Own judgment: a picture."""

_SOFTLY: Final = 1.6
"""So many lengths of a dart from its mouth the cloth far beside it has come to rest. Own judgment."""

_TURNS: Final = 25.0
"""mm beside a dart over which its edge turns into its direction on the other side. Own judgment."""

_LEAST: Final = 0.1
"""mm; a dart that takes up less is none."""

Move = Callable[[Point], Point]
"""Moves a place of the piece as a dart is closed."""


@dataclass(frozen=True, slots=True)
class _Wedge:
    """An open dart: the mouth end that stays, that which moves to it, and its point."""

    stays: Point
    moves: Point
    point: Point

    @property
    def width(self) -> float:
        """mm between the ends of the mouth."""
        return self.stays.distance_to(self.moves)

    @property
    def length(self) -> float:
        """mm from the middle of the mouth to the point."""
        return self.stays.lerp(self.moves, 0.5).distance_to(self.point)

    def beyond(self, place: Point) -> tuple[float, float]:
        """By how much the dart draws the place toward the leg that stays, mm, and how far outside of the
        dart the place lies, mm; both 0 where it lies on the side that stays."""
        middle = self.stays.lerp(self.moves, 0.5)
        along = max((place - middle).dot((self.point - middle).unit()) / self.length, 0.0)
        is_open = max(1.0 - along, 0.0)
        leg = self.point.lerp(self.stays, is_open)
        beyond = max((place - leg).dot((self.moves - self.stays).unit()), 0.0)
        inside = min(beyond, self.width * is_open)
        softly = self.width * max(1.0 - along / _SOFTLY, 0.0) ** 2
        outside = beyond - inside
        return _softened(inside, softly, outside), outside


def closed_darts(piece: Piece, center: float) -> Iterator[tuple[float, Move]]:
    """A move for each dart of the piece, and how far from the center (its x) the dart lies.

    What is nearer the center stays, of a dart in an upright edge what is lower.
    """
    for dart in piece.intakes:
        if dart.kind == "dart":
            wedge, is_upright = _wedge(piece, dart, center)
            if min(wedge.width, wedge.length) > _LEAST:
                yield abs(wedge.stays.x - center), _turned_in(wedge) if is_upright else _lowered(wedge)
    for inner in piece.inner_darts:
        yield abs(piece.line(inner.center_leg).path.start.x - center), _drawn_in(piece, inner)


def _softened(beside: float, far: float, outside: float) -> float:
    """What a place moves: as the leg beside it does, or softly where it lies far outside of the dart."""
    share = min(outside / _APART, 1.0)
    return beside + share * (far - beside)


def _wedge(piece: Piece, dart: Intake, center: float) -> tuple[_Wedge, bool]:
    """The dart, and whether it stands more upright than level."""
    first, second = piece.edge(dart.first_leg).path, piece.edge(dart.second_leg).path
    ends = (first.start, second.end)
    axis = first.end - ends[0].lerp(ends[1], 0.5)
    is_upright = abs(axis.y) >= abs(axis.x)
    stays, moves = sorted(ends, key=lambda end: abs(end.x - center) if is_upright else end.y)
    return _Wedge(stays, moves, first.end), is_upright


def _turned_in(wedge: _Wedge) -> Move:
    """Beyond the dart the cloth comes to it, less and less toward the level of its point; beside it the cloth
    turns too, so that the edge runs on without a corner, and farther off hangs as it did."""
    across = (wedge.moves - wedge.stays).unit()
    away = (wedge.stays.lerp(wedge.moves, 0.5) - wedge.point).unit()

    def moved(place: Point) -> Point:
        taken, outside = wedge.beyond(place)
        lifted = _TURNS * (1.0 - math.exp(-outside / _TURNS)) * taken / wedge.length
        return place - across * taken + away * lifted

    return moved


def _lowered(wedge: _Wedge) -> Move:
    """Above the dart the cloth comes down to it, less and less up to the shoulder; the side turns with its
    leg, so that it runs on without a corner."""
    across = (wedge.moves - wedge.stays).unit()
    away = (wedge.stays.lerp(wedge.moves, 0.5) - wedge.point).unit()

    def moved(place: Point) -> Point:
        taken, outside = wedge.beyond(place)
        fading = max(1.0 - outside / _FADES, 0.0)
        turned = _TURNS * (1.0 - math.exp(-outside / _TURNS)) * taken / wedge.length
        return place - across * (taken * fading) + away * (turned * fading)

    return moved


def _drawn_in(piece: Piece, dart: InnerDart) -> Move:
    """Beyond a dart with two points the cloth is drawn in between them, most at its widest."""
    near, far = piece.line(dart.center_leg).path, piece.line(dart.side_leg).path
    ends = sorted((near.start.y, near.end.y))
    widest = max((one.end for one in near.segments), key=lambda place: _width_at(near, far, place.y))
    most = _width_at(near, far, widest.y)
    way = 1.0 if far.nearest(widest).point.x > widest.x else -1.0

    def moved(place: Point) -> Point:
        stays = _at_height(near, place.y)
        if stays is None or most < _LEAST:
            return place
        beyond = max((place.x - stays) * way, 0.0)
        inside = min(beyond, _width_at(near, far, place.y))
        end = ends[0] if place.y < widest.y else ends[1]
        share = max(1.0 - abs(place.y - widest.y) / max(abs(end - widest.y), _LEAST), 0.0)
        taken = _softened(inside, most * share * share * (3.0 - 2.0 * share), beyond - inside)
        return Point(place.x - way * taken, place.y)

    return moved


def _width_at(near: Path, far: Path, y: float) -> float:
    one, other = _at_height(near, y), _at_height(far, y)
    return 0.0 if one is None or other is None else abs(other - one)


def _at_height(leg: Path, y: float) -> float | None:
    """The x of an upright leg at a height; None above and below it."""
    for one in leg.segments:
        low, high = sorted((one.start, one.end), key=lambda place: place.y)
        if low.y <= y <= high.y and high.y > low.y:
            return low.lerp(high, (y - low.y) / (high.y - low.y)).x
    return None
