"""The folds of a sleeve laid flat with its underarm seam in the middle below, bent at the elbow.

Seen from the top sleeve: front toward +x, the biceps line at y = 0, mm. Each fold runs down straight, in the
middle between the center of the sleeve and its underarm seam, so that both halves of the cap laid under meet
in one point; round the elbow it bends and runs on straight. A sleeve narrows to its hem, so that its folds
lean in there. A hem square to folds that lean is an arc, and its raw edge would have to be stretched when it
is turned up. So the folds turn once more and end square to a straight hem: what is turned up lies flat.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform
from notchbook.pattern import spoken
from notchbook.style.sleeves.found import FoundSleeve

_UNEVEN = 1.5
"""Degrees by which the upper seams of a sleeve may lean differently. Own judgment."""

_TURN = 30.0
"""mm above and below within which a fold turns to be square to the hem, where there is room. Own judgment."""

_LEAST_TURN = 10.0
"""The least of it, mm. Own judgment."""

_BETWEEN = 20.0
"""mm that are left straight between the bend of the elbow and that turn, down the middle of the sleeve: at a
fold it is less by what the hem slants. Own judgment."""


@dataclass(frozen=True, slots=True)
class Leg:
    """A straight stretch of a fold, walked down, and the unit direction away from the middle of the sleeve
    square to it."""

    start: Point
    end: Point
    beside: Point


@dataclass(frozen=True, slots=True)
class Fold:
    """One fold: its straight ``legs`` from the biceps line down to the hem, between which it bends: at the
    elbow, and where it ends square to the hem above that."""

    legs: tuple[Leg, ...]

    @property
    def biceps(self) -> Point:
        """Where it crosses the biceps line."""
        return self.legs[0].start

    @property
    def hem(self) -> Point:
        """Where it meets the hem."""
        return self.legs[-1].end

    @property
    def laid_under(self) -> Transform:
        """The reflection that lays what is outside the upper part under the sleeve."""
        return Transform.reflection(self.legs[0].start, self.legs[0].end)


@dataclass(frozen=True, slots=True)
class Folds:
    """Both folds, and the middle of the elbow and of the hem."""

    front: Fold
    back: Fold
    elbow: Point
    hem: Point


@dataclass(frozen=True, slots=True)
class Bend:
    """How the sleeve is bent, mm: how far the hem swings forward, how far the bend goes from the elbow either
    way, and how high above the hem the folds run square to it (0: they run straight from the elbow)."""

    swing: float
    reach: float
    square: float


def folds_of(sleeve: FoundSleeve, elbow: float, hem_girth: float, bend: Bend) -> Folds:
    """The folds of a sleeve whose elbow lies at the height ``elbow`` (below 0), mm.

    StepRefused ``two-piece-uneven`` where the upper seams lean differently, ``two-piece-elbow`` where the
    elbow is too near to the underarm or the hem, ``two-piece-wrist`` where no room is left for folds that end
    square to the hem.
    """
    tilt = _tilt(sleeve)
    ends = sleeve.cap[0].path.start.x, -sleeve.cap[-1].path.end.x
    quarter = sum(ends) / (2.0 * (1.0 + math.cos(tilt)))
    middle = sleeve.piece.points[sleeve.name("hem_middle")]
    if not (middle.y + bend.reach + 10.0 < elbow < -bend.reach - 10.0):
        raise StepRefused("two-piece-elbow", sleeve=spoken(sleeve.piece.name), reach=bend.reach)
    lean = math.tan(tilt / 2.0)
    tops = Point(ends[0] - quarter, 0.0), Point(quarter - ends[1], 0.0)
    bent = [top + Point(sign * lean * elbow, elbow) for top, sign in zip(tops, (1.0, -1.0), strict=True)]
    center = bent[0].lerp(bent[1], 0.5)
    hem = Point(center.x + bend.swing, middle.y)
    level = (hem - center).unit().perpendicular()  # forward along the hem
    low = [hem + level * (sign * hem_girth / 4.0) for sign in (1.0, -1.0)]
    room = hem.distance_to(center) - bend.reach - _BETWEEN - bend.square
    if bend.square > 0.0 and room < 2.0 * _LEAST_TURN:
        raise StepRefused("two-piece-wrist", sleeve=spoken(sleeve.piece.name), square=bend.square)
    turn = min(_TURN, room / 2.0)
    front, back = (
        _fold((top, corner, *_square(end, level, bend.square, turn)), (bend.reach, turn), sign)
        for top, corner, end, sign in zip(tops, bent, low, (1.0, -1.0), strict=True)
    )
    return Folds(front, back, center, hem)


def _square(end: Point, level: Point, square: float, turn: float) -> tuple[Point, ...]:
    """The end of a fold at the hem, and before it the corner from which the fold runs square to the hem."""
    return (end,) if square == 0.0 else (end + level.perpendicular() * (square + turn), end)


def _fold(corners: Sequence[Point], reaches: Sequence[float], sign: float) -> Fold:
    """The fold along its corners, rounded at those between its ends as far as the reaches say."""
    legs: list[Leg] = []
    before = 0.0
    for (start, end), after in zip(pairwise(corners), (*reaches[: len(corners) - 2], 0.0), strict=True):
        along = (end - start).unit()
        legs.append(Leg(start + along * before, end - along * after, along.perpendicular() * sign))
        before = after
    return Fold(tuple(legs))


def _tilt(sleeve: FoundSleeve) -> float:
    """By how much the upper seams lean in, radians: the mean of both."""
    front = sleeve.piece.edge_before(sleeve.cap[0].name).path
    back = sleeve.piece.edge_after(sleeve.cap[-1].name).path
    up, down = front.tangent_at(front.length), back.tangent_at(0.0, "after")
    leans = math.atan2(up.x, up.y), math.atan2(down.x, -down.y)
    if abs(leans[0] - leans[1]) > math.radians(_UNEVEN):
        raise StepRefused("two-piece-uneven", sleeve=spoken(sleeve.piece.name))
    return sum(leans) / 2.0
