"""The seams of a two-piece sleeve beside its folds: by as much outside on the top as inside on the under."""

from dataclasses import dataclass
from itertools import accumulate, pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, Segment, curve_between
from notchbook.style.sleeves.two_piece.folds import Fold

_ABOVE = 400.0
"""mm above the biceps line within which a seam meets the cap."""

_ALIKE = 1e-9
"""The sine of an angle that is none."""


@dataclass(frozen=True, slots=True)
class Shift:
    """How far a seam lies from its fold at the biceps line and at the hem, mm; between, evenly less down to
    where the fold turns to the hem."""

    at_biceps: float
    at_hem: float


@dataclass(frozen=True, slots=True)
class SeamLine:
    """A seam from the cap down to the hem, and how far from its two ends lies the stretch in which the outer
    one of two is longer, mm: round the elbow; down to the turn above the hem where it lies beside the fold
    there."""

    path: Path
    straight_above: float
    straight_below: float


def seam_line(fold: Fold, shift: Shift, sign: float) -> Path:
    """The seam ``sign`` times its shift outside the fold, from far above the cap down to the hem."""
    walked = _walked(fold)
    # From the corner of the turn above the hem, if there is one, the seam lies as far beside as at the hem.
    full = (walked[3] + walked[min(4, len(walked) - 1)]) / 2.0

    def beside(along: float) -> float:
        return sign * (shift.at_biceps + (shift.at_hem - shift.at_biceps) * min(along / full, 1.0))

    ends = [(leg.start, leg.end, leg.beside) for leg in fold.legs]
    stretches = [
        Path.line(start + away * beside(walked[2 * index]), end + away * beside(walked[2 * index + 1]))
        for index, (start, end, away) in enumerate(ends)
    ]
    above = stretches[0].start - stretches[0].tangent_at(0.0, "after") * _ABOVE
    segments: list[Segment] = [Line(above, stretches[0].end)]
    for before, after in pairwise(stretches):
        ways = (one.tangent_at(0.0, "after").direction() for one in (before, after))
        segments.append(curve_between(before.end, next(ways), after.start, next(ways)))
        segments.append(Line(after.start, after.end))
    return Path(tuple(segments))


def _walked(fold: Fold) -> list[float]:
    """How far from the biceps line each leg begins and ends, mm, straight from leg to leg."""
    places = [place for leg in fold.legs for place in (leg.start, leg.end)]
    return [0.0, *accumulate(one.distance_to(other) for one, other in pairwise(places))]


def from_cap(line: Path, shift: Shift, cap: Path) -> tuple[SeamLine, float]:
    """The seam from where it meets the cap, and how far along the cap that is; StepRefused
    ``two-piece-misses-cap``."""
    met = line.intersections(cap)
    if not met:
        raise StepRefused("two-piece-misses-cap")
    last = met[-1]
    path = line.between(last.at_self, line.length)
    return seam_from(path.with_start(cap.point_at(last.at_other)), line, shift), last.at_other


def seam_from(path: Path, line: Path, shift: Shift) -> SeamLine:
    """A seam that was begun at its cap, with the straight parts of the whole line."""
    lower = line.distances[2 if shift.at_hem == 0.0 else -2]
    below = line.length - lower
    bend = lower - line.distances[1]
    return SeamLine(path, path.length - below - bend, below)


def hem_between(first: Path, second: Path, along: tuple[Point, Point]) -> Path:
    """The hem from the end of one seam to the end of another in the directions ``along``, square to the folds
    beside which the seams lie: so it runs on straight over each seam. Between folds that end alike it is
    straight."""
    if abs(along[0].cross(along[1])) <= _ALIKE:
        return Path.line(first.end, second.end)
    return Path.of(curve_between(first.end, along[0].direction(), second.end, along[1].direction()))


def level_between(first: Path, second: Path, at: tuple[Point, Point]) -> Path:
    """The straight line through two places from one seam to another."""
    way = (at[1] - at[0]).unit() * _ABOVE
    middle = at[0].lerp(at[1], 0.5)
    line = Path.line(middle - way, middle + way)
    ends = [line.intersections(seam) for seam in (first, second)]
    return Path.line(line.point_at(ends[0][0].at_self), line.point_at(ends[1][0].at_self))
