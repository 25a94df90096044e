"""Parallels of single segments: lines moved, cubics refitted by as few cubics as the tolerance needs.

A parallel is made in runs. Where a curve bends toward its parallel more tightly than the width, the
parallel would run backward: that stretch is left out, and the runs around it are marked as cut there.
A stretch left out at an end of a curve leaves a run without length there, from which a corner can be joined.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.curvature import curvature_turns
from notchbook.geometry.line import Line
from notchbook.geometry.path import Path
from notchbook.geometry.point import Point
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE

_SAMPLES = 9
"""Places where a refitted piece is compared with the true parallel."""

_REFITS = 4
"""Rounds of fitting and placing: later ones change the fit by less than the tolerance."""

_HOPELESS = 100.0
"""A first fit that strays by this many tolerances is not worth another round."""

_GREATEST_STEP = 0.34
"""Share of a stretch that may lie between two samples: more hides a sharp bend (even steps have 0.1)."""

_LEAST_COSINE = math.cos(math.radians(15.0))
"""Cosine of the turn that may lie between two samples: a sharper bend would not be seen."""

_ALONG = 0.02
"""Weight of gaps along the curve beside 1 for gaps square to it."""

_DEPTH = 30
"""Halvings after which a stretch is shorter than 1e-6 mm on 1 m."""

_HALVINGS = 60


@dataclass(frozen=True, slots=True)
class Run:
    """An unbroken stretch of a parallel, with the source points and unit directions at its ends.

    ``is_cut_before`` and ``is_cut_after`` say that a stretch there was left out because it bends too tightly.
    """

    path: Path
    source_start: Point
    source_end: Point
    start_tangent: Point
    end_tangent: Point
    is_cut_before: bool = False
    is_cut_after: bool = False


def parallel_runs(segment: Segment, distance: float) -> list[Run]:
    """The runs of the parallel of one segment, which must have a length."""
    if isinstance(segment, Line):
        tangent = segment.tangent(0.0)
        move = tangent.perpendicular() * distance
        moved = Path.line(segment.start + move, segment.end + move)
        return [Run(moved, segment.start, segment.end, tangent, tangent)]
    runs: list[Run] = []
    for piece in _without_cusps(_without_tiny_handles(segment)):
        runs += _cubic_runs(piece, distance)
    return runs


def _without_tiny_handles(cubic: Cubic) -> Cubic:
    """The curve with handles too short to follow laid on their ends, so that none gives a direction."""
    is_tiny_start = cubic.start.distance_to(cubic.start_handle) <= TOLERANCE.sliver_mm
    is_tiny_end = cubic.end.distance_to(cubic.end_handle) <= TOLERANCE.sliver_mm
    if not (is_tiny_start or is_tiny_end):
        return cubic
    return Cubic(
        cubic.start,
        cubic.start if is_tiny_start else cubic.start_handle,
        cubic.end if is_tiny_end else cubic.end_handle,
        cubic.end,
    )


def _without_cusps(cubic: Cubic) -> list[Cubic]:
    """The curve, split where it stands still inside, so that it only stands still at ends."""
    (x1, x2, x3), (y1, y2, y3) = cubic.powers
    slowest = unit_roots(
        (
            x1 * x2 + y1 * y2,
            2.0 * (x2 * x2 + y2 * y2) + 3.0 * (x1 * x3 + y1 * y3),
            9.0 * (x2 * x3 + y2 * y3),
            9.0 * (x3 * x3 + y3 * y3),
        )
    )
    pieces, rest, reached = [], cubic, 0.0
    for t in slowest:
        if 0.0 < t < 1.0 and cubic.derivative(t).norm() <= TOLERANCE.speed_mm:
            before, rest = rest.split((t - reached) / (1.0 - reached))
            pieces.append(before)
            reached = t
    return [piece for piece in (*pieces, rest) if piece.length > TOLERANCE.join_mm]


def _cubic_runs(cubic: Cubic, distance: float) -> list[Run]:
    runs: list[Run] = []
    for low, high in _loose_stretches(cubic, distance):
        segments = _fitted(cubic, distance, low, high, 0)
        if segments:
            run = _run(cubic, distance, low, high)
            runs.append(replace(run, path=Path(tuple(segments))))
    if not runs or runs[0].is_cut_before:
        runs.insert(0, replace(_run(cubic, distance, 0.0, 0.0), is_cut_after=True))
    if runs[-1].is_cut_after:
        runs.append(replace(_run(cubic, distance, 1.0, 1.0), is_cut_before=True))
    return runs


def _run(cubic: Cubic, distance: float, low: float, high: float) -> Run:
    """The run between two parameters, with a straight path for the time being."""
    start, end, leaving, arriving = cubic.at(low), cubic.at(high), cubic.tangent(low), cubic.tangent(high)
    path = Path.line(start + leaving.perpendicular() * distance, end + arriving.perpendicular() * distance)
    is_inner_start, is_inner_end = 0.0 < low < 1.0, 0.0 < high < 1.0
    return Run(path, start, end, leaving, arriving, is_inner_start, is_inner_end)


def _loose_stretches(cubic: Cubic, distance: float) -> list[tuple[float, float]]:
    """The parameter ranges where the curve does not bend toward the parallel more tightly than the width.

    Between the turning points of the curvature it is monotone, so each passing of 1/width is bracketed.
    """
    stops = [0.0, *(t for t in curvature_turns(cubic) if 0.0 < t < 1.0), 1.0]
    edges = [0.0]
    for low, high in pairwise(stops):
        if _is_tight(cubic, distance, low) != _is_tight(cubic, distance, high):
            edges.append(_tight_edge(cubic, distance, low, high))
    edges.append(1.0)
    return [
        (low, high)
        for low, high in pairwise(edges)
        if high - low > 1e-9 and not _is_tight(cubic, distance, (low + high) / 2.0)
    ]


def _is_tight(cubic: Cubic, distance: float, t: float) -> bool:
    return cubic.curvature(t) * distance >= 1.0


def _tight_edge(cubic: Cubic, distance: float, low: float, high: float) -> float:
    tight_low = _is_tight(cubic, distance, low)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        if _is_tight(cubic, distance, middle) == tight_low:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


def _fitted(cubic: Cubic, distance: float, low: float, high: float, depth: int) -> list[Segment]:
    """Segments along the true parallel between two parameters, halved until each fits."""
    places = [low + (high - low) * index / (_SAMPLES + 1) for index in range(_SAMPLES + 2)]
    tangents = [cubic.tangent(t) for t in places]
    targets = [
        cubic.at(t) + tangent.perpendicular() * distance for t, tangent in zip(places, tangents, strict=True)
    ]
    start, end = targets[0], targets[-1]
    steps = [a.distance_to(b) for a, b in pairwise(targets)]
    reach = sum(steps)
    if reach <= TOLERANCE.join_mm:
        return []
    if reach <= TOLERANCE.sliver_mm or depth >= _DEPTH:
        return [Line(start, end)]
    is_even = max(steps) <= _GREATEST_STEP * reach and all(
        a.dot(b) >= _LEAST_COSINE for a, b in pairwise(tangents)
    )
    candidate = fitted_cubic(targets, tangents) if is_even else None
    if candidate is not None and candidate[1] <= TOLERANCE.offset_fit_mm:
        return [candidate[0]]
    middle = (low + high) / 2.0
    first = _fitted(cubic, distance, low, middle, depth + 1)
    return first + _fitted(cubic, distance, middle, high, depth + 1)


def fitted_cubic(targets: Sequence[Point], tangents: Sequence[Point]) -> tuple[Cubic, float] | None:
    """The cubic through the ends that lies nearest to the targets, and its greatest gap (mm).

    ``tangents`` are the unit directions at the targets; the first and the last are those of the cubic. Least
    squares for the two handle lengths, over gaps square to the targets, then each target is moved to
    its foot on the curve, a few times over. None when the best handles run backward.
    """
    shares = _chord_shares(targets)
    start, end = targets[0], targets[-1]
    for _ in range(_REFITS):
        handles = _handles(targets, tangents, shares)
        if handles is None:
            return None
        first, last = start + tangents[0] * handles[0], end - tangents[-1] * handles[1]
        curve = Cubic(start, first, last, end)
        shares, gap = _feet(curve, targets, shares)
        if not TOLERANCE.offset_fit_mm < gap < _HOPELESS * TOLERANCE.offset_fit_mm:
            break
    return curve, gap


def _chord_shares(targets: Sequence[Point]) -> list[float]:
    reached = [0.0]
    for a, b in pairwise(targets):
        reached.append(reached[-1] + a.distance_to(b))
    return [place / reached[-1] for place in reached]


def _feet(curve: Cubic, targets: Sequence[Point], shares: Sequence[float]) -> tuple[list[float], float]:
    """The parameters moved by one of Newton's steps to the feet of the targets, and the greatest gap there.

    The gap is measured square to the curve at the old place, where the step leaves only a second-order rest.
    """
    (x1, x2, x3), (y1, y2, y3) = curve.powers
    feet: list[float] = []
    greatest = 0.0
    for target, share in zip(targets, shares, strict=True):
        x = curve.start.x + share * (x1 + share * (x2 + share * x3)) - target.x
        y = curve.start.y + share * (y1 + share * (y2 + share * y3)) - target.y
        slope_x = x1 + share * (2.0 * x2 + share * 3.0 * x3)
        slope_y = y1 + share * (2.0 * y2 + share * 3.0 * y3)
        pull = x * slope_x + y * slope_y
        speed = slope_x * slope_x + slope_y * slope_y
        change = speed + x * (2.0 * x2 + 6.0 * share * x3) + y * (2.0 * y2 + 6.0 * share * y3)
        feet.append(min(1.0, max(0.0, share - pull / change)) if change > 0.0 else share)
        if speed > 0.0:
            greatest = max(greatest, abs(x * slope_y - y * slope_x) / math.sqrt(speed))
    return feet, greatest


def _handles(
    targets: Sequence[Point], tangents: Sequence[Point], shares: Sequence[float]
) -> tuple[float, float] | None:
    """The handle lengths of least squares, or None when one is not positive.

    Gaps count square to the targets; gaps along them count a little, which settles handles along a line.
    """
    start, end, leaving, arriving = targets[0], targets[-1], tangents[0], tangents[-1]
    aa = ab = bb = ar = br = 0.0
    for target, tangent, share in zip(targets, tangents, shares, strict=True):
        rest = 1.0 - share
        first, last = 3.0 * rest * rest * share, -3.0 * rest * share * share
        start_weight = rest * rest * rest + first
        x = target.x - start.x * start_weight - end.x * (1.0 - start_weight)
        y = target.y - start.y * start_weight - end.y * (1.0 - start_weight)
        for unit_x, unit_y, weight in ((-tangent.y, tangent.x, 1.0), (tangent.x, tangent.y, _ALONG)):
            a = weight * first * (unit_x * leaving.x + unit_y * leaving.y)
            b = weight * last * (unit_x * arriving.x + unit_y * arriving.y)
            gap = weight * (unit_x * x + unit_y * y)
            aa, ab, bb = aa + a * a, ab + a * b, bb + b * b
            ar, br = ar + a * gap, br + b * gap
    size = aa * bb - ab * ab
    if size <= 0.0:
        return None
    start_handle, end_handle = (ar * bb - br * ab) / size, (br * aa - ar * ab) / size
    return (start_handle, end_handle) if start_handle > 0.0 and end_handle > 0.0 else None
