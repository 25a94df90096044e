"""Measuring a finished outline with other means than the drafts: dense polylines and numpy.

Lengths are sums of chords, directions come from places along the polyline, never from handles or
from the arc lengths of the geometry. With 256 chords a segment, a quarter turn of 300 mm is short
by less than 0.001 mm.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from notchbook.geometry import Cubic, Path, Point
from notchbook.units import TOLERANCES

_CHORDS = 256
_REACH = 1.0
"""mm from an end to the first of the two places that give its direction."""

Numbers = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Chords:
    """Straight pieces by their starts and steps (n, 2), mm; ``squares`` are their squared lengths (n,)."""

    starts: Numbers
    steps: Numbers
    squares: Numbers

    @staticmethod
    def joined(several: Sequence["Chords"]) -> "Chords":
        """All of them as one."""
        return Chords(
            np.concatenate([one.starts for one in several]),
            np.concatenate([one.steps for one in several]),
            np.concatenate([one.squares for one in several]),
        )

    def nearest(self, point: Point) -> tuple[int, float, float]:
        """The chord nearest to a point, the share of it at which it is, and the gap, mm."""
        offsets = np.array([point.x, point.y]) - self.starts
        shares = np.clip((offsets * self.steps).sum(axis=1) / self.squares, 0.0, 1.0)
        gaps = np.hypot(*(offsets - self.steps * shares[:, None]).T)
        best = int(gaps.argmin())
        return best, float(shares[best]), float(gaps[best])


@dataclass(frozen=True, eq=False)
class Dense:
    """A polyline: points (n, 2) in mm and the distance of each along it, mm."""

    points: Numbers
    along: Numbers

    @property
    def length(self) -> float:
        """The length of the polyline, mm."""
        return float(self.along[-1])

    @cached_property
    def chords(self) -> Chords:
        """Its chords."""
        steps = np.diff(self.points, axis=0)
        squares = np.maximum((steps**2).sum(axis=1), np.finfo(float).tiny)
        return Chords(self.points[:-1], steps, squares)

    def at(self, distance: float) -> Numbers:
        """The point (2,) at a distance along the polyline, mm."""
        return np.array([np.interp(distance, self.along, self.points[:, axis]) for axis in (0, 1)])


@lru_cache(maxsize=1024)
def dense(path: Path) -> Dense:
    """The dense polyline of a path."""
    rows = [_corner(path.start)]
    for segment in path.segments:
        if isinstance(segment, Cubic):
            rows.append(_cubic_points(segment))
        else:
            rows.append(_corner(segment.end))
    points = np.concatenate(rows)
    steps = np.hypot(*np.diff(points, axis=0).T)
    return Dense(points, np.concatenate(([0.0], np.cumsum(steps))))


def up_to(line: Dense, distance: float) -> Dense:
    """The polyline from its start to a distance along it, mm; the whole of it where that is no shorter."""
    if distance >= line.length:
        return line
    count = int(np.searchsorted(line.along, distance))
    end = line.at(distance)
    return Dense(np.vstack([line.points[:count], end]), np.append(line.along[:count], distance))


def length(path: Path) -> float:
    """The length of a path as the sum of its chords, mm."""
    return dense(path).length


def start_direction(path: Path) -> float:
    """The direction of travel at the start of a path, degrees; 0 for a path without length.

    Two places along the polyline, put on a parabola with its start, give the tangent there.
    """
    line = dense(_first_part(path))
    reach = min(_REACH, line.length / 4)
    near = min(int(np.searchsorted(line.along, reach)), len(line.along) - 2)
    far = max(int(np.searchsorted(line.along, 2 * reach)), near + 1)
    first, second = line.points[near] - line.points[0], line.points[far] - line.points[0]
    along = first * line.along[far] ** 2 - second * line.along[near] ** 2
    if near == 0:
        along = second
    return float(np.degrees(np.arctan2(along[1], along[0])))


def _first_part(path: Path) -> Path:
    """The first segment of a path that is long enough to have a direction."""
    for segment in path.segments:
        part = Path((segment,))
        if length(part) > TOLERANCES.sew_length:
            return part
    return path


def end_direction(path: Path) -> float:
    """The direction of travel at the end of a path, degrees."""
    return wrapped(start_direction(path.reversed()) + 180.0)


def wrapped(degrees: float) -> float:
    """The angle in (-180, 180]."""
    turned = (degrees + 180.0) % 360.0 - 180.0
    return 180.0 if turned == -180.0 else turned


def place_along(path: Path, point: Point) -> tuple[float, float]:
    """The distance along the path of the place nearest to a point, and the gap between them, mm."""
    line = dense(path)
    best, share, gap = line.chords.nearest(point)
    return float(line.along[best] + share * np.sqrt(line.chords.squares[best])), gap


def chords_of(paths: Iterable[Path]) -> Chords:
    """The chords of several paths together."""
    return Chords.joined([dense(path).chords for path in paths])


def bend(path: Path) -> tuple[float, Point]:
    """How far a path strays from the straight line between its ends, mm, and where it is farthest."""
    points = dense(path).points
    chord = points[-1] - points[0]
    size = float(np.hypot(*chord))
    offsets = points - points[0]
    if size == 0.0:
        strays = np.hypot(*offsets.T)
    else:
        strays = np.abs(chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0]) / size
    farthest = int(strays.argmax())
    return float(strays[farthest]), Point(float(points[farthest, 0]), float(points[farthest, 1]))


def _corner(point: Point) -> Numbers:
    return np.array([[point.x, point.y]])


def _cubic_points(segment: Cubic) -> Numbers:
    """The points of a cubic after its start, by the Bernstein polynomials."""
    t = np.linspace(0.0, 1.0, _CHORDS + 1)[1:, None]
    handles = (segment.start, segment.start_handle, segment.end_handle, segment.end)
    weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3)
    total = np.zeros((_CHORDS, 2))
    for weight, handle in zip(weights, handles, strict=True):
        total += weight * np.array([[handle.x, handle.y]])
    return total
