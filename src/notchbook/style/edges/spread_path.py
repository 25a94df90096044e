"""A line cut square to the grain and spread: what lies below moves, and the cut is drawn over fair."""

from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import StepRefused
from notchbook.geometry import Cubic, Line, Path, Point, Segment, Transform, curve_between
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Spread:
    """A level at ``height`` (y, mm) below which everything moves down by ``amount``, or up when negative.

    Moving up takes out a band of that height below the level.
    """

    height: float
    amount: float

    @property
    def lower(self) -> float:
        """The lower end of what is taken out; the level itself when the piece is lengthened."""
        return self.height + min(self.amount, 0.0)

    @property
    def drop(self) -> Transform:
        """The motion of what lies below."""
        return Transform.translation(0.0, -self.amount)

    def is_above(self, path: Path) -> bool:
        """Whether the whole line lies above the level or on it."""
        return path.bounds().min_y >= self.height - TOLERANCES.closure

    def is_below(self, path: Path) -> bool:
        """Whether the whole line lies below the level and below what is taken out."""
        top = path.bounds().max_y
        return top <= self.lower + TOLERANCES.closure and top < self.height + TOLERANCES.closure

    def moved_point(self, point: Point) -> Point:
        """The place of a point after the spread; in the band that is taken out it comes to the level."""
        if point.y >= self.height:
            return point
        if point.y >= self.lower:
            return Point(point.x, self.height)
        return self.drop.apply(point)


def crossings_of(path: Path, height: float) -> tuple[float, ...]:
    """The distances along a line at which it crosses a height."""
    box = path.bounds()
    level = Path.line(Point(box.min_x - 1.0, height), Point(box.max_x + 1.0, height))
    places: list[float] = []
    for crossing in path.intersections(level):
        if not places or crossing.at_self - places[-1] > TOLERANCES.closure:
            places.append(crossing.at_self)
    return tuple(places)


def spread_path(path: Path, spread: Spread, name: str) -> Path:
    """The line with what lies below the level moved, and the stretch that was cut drawn anew.

    A straight stretch stays straight, from its upper end to its moved lower end; a curve keeps both its end
    directions. Where a straight stretch turned, the curve beside it turns its end with it.

    StepRefused ``length-crosses-twice`` when it crosses the level more than once, ``length-too-short`` when
    nothing of the stretch would be left. ``name`` is the line as it is said.
    """
    if path.start.y < path.end.y:
        return spread_path(path.reversed(), spread, name).reversed()
    places = [crossings_of(path, height) for height in (spread.height, spread.lower)]
    if any(len(found) != 1 for found in places):
        raise StepRefused("length-crosses-twice", edge=name)
    first, last = (_segment_at(path, found[0]) for found in places)
    above = path.segments[:first]
    below = tuple(segment.transformed(spread.drop) for segment in path.segments[last + 1 :])
    upper, lower = path.segments[first], path.segments[last].transformed(spread.drop)
    if upper.start.y - lower.end.y <= TOLERANCES.closure:
        raise StepRefused("length-too-short", edge=name, amount=-spread.amount)
    middle = _between(upper, lower, path.segments[first : last + 1])
    if isinstance(middle, Line):
        above, below = _turned_end(above, middle), _turned_start(middle, below)
    return Path((*above, middle, *below))


def _segment_at(path: Path, distance: float) -> int:
    """Which segment a place lies on; at a joint the earlier one."""
    for index, end in enumerate(path.distances[1:]):
        if distance <= end + TOLERANCES.join:
            return index
    return len(path.segments) - 1


def _between(upper: Segment, lower: Segment, old: tuple[Segment, ...]) -> Segment:
    start, end = upper.start, lower.end
    if len(old) == 1 and isinstance(old[0], Cubic):
        share = start.distance_to(end) / old[0].start.distance_to(old[0].end)
        leaving, arriving = old[0].start_handle - old[0].start, old[0].end - old[0].end_handle
        return Cubic(start, start + leaving * share, end - arriving * share, end)
    if all(isinstance(one, Line) for one in old) and _are_one_line(old):
        return Line(start, end)
    leaving, arriving = upper.tangent(0.0), lower.tangent(1.0)
    return curve_between(start, leaving.direction(), end, arriving.direction())


def _are_one_line(segments: tuple[Segment, ...]) -> bool:
    return all(
        abs(one.tangent(1.0).cross(other.tangent(0.0))) < TOLERANCES.join for one, other in pairwise(segments)
    )


def _turned_end(above: tuple[Segment, ...], line: Line) -> tuple[Segment, ...]:
    """The curve before a straight stretch, its end turned into the new direction."""
    if not above or not isinstance(above[-1], Cubic):
        return above
    curve = above[-1]
    handle = curve.end - line.tangent(0.0) * curve.end.distance_to(curve.end_handle)
    return (*above[:-1], replace(curve, end_handle=handle))


def _turned_start(line: Line, below: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """The curve after a straight stretch, its start turned into the new direction."""
    if not below or not isinstance(below[0], Cubic):
        return below
    curve = below[0]
    handle = curve.start + line.tangent(1.0) * curve.start.distance_to(curve.start_handle)
    return (replace(curve, start_handle=handle), *below[1:])
