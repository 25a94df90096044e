"""Where the grain line and the title stand on a piece on the sheet: view data, never kept."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.geometry import Point
from notchbook.pattern import Piece
from notchbook.pattern.piece import InternalLine

_SHARES = (0.38, 0.62, 0.5, 0.28, 0.72, 0.2, 0.8, 0.12, 0.88)
"""Shares of the width at which an upright line is tried, off the middle first: a level and a title
stand in the middle."""

_LEVELS = (0.6, 0.5, 0.42, 0.34, 0.68, 0.26, 0.2, 0.76)
"""Shares of the height at which the title is tried, from the upper third."""

_HALF_WORDS = 10.0
"""mm; about half the height of the title at the scale at which a whole style is seen."""

_FREE = 60.0
"""mm that a title keeps from a level line where the piece allows."""

_NARROW = 0.6
"""A run that is narrower than this share of the widest is passed over for one nearer to a level line."""

_INSET = 0.08
"""Share of a run that is left free at each end of the grain line."""


@dataclass(frozen=True, slots=True)
class InnerRoom:
    """The grain line from ``low`` to ``high``; the middle of the title, its room's width and height (mm)."""

    low: Point
    high: Point
    title: Point
    title_width: float
    title_height: float


def inner_room(piece: Piece) -> InnerRoom:
    """Room for a line along the grain inside the piece, and for its title beside the line.

    The grain line is looked for on the outline turned so that the grain runs up; the title is written
    level, where the piece is wide and neither an inner line nor a dart runs.
    """
    turn = 90.0 - piece.grain.degrees
    outline = piece.sew_line.flattened(0.5)
    legs = [line.path.flattened(0.5) for line in piece.lines if line.kind == "dart_leg"]
    low, high = _upright_run(
        [point.rotated(turn) for point in outline],
        [[point.rotated(turn) for point in leg] for leg in legs],
    )
    low, high = low.rotated(-turn), high.rotated(-turn)
    stands = abs(high.y - low.y) > abs(high.x - low.x)
    upright = [line.path.flattened(0.5) for line in piece.lines if _is_upright(line)]
    title = _title_run(piece, (outline, *upright), (low, high) if stands else None, low.y)
    return InnerRoom(
        low, high, Point((title.start + title.end) / 2.0, title.level), title.width, title.height
    )


def _is_upright(line: InternalLine) -> bool:
    """Whether words stand beside a line, not above or below it: a leg of a dart, a crease."""
    box = line.path.bounds()
    return line.kind == "dart_leg" or box.height > box.width


def _upright_run(polygon: Sequence[Point], legs: Sequence[Sequence[Point]]) -> tuple[Point, Point]:
    """The ends of the first upright line that is nearly as long as any inside the polygon."""
    xs = [point.x for point in polygon]
    left, width = min(xs), max(xs) - min(xs)
    places = [left + share * width for share in _SHARES]
    whole = [x for x in places if _is_clear(polygon, legs, x)]
    runs = [(x, _longest(polygon, x, upright=True)) for x in whole or places]
    most = max(high - low for _, (low, high) in runs)
    x, (low, high) = next(run for run in runs if run[1][1] - run[1][0] >= 0.96 * most)
    inset = _INSET * (high - low)
    return Point(x, low + inset), Point(x, high - inset)


def _is_clear(polygon: Sequence[Point], legs: Sequence[Sequence[Point]], x: float) -> bool:
    """Whether an upright line meets no dart, neither from the edge nor inside."""
    if len(_crossings(polygon, x, upright=True)) != 2:
        return False
    return not any(min(p.x for p in leg) < x < max(p.x for p in leg) for leg in legs)


@dataclass(frozen=True, slots=True)
class _TitleRun:
    """A level (y) with the run (x) on which words can stand, and how high they may be."""

    level: float
    start: float
    end: float
    height: float

    @property
    def width(self) -> float:
        return self.end - self.start


