"""The inseam of a legging: through thigh, knee and calf to the hem, the same in front and behind."""

from itertools import pairwise

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch.leg_easing import LegEase
from notchbook.geometry import Cubic, Path, Point

_NEAR = 0.12
"""Over the way from crotch to knee; a level nearer than this to the one above, or to the hem, is left out."""


def inseam(given: LeggingsGiven, crotch_width: float, ease: LegEase) -> Path:
    """From the crotch point down to the hem, on the side of +x; upright at the hem.

    Each width is halved about the middle of the leg at x = 0, less or more by what the level gives way
    (``ease``). The line bends evenly through the levels.
    """
    near = _NEAR * given.knee_down
    levels = [(0.0, crotch_width)]
    for level in _asked(given, ease):
        if levels[-1][0] + near <= level[0] <= given.hem_down - near:
            levels.append(level)
    points = [Point(width / 2.0, -down) for down, width in (*levels, (given.hem_down, given.ankle))]
    slopes = _slopes(points)
    return Path(
        tuple(
            _hermite(start, end, slopes[index], slopes[index + 1])
            for index, (start, end) in enumerate(pairwise(points))
        )
    )


def _asked(given: LeggingsGiven, ease: LegEase) -> list[tuple[float, float]]:
    """The levels between crotch and hem: how far below the crotch, and how wide, mm."""
    asked = [
        (figure("leggings.thigh_level") * given.knee_down, given.thigh - ease.thigh),
        (given.knee_down, given.knee + ease.knee),
    ]
    if given.calf_down is not None and given.calf is not None:
        asked.append((given.calf_down, given.calf - ease.calf))
    return asked


def _slopes(points: list[Point]) -> list[float]:
    """How much x grows for each mm downward, at each point: the curvature runs on through the levels.

    A cubic spline whose slopes at the ends are given: of its first chord, and upright at the hem.
    """
    spans = [a.y - b.y for a, b in pairwise(points)]
    chords = [(b.x - a.x) / span for (a, b), span in zip(pairwise(points), spans, strict=True)]
    first = figure("leggings.start_over_chord") * chords[0]
    inner = len(points) - 2
    upper, right = [0.0] * inner, [0.0] * inner
    for row in range(inner):
        here, there = spans[row], spans[row + 1]
        wanted = 3.0 * (there * chords[row] + here * chords[row + 1])
        before = first if row == 0 else right[row - 1]
        pivot = 2.0 * (here + there) - there * (upper[row - 1] if row else 0.0)
        upper[row] = here / pivot
        right[row] = (wanted - there * before) / pivot
    slopes = [0.0]
    for row in reversed(range(inner)):
        slopes.insert(0, right[row] - upper[row] * slopes[0])
    return [first, *slopes]


def _hermite(start: Point, end: Point, slope: float, other: float) -> Cubic:
    third = (start.y - end.y) / 3.0
    return Cubic(
        start,
        Point(start.x + slope * third, start.y - third),
        Point(end.x - other * third, end.y + third),
        end,
    )
