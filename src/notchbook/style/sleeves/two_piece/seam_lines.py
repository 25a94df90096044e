"""The seams of a two-piece sleeve beside its folds: by as much outside on the top as inside on the under."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, curve_between
from notchbook.style.sleeves.two_piece.folds import Fold

_ABOVE = 400.0
"""mm above the biceps line within which a seam meets the cap."""


@dataclass(frozen=True, slots=True)
class Shift:
    """How far a seam lies from its fold at the biceps line and at the hem, mm; between, evenly less."""

    at_biceps: float
    at_hem: float


@dataclass(frozen=True, slots=True)
class SeamLine:
    """A seam from the cap down to the hem, and how far from its two ends it bends round the elbow, mm."""

    path: Path
    straight_above: float
    straight_below: float


def seam_line(fold: Fold, shift: Shift, sign: float) -> Path:
    """The seam ``sign`` times its shift outside the fold, from far above the cap down to the hem."""
    upper = fold.biceps.distance_to(fold.bends)
    lower = fold.straight.distance_to(fold.hem)
    whole = upper + fold.bends.distance_to(fold.straight) + lower

    def beside(along: float) -> float:
        return sign * (shift.at_biceps + (shift.at_hem - shift.at_biceps) * along / whole)

    top = fold.biceps + fold.beside_upper * beside(0.0)
    bends = fold.bends + fold.beside_upper * beside(upper)
    straight = fold.straight + fold.beside_lower * beside(whole - lower)
    hem = fold.hem + fold.beside_lower * beside(whole)
    above = top + (top - bends).unit() * _ABOVE
    bend = curve_between(bends, (bends - top).direction(), straight, (hem - straight).direction())
    return Path.of(Line(above, bends), bend, Line(straight, hem))


def from_cap(line: Path, cap: Path) -> tuple[SeamLine, float]:
    """The seam from where it meets the cap, and how far along the cap that is; StepRefused
    ``two-piece-misses-cap``."""
    met = line.intersections(cap)
    if not met:
        raise StepRefused("two-piece-misses-cap")
    last = met[-1]
    path = line.between(last.at_self, line.length)
    return seam_from(path.with_start(cap.point_at(last.at_other)), line), last.at_other


def seam_from(path: Path, line: Path) -> SeamLine:
    """A seam that was begun at its cap, with the straight parts of the whole line."""
    below = line.length - line.distances[2]
    bend = line.distances[2] - line.distances[1]
    return SeamLine(path, path.length - below - bend, below)


def hem_between(first: Path, second: Path, along: tuple[Point, Point]) -> Path:
    """The hem from the end of one seam to the end of another in the directions ``along``, square to the folds
    beside which the seams lie: so it runs on straight over each seam."""
    return Path.of(curve_between(first.end, along[0].direction(), second.end, along[1].direction()))


def level_between(first: Path, second: Path, at: tuple[Point, Point]) -> Path:
    """The straight line through two places from one seam to another."""
    way = (at[1] - at[0]).unit() * _ABOVE
    middle = at[0].lerp(at[1], 0.5)
    line = Path.line(middle - way, middle + way)
    ends = [line.intersections(seam) for seam in (first, second)]
    return Path.line(line.point_at(ends[0][0].at_self), line.point_at(ends[1][0].at_self))
