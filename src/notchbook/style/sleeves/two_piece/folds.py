"""The folds of a sleeve laid flat with its underarm seam in the middle below, bent at the elbow.

Seen from the top sleeve: front toward +x, the biceps line at y = 0, mm. Each fold runs down straight, in the
middle between the center of the sleeve and its underarm seam, so that both halves of the cap laid under meet
in one point; round the elbow it bends, then it runs straight to the hem.
"""

import math
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform
from notchbook.pattern import spoken
from notchbook.style.sleeves.found import FoundSleeve

_UNEVEN = 1.5
"""Degrees by which the upper seams of a sleeve may lean differently. Own judgment."""


@dataclass(frozen=True, slots=True)
class Fold:
    """One fold: where it crosses the biceps line, where its bend begins and ends, where it meets the hem, and
    the unit direction away from the middle of the sleeve square to its upper and to its lower part."""

    biceps: Point
    bends: Point
    straight: Point
    hem: Point
    beside_upper: Point
    beside_lower: Point

    @property
    def laid_under(self) -> Transform:
        """The reflection that lays what is outside the upper part under the sleeve."""
        return Transform.reflection(self.biceps, self.bends)


@dataclass(frozen=True, slots=True)
class Folds:
    """Both folds, and the middle of the elbow and of the hem."""

    front: Fold
    back: Fold
    elbow: Point
    hem: Point


def folds_of(sleeve: FoundSleeve, elbow: float, hem_girth: float, bend: float, reach: float) -> Folds:
    """The folds of a sleeve whose elbow lies at the height ``elbow`` (below 0), mm.

    ``bend`` is how far the hem swings forward, ``reach`` how far the bend goes from the elbow either way.
    StepRefused ``two-piece-uneven`` where the upper seams lean differently, ``two-piece-elbow`` where the
    elbow is too near to the underarm or the hem.
    """
    tilt = _tilt(sleeve)
    ends = sleeve.cap[0].path.start.x, -sleeve.cap[-1].path.end.x
    quarter = sum(ends) / (2.0 * (1.0 + math.cos(tilt)))
    middle = sleeve.piece.points[sleeve.name("hem_middle")]
    if not (middle.y + reach + 10.0 < elbow < -reach - 10.0):
        raise StepRefused("two-piece-elbow", sleeve=spoken(sleeve.piece.name), reach=reach)
    lean = math.tan(tilt / 2.0)
    tops = Point(ends[0] - quarter, 0.0), Point(quarter - ends[1], 0.0)
    bent = [top + Point(sign * lean * elbow, elbow) for top, sign in zip(tops, (1.0, -1.0), strict=True)]
    center = bent[0].lerp(bent[1], 0.5)
    hem = Point(center.x + bend, middle.y)
    level = (hem - center).unit().perpendicular()  # forward along the hem
    low = [hem + level * (sign * hem_girth / 4.0) for sign in (1.0, -1.0)]
    front, back = (
        _fold(top, corner, end, reach, sign)
        for top, corner, end, sign in zip(tops, bent, low, (1.0, -1.0), strict=True)
    )
    return Folds(front, back, center, hem)


def _fold(top: Point, corner: Point, end: Point, reach: float, sign: float) -> Fold:
    down, lower = (corner - top).unit(), (end - corner).unit()
    return Fold(
        top,
        corner - down * reach,
        corner + lower * reach,
        end,
        down.perpendicular() * sign,
        lower.perpendicular() * sign,
    )


def _tilt(sleeve: FoundSleeve) -> float:
    """By how much the upper seams lean in, radians: the mean of both."""
    front = sleeve.piece.edge_before(sleeve.cap[0].name).path
    back = sleeve.piece.edge_after(sleeve.cap[-1].name).path
    up, down = front.tangent_at(front.length), back.tangent_at(0.0, "after")
    leans = math.atan2(up.x, up.y), math.atan2(down.x, -down.y)
    if abs(leans[0] - leans[1]) > math.radians(_UNEVEN):
        raise StepRefused("two-piece-uneven", sleeve=spoken(sleeve.piece.name))
    return sum(leans) / 2.0
