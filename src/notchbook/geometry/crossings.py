"""Crossings of chains of segments, as distances along them."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from notchbook.geometry.intersect import own_crossing, segment_pairs
from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE


@dataclass(frozen=True, slots=True)
class Crossing:
    """A place where two paths meet: the distances along each, and the point (mm)."""

    at_self: float
    at_other: float
    point: Point


@dataclass(frozen=True, slots=True)
class _Meeting:
    """A crossing with the sine of the angle between the directions there."""

    crossing: Crossing
    slope: float


def path_crossings(
    segments: Sequence[Segment],
    distances: Sequence[float],
    other_segments: Sequence[Segment],
    other_distances: Sequence[float],
) -> tuple[Crossing, ...]:
    """All places where two chains meet, rising along the first, each once."""
    found: list[_Meeting] = []
    for index, segment in enumerate(segments):
        box = segment.bounds()
        for other_index, other in enumerate(other_segments):
            if box.is_near(other.bounds(), TOLERANCE.crossing_mm):
                found += _meetings(segment, distances[index], other, other_distances[other_index])
    return _each_once(found)


def path_self_crossings(
    segments: Sequence[Segment], distances: Sequence[float], is_closed: bool
) -> tuple[Crossing, ...]:
    """All places where a chain meets itself, the joints of neighbors left out."""
    found: list[_Meeting] = []
    for index, segment in enumerate(segments):
        found += _own_meeting(segment, distances[index])
        box = segment.bounds()
        for later in range(index + 1, len(segments)):
            other = segments[later]
            if not box.is_near(other.bounds(), TOLERANCE.crossing_mm):
                continue
            is_next = later == index + 1 and _goes_on(segment, other)
            is_wrapped = is_closed and index == 0 and later == len(segments) - 1 and _goes_on(other, segment)
            if not is_next and not is_wrapped:
                found += _meetings(segment, distances[index], other, distances[later])
    length = distances[-1]
    return tuple(
        crossing
        for crossing in _each_once(found)
        if not _is_joint(crossing.at_self, crossing.at_other, length, is_closed)
    )


def _is_joint(first: float, second: float, length: float, is_closed: bool) -> bool:
    apart = second - first
    margin = TOLERANCE.same_crossing_mm
    return apart <= margin or (is_closed and length - apart <= margin)


def _goes_on(segment: Segment, following: Segment) -> bool:
    """Whether two neighbors advance together in one direction, so that they meet at their joint alone."""
    steps = _steps(segment) + _steps(following)
    ahead = following.end - segment.start
    return all(step.dot(ahead) > 0.0 for step in steps)


def _steps(segment: Segment) -> list[Point]:
    """The sides of the polygon of control points, those without length left out."""
    if isinstance(segment, Line):
        points = [segment.start, segment.end]
    else:
        points = [segment.start, segment.start_handle, segment.end_handle, segment.end]
    return [b - a for a, b in pairwise(points) if a != b]


def _own_meeting(segment: Segment, before: float) -> list[_Meeting]:
    pair = None if isinstance(segment, Line) else own_crossing(segment)
    if pair is None:
        return []
    t, u = pair
    crossing = Crossing(before + segment.distance_at(t), before + segment.distance_at(u), segment.at(t))
    return [_Meeting(crossing, 1.0)]


def _meetings(segment: Segment, before: float, other: Segment, other_before: float) -> list[_Meeting]:
    """The meetings of two segments, with distances along their paths."""
    return [
        _Meeting(
            Crossing(
                before + segment.distance_at(t),
                other_before + other.distance_at(u),
                segment.at(t).lerp(other.at(u), 0.5),
            ),
            _slope(segment.derivative(t), other.derivative(u)),
        )
        for t, u in segment_pairs(segment, other)
    ]


def _slope(first: Point, second: Point) -> float:
    size = first.norm() * second.norm()
    return abs(first.cross(second)) / size if size else 1.0


def _each_once(found: list[_Meeting]) -> tuple[Crossing, ...]:
    """The crossings in order, with those that are the same place left out."""
    kept: list[_Meeting] = []
    for meeting in sorted(found, key=lambda item: (item.crossing.at_self, item.crossing.at_other)):
        if not any(_is_same(meeting, other) for other in kept):
            kept.append(meeting)
    return tuple(meeting.crossing for meeting in kept)


def _is_same(one: _Meeting, other: _Meeting) -> bool:
    is_touch = max(one.slope, other.slope) <= TOLERANCE.same_touch_slope
    margin = TOLERANCE.same_touch_mm if is_touch else TOLERANCE.same_crossing_mm
    return (
        abs(one.crossing.at_self - other.crossing.at_self) <= margin
        and abs(one.crossing.at_other - other.crossing.at_other) <= margin
    )