def _title_run(
    piece: Piece,
    shapes: Sequence[Sequence[Point]],
    grain: tuple[Point, Point] | None,
    grain_level: float,
) -> _TitleRun:
    """A run that is nearly as wide as any and has room above and below; beside an upright ``grain`` line."""
    box = piece.bounds
    ends = (p.y for line in piece.lines if not _is_upright(line) for p in (line.path.start, line.path.end))
    crossed = [*ends, *(() if grain else (grain_level,))]
    bounds = sorted({box.min_y, *crossed, box.max_y})
    levels = (
        *(box.min_y + share * box.height for share in _LEVELS),
        *((low + high) / 2.0 for low, high in pairwise(bounds)),
    )
    runs = [
        _beside(run, grain)
        for level in levels
        for run in _written_runs(shapes, level, min((abs(level - y) for y in crossed), default=box.height))
    ]
    wanted = min(0.24 * box.height, 2.0 * _FREE)
    free = [run for run in runs if run.height >= wanted] or runs
    most = max(run.width for run in free)
    if most < _NARROW * max(run.width for run in runs):
        free = [run for run in runs if run.height >= 2.0 * _HALF_WORDS] or runs
        most = max(run.width for run in free)
    return next(run for run in free if run.width >= 0.75 * most)


def _beside(run: _TitleRun, grain: tuple[Point, Point] | None) -> _TitleRun:
    """The run on the wider side of an upright grain line."""
    if grain is None or not run.start < grain[0].x < run.end:
        return run
    x = grain[0].x
    return replace(run, end=x) if x - run.start > run.end - x else replace(run, start=x)


def _written_runs(shapes: Sequence[Sequence[Point]], level: float, away: float) -> list[_TitleRun]:
    """The runs at a level on which words can stand: what is free a little above and below it too. ``away`` is
    the distance of the nearest level line."""
    rows = [_free_runs(shapes, level + aside) for aside in (-_HALF_WORDS, 0.0, _HALF_WORDS)]
    found = [
        _TitleRun(level, start, end, 2.0 * away)
        for first in rows[0]
        for second in rows[1]
        for third in rows[2]
        for start, end in [(max(first[0], second[0], third[0]), min(first[1], second[1], third[1]))]
        if start < end
    ]
    return found or [_TitleRun(level, *(_longest(shapes[0], level, upright=False)[:1] * 2), 2.0 * away)]


def _free_runs(shapes: Sequence[Sequence[Point]], level: float) -> list[tuple[float, float]]:
    """The runs inside the outline (the first shape) at a level, cut where a leg of an inner dart crosses."""
    outline, *legs = shapes
    crossings = _crossings(outline, level, upright=False)
    cuts = sorted(x for leg in legs for x in _leg_crossings(leg, level))
    found: list[tuple[float, float]] = []
    for start, end in zip(crossings[::2], crossings[1::2], strict=False):
        places = [start, *(x for x in cuts if start < x < end), end]
        found.extend(pairwise(places))
    return found


def _leg_crossings(leg: Sequence[Point], level: float) -> list[float]:
    return [
        a.x + (level - a.y) / (b.y - a.y) * (b.x - a.x)
        for a, b in pairwise(leg)
        if (a.y > level) != (b.y > level)
    ]


def _longest(polygon: Sequence[Point], at: float, *, upright: bool) -> tuple[float, float]:
    """The longest run inside the polygon along the upright (or level) line at ``at``."""
    crossings = _crossings(polygon, at, upright=upright)
    runs = list(zip(crossings[::2], crossings[1::2], strict=False))
    return max(runs, key=lambda run: run[1] - run[0], default=(0.0, 0.0))


def _crossings(polygon: Sequence[Point], at: float, *, upright: bool) -> list[float]:
    """Where the upright (or level) line at ``at`` crosses the outline, in order."""
    points = [(p.x, p.y) if upright else (p.y, p.x) for p in polygon]
    return sorted(
        b + (at - a) / (c - a) * (d - b)
        for (a, b), (c, d) in zip(points, (*points[1:], points[0]), strict=True)
        if (a > at) != (c > at)
    )
