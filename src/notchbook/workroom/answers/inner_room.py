"""Where the grain line and the title stand on a piece on the sheet: view data, never kept."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.geometry import Point
from notchbook.pattern import Piece

_SHARES = (0.38, 0.62, 0.5, 0.28, 0.72, 0.2, 0.8, 0.12, 0.88)
"""Shares of the width at which an upright line is tried, off the middle first: a level and a title
stand in the middle."""

_LEVELS = (0.6, 0.5, 0.42, 0.34, 0.68, 0.26, 0.2, 0.76)
"""Shares of the height at which the title is tried, from the upper third."""

_HALF_WORDS = 10.0
"""mm; about half the height of the title at the scale at which a whole style is seen."""

_INSET = 0.08
"""Share of a run that is left free at each end of the grain line."""


@dataclass(frozen=True, slots=True)
class InnerRoom:
    """The grain line from ``low`` to ``high``, the middle of the title and how wide it may be (mm)."""

    low: Point
    high: Point
    title: Point
    title_width: float


def inner_room(piece: Piece) -> InnerRoom:
    """Room for a line along the grain inside the piece, and for its title beside the line.

    The grain line is looked for on the outline turned so that the grain runs up; the title is written
    level, where the piece is wide and no inner line runs.
    """
    turn = 90.0 - piece.grain.degrees
    outline = piece.sew_line.flattened(0.5)
    low, high = _upright_run([point.rotated(turn) for point in outline])
    low, high = low.rotated(-turn), high.rotated(-turn)
    level, start, end = _title_level(piece, outline, (low, high))
    if abs(high.y - low.y) > abs(high.x - low.x) and start < low.x < end:
        start, end = (start, low.x) if low.x - start > end - low.x else (low.x, end)
    return InnerRoom(low, high, Point((start + end) / 2.0, level), end - start)


def _upright_run(polygon: Sequence[Point]) -> tuple[Point, Point]:
    """The ends of the first upright line that is nearly as long as any inside the polygon."""
    xs = [point.x for point in polygon]
    left, width = min(xs), max(xs) - min(xs)
    places = [left + share * width for share in _SHARES]
    whole = [x for x in places if len(_crossings(polygon, x, upright=True)) == 2]  # clear of darts
    runs = [(x, _longest(polygon, x, upright=True)) for x in whole or places]
    most = max(high - low for _, (low, high) in runs)
    x, (low, high) = next(run for run in runs if run[1][1] - run[1][0] >= 0.96 * most)
    inset = _INSET * (high - low)
    return Point(x, low + inset), Point(x, high - inset)


def _title_level(
    piece: Piece, outline: Sequence[Point], grain: tuple[Point, Point]
) -> tuple[float, float, float]:
    """A level (y) that is nearly as wide as the piece gets and clear of level lines, and its run (x)."""
    box = piece.bounds
    clear = min(0.12 * box.height, 60.0)
    crossed = [point.y for line in piece.lines for point in (line.path.start, line.path.end)]
    if abs(grain[0].y - grain[1].y) < clear:
        crossed.append(grain[0].y)
    levels = [box.min_y + share * box.height for share in _LEVELS]
    free = [level for level in levels if all(abs(level - other) >= clear for other in crossed)] or levels
    runs = [(level, *_written_run(outline, level)) for level in free]
    most = max(end - start for _, start, end in runs)
    return next(run for run in runs if run[2] - run[1] >= 0.75 * most)


def _written_run(outline: Sequence[Point], level: float) -> tuple[float, float]:
    """The run at a level on which words can stand: what is free a little above and below it too."""
    runs = [_longest(outline, level + aside, upright=False) for aside in (-_HALF_WORDS, 0.0, _HALF_WORDS)]
    start, end = max(run[0] for run in runs), min(run[1] for run in runs)
    return (start, end) if start < end else (runs[1][0], runs[1][0])


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
