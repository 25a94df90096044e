"""Fair curves through points, as a hip or French curve would draw them."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from notchbook.errors import GeometryError
from notchbook.geometry.curvature import turning_places
from notchbook.geometry.fair_directions import fair_spirals
from notchbook.geometry.line import Line
from notchbook.geometry.offset_fit import fitted_cubic
from notchbook.geometry.path import Path
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment
from notchbook.geometry.spiral import Spiral
from notchbook.geometry.tolerance import TOLERANCE

FairKind = Literal["inflection", "curvature-extremum", "curvature-jump"]

_PIECE_DEGREES = 45.0
"""Greatest turn of one cubic: its curvature then strays by about 0.1 % from that of an arc."""

_SAMPLES = 8
_DEPTH = 8


@dataclass(frozen=True, slots=True)
class FairViolation:
    """Where a curve is not fair: the kind, the distance along it (mm), and how much.

    ``inflection``: the curve changes sides more often than allowed; amount = degrees that it turns on the
    weaker of the two sides. ``curvature-extremum``: the curvature turns back at a point; amount = the
    smaller of its changes before and after, 1/mm. ``curvature-jump``: a given direction at a point asks
    for different curvatures before and after it; amount = the jump, 1/mm.
    """

    kind: FairKind
    place_mm: float
    amount: float


@dataclass(frozen=True, slots=True)
class FairCurve:
    """A curve, where it is not fair, and the distances along it of the points it was laid through (mm)."""

    path: Path
    violations: tuple[FairViolation, ...]
    point_places: tuple[float, ...]

    @property
    def is_fair(self) -> bool:
        """Whether nothing is wrong with the curve."""
        return not self.violations


@dataclass(frozen=True, slots=True)
class _Bend:
    """A stretch to one side: its signed turn (degrees) and where it starts (mm)."""

    turn: float
    place: float


def fair_curve(
    points: Sequence[Point],
    start_direction: float | None = None,
    end_direction: float | None = None,
    inner_directions: Mapping[int, float] | None = None,
    inflections_allowed: int = 0,
) -> FairCurve:
    """The fair curve through points, directions of travel in degrees.

    The points are joined by Euler spirals whose directions and curvatures agree at the points (G2), so that
    curvature changes evenly between points and can turn back only at a point. A free end goes on as an arc.
    ``inner_directions`` fixes directions at points by their index; there only directions agree (G1). The
    spirals are then written as cubics within ``fair_fit_mm``; a straight spiral is a line.

    What is not fair is reported and never hidden: curvature that turns back, jumps, or more inflections than
    ``inflections_allowed``. Changes below ``curvature_noise`` of the greatest curvature do not count.

    GeometryError: ``curve-needs-points`` for fewer than two points or the same one twice in a row,
    ``curve-not-fair`` when the curve would have to turn backward.
    """
    if len(points) < 2 or any(a.distance_to(b) <= TOLERANCE.join_mm for a, b in pairwise(points)):
        raise GeometryError("curve-needs-points")
    given = dict(inner_directions or {})
    if any(not 0 < index < len(points) - 1 for index in given):
        raise GeometryError("curve-needs-points")
    if start_direction is not None:
        given[0] = start_direction
    if end_direction is not None:
        given[len(points) - 1] = end_direction
    spirals = fair_spirals(points, given)
    parts = [
        Path(tuple(_cubics(spiral, end, 0.0, 1.0, 0)))
        for spiral, end in zip(spirals, points[1:], strict=True)
    ]
    places = [0.0]
    for part in parts:
        places.append(places[-1] + part.length)
    path = Path(tuple(segment for part in parts for segment in part.segments))
    found = [
        *_jumps(spirals, places),
        *_extrema(spirals, places),
        *_surplus(spirals, places, inflections_allowed),
    ]
    return FairCurve(path, tuple(sorted(found, key=lambda item: item.place_mm)), tuple(places))


def _cubics(spiral: Spiral, end: Point, low: float, high: float, depth: int) -> list[Segment]:
    """Cubics along a stretch of a spiral that ends in ``end``, halved until they fit."""
    start = spiral.start if low == 0.0 else spiral.point_at(low)
    steepest = max(abs(spiral.curvature_at(low)), abs(spiral.curvature_at(high))) * spiral.length
    if steepest * (high - low) * spiral.length / 8.0 <= TOLERANCE.join_mm:
        return [Line(start, end)]
    if math.degrees(steepest) * (high - low) <= _PIECE_DEGREES or depth >= _DEPTH:
        shares = [low + (high - low) * index / (_SAMPLES + 1) for index in range(_SAMPLES + 2)]
        targets = [start, *(spiral.point_at(share) for share in shares[1:-1]), end]
        fitted = fitted_cubic(targets, [spiral.direction_at(share) for share in shares])
        if fitted is not None and (fitted[1] <= TOLERANCE.fair_fit_mm or depth >= _DEPTH):
            return [fitted[0]]
        if depth >= _DEPTH:
            return [Line(start, end)]
    middle = (low + high) / 2.0
    first = _cubics(spiral, spiral.point_at(middle), low, middle, depth + 1)
    return first + _cubics(spiral, end, middle, high, depth + 1)


def _noise(spirals: Sequence[Spiral]) -> float:
    """The change of curvature that does not count, 1/mm."""
    greatest = max(abs(spiral.curvature_at(share)) for spiral in spirals for share in (0.0, 1.0))
    return max(TOLERANCE.curvature_per_mm, TOLERANCE.curvature_noise * greatest)


def _jumps(spirals: Sequence[Spiral], places: Sequence[float]) -> list[FairViolation]:
    noise = _noise(spirals)
    jumps = [
        (place, abs(after.curvature_at(0.0) - before.curvature_at(1.0)))
        for (before, after), place in zip(pairwise(spirals), places[1:], strict=False)
    ]
    return [FairViolation("curvature-jump", place, jump) for place, jump in jumps if jump > noise]


def _extrema(spirals: Sequence[Spiral], places: Sequence[float]) -> list[FairViolation]:
    """Where the curvature turns back; between points it is monotone, so the values at points tell."""
    noise = _noise(spirals)
    values = [
        (place, spiral.curvature_at(share))
        for spiral, span in zip(spirals, pairwise(places), strict=True)
        for place, share in zip(span, (0.0, 1.0), strict=True)
    ]
    return [
        FairViolation("curvature-extremum", turn.place, turn.amount) for turn in turning_places(values, noise)
    ]


def _surplus(spirals: Sequence[Spiral], places: Sequence[float], allowed: int) -> list[FairViolation]:
    """All inflections, when there are more than allowed."""
    bends: list[_Bend] = []
    for spiral, (low, high) in zip(spirals, pairwise(places), strict=True):
        for bend in _bends(spiral, low, high):
            if bends and bends[-1].turn * bend.turn > 0.0:
                bends[-1] = _Bend(bends[-1].turn + bend.turn, bends[-1].place)
            else:
                bends.append(bend)
    if len(bends) - 1 <= allowed:
        return []
    return [
        FairViolation("inflection", after.place, min(abs(before.turn), abs(after.turn)))
        for before, after in pairwise(bends)
    ]


def _bends(spiral: Spiral, low: float, high: float) -> list[_Bend]:
    """The stretches of one spiral to either side; those without a turn worth the name left out."""
    first, last = spiral.curvature_at(0.0), spiral.curvature_at(1.0)
    shares = [0.0, 1.0]
    if first * last < 0.0:
        shares.insert(1, first / (first - last))
    bends = []
    for start, end in pairwise(shares):
        mean = (spiral.curvature_at(start) + spiral.curvature_at(end)) / 2.0
        if max(abs(spiral.curvature_at(start)), abs(spiral.curvature_at(end))) > TOLERANCE.curvature_per_mm:
            turn = math.degrees(mean * (end - start) * spiral.length)
            bends.append(_Bend(turn, low + (high - low) * start))
    return bends
