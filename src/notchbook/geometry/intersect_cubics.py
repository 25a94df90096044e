"""Where two cubics meet: halving with tests that rule pairs out, then Newton's steps.

A pair of pieces is ruled out when a strip along the chord of one leaves the other outside. When the
directions of the pieces share no angle they cross at most once, and Newton's steps find the place; pairs that
stay undecided are halved until they are straight, where the closest approach decides.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from notchbook.errors import GeometryError
from notchbook.geometry.cubic import Cubic
from notchbook.geometry.point import Point
from notchbook.geometry.tolerance import TOLERANCE

Pair = tuple[float, float]

_BUDGET = 60_000
"""Pairs looked at before giving up: two crossings need a few hundred."""

_OVERLAP_BUDGET = 600
"""Pairs looked at before asking whether the curves run along each other."""

_OVERLAP_SAMPLES = 5

_NEWTON_STEPS = 20


@dataclass(frozen=True, slots=True)
class _Piece:
    """A stretch of a cubic with its own four points; ``low`` and ``high`` are parameters of the whole."""

    points: tuple[tuple[float, float], ...]
    low: float
    high: float

    @property
    def size(self) -> float:
        """The span of the four points, mm."""
        xs, ys = [x for x, _ in self.points], [y for _, y in self.points]
        return max(max(xs) - min(xs), max(ys) - min(ys))

    def halves(self) -> "tuple[_Piece, _Piece]":
        """The two halves by parameter."""
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = self.points
        abx, aby, bcx, bcy = (ax + bx) / 2.0, (ay + by) / 2.0, (bx + cx) / 2.0, (by + cy) / 2.0
        cdx, cdy = (cx + dx) / 2.0, (cy + dy) / 2.0
        px, py, qx, qy = (abx + bcx) / 2.0, (aby + bcy) / 2.0, (bcx + cdx) / 2.0, (bcy + cdy) / 2.0
        mx, my = (px + qx) / 2.0, (py + qy) / 2.0
        middle = (self.low + self.high) / 2.0
        return (
            _Piece(((ax, ay), (abx, aby), (px, py), (mx, my)), self.low, middle),
            _Piece(((mx, my), (qx, qy), (cdx, cdy), (dx, dy)), middle, self.high),
        )


def cubic_pairs(first: Cubic, second: Cubic, ends: list[Pair]) -> list[Pair]:
    """The pairs of parameters where two cubics meet inside; ``ends`` are the touching ends known.

    Curves that run along each other have no crossing besides the known ends. GeometryError
    ``crossings-unresolved`` when the curves are too entangled to tell.
    """
    found: list[Pair] = []
    waiting = [(_whole(first), _whole(second))]
    looked = 0
    while waiting:
        one, other = waiting.pop()
        looked += 1
        if looked == _OVERLAP_BUDGET and _run_along(first, second, ends):
            return []
        if looked > _BUDGET:
            raise GeometryError("crossings-unresolved", count=looked)
        if _is_apart(one, other) or _is_apart(other, one):
            continue
        size, other_size = one.size, other.size
        if max(size, other_size) <= TOLERANCE.crossing_leaf_mm:
            pair = _closest(first, second, one, other)
            if pair is not None:
                found.append(pair)
        elif (pair := _only_crossing(first, second, one, other)) is not None:
            found.append(pair)
        elif size >= other_size:
            waiting.extend((half, other) for half in one.halves())
        else:
            waiting.extend((one, half) for half in other.halves())
    return found


def _whole(cubic: Cubic) -> _Piece:
    points = (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end)
    return _Piece(tuple((point.x, point.y) for point in points), 0.0, 1.0)


def _is_apart(one: _Piece, other: _Piece) -> bool:
    """Whether the strip along the chord of ``one`` that holds it leaves ``other`` outside."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = one.points
    ux, uy = dx - ax, dy - ay
    size = math.hypot(ux, uy)
    if size == 0.0:
        ux, uy, size = 1.0, 0.0, 1.0
    ux, uy = ux / size, uy / size
    margin = TOLERANCE.crossing_mm
    across = [ux * (y - ay) - uy * (x - ax) for x, y in other.points]
    own = (ux * (by - ay) - uy * (bx - ax), ux * (cy - ay) - uy * (cx - ax))
    if min(across) > max(0.0, *own) + margin or max(across) < min(0.0, *own) - margin:
        return True
    along = [ux * (x - ax) + uy * (y - ay) for x, y in other.points]
    own = (ux * (bx - ax) + uy * (by - ay), ux * (cx - ax) + uy * (cy - ay))
    return min(along) > max(0.0, size, *own) + margin or max(along) < min(0.0, size, *own) - margin


def _only_crossing(first: Cubic, second: Cubic, one: _Piece, other: _Piece) -> Pair | None:
    """The crossing of two pieces that can cross only once, or None when undecided."""
    fan, other_fan = _fan(one), _fan(other)
    if fan is None or other_fan is None:
        return None
    angle, spread = fan
    other_angle, other_spread = other_fan
    between = math.remainder(other_angle - angle, math.pi)
    if abs(between) <= spread + other_spread or abs(between) >= math.pi - spread - other_spread:
        return None
    t, u = (one.low + one.high) / 2.0, (other.low + other.high) / 2.0
    for _ in range(_NEWTON_STEPS):
        gap = second.at(u) - first.at(t)
        along, beside = first.derivative(t), second.derivative(u)
        turn = along.cross(beside)
        if turn == 0.0:
            return None
        step, other_step = gap.cross(beside) / turn, gap.cross(along) / turn
        t, u = t + step, u + other_step
        if not (one.low - 1.0 <= t <= one.high + 1.0 and other.low - 1.0 <= u <= other.high + 1.0):
            return None
        if abs(step) + abs(other_step) < 1e-14:
            break
    is_inside = one.low <= t <= one.high and other.low <= u <= other.high
    if is_inside and first.at(t).distance_to(second.at(u)) <= TOLERANCE.crossing_mm / 2.0:
        return t, u
    return None


def _fan(piece: _Piece) -> tuple[float, float] | None:
    """The middle angle of the piece's directions and the half spread (radians), or None when wide."""
    steps = [(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise(piece.points) if bx != ax or by != ay]
    if not steps:
        return None
    (ax, ay), (dx, dy) = piece.points[0], piece.points[3]
    ux, uy = dx - ax, dy - ay
    spread = 0.0
    for x, y in steps:
        ahead = ux * x + uy * y
        if ahead <= 0.0:
            return None
        spread = max(spread, abs(math.atan2(ux * y - uy * x, ahead)))
    return math.atan2(uy, ux), spread


def _closest(first: Cubic, second: Cubic, one: _Piece, other: _Piece) -> Pair | None:
    """The closest approach of two short pieces, if they meet there."""
    t, u = (one.low + one.high) / 2.0, (other.low + other.high) / 2.0
    for _ in range(_NEWTON_STEPS):
        u = _foot(second, first.at(t), u, other)
        t = _foot(first, second.at(u), t, one)
    return (t, u) if first.at(t).distance_to(second.at(u)) <= TOLERANCE.crossing_mm else None


def _foot(cubic: Cubic, point: Point, t: float, piece: _Piece) -> float:
    """One step toward the foot of the point on a short piece, kept on the piece."""
    slope = cubic.derivative(t)
    size = slope.dot(slope)
    moved = t + (point - cubic.at(t)).dot(slope) / size if size else t
    return min(piece.high, max(piece.low, moved))


def _run_along(first: Cubic, second: Cubic, ends: list[Pair]) -> bool:
    """Whether the curves share the stretch between two touching ends."""
    from notchbook.geometry.nearest import nearest_parameter

    places = sorted({round(t, 9) for t, _ in ends})
    if len(places) < 2:
        return False
    low, high = places[0], places[-1]
    shares = (low + (high - low) * (index + 0.5) / _OVERLAP_SAMPLES for index in range(_OVERLAP_SAMPLES))
    return all(nearest_parameter(second, first.at(t))[1] <= TOLERANCE.crossing_mm for t in shares)
