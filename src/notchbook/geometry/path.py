"""Paths: chains of segments, addressed by the distance from their start."""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise
from typing import Literal

from notchbook.errors import GeometryError
from notchbook.geometry.area import swept_area, winding
from notchbook.geometry.box import Box
from notchbook.geometry.crossings import Crossing, path_crossings, path_self_crossings
from notchbook.geometry.flatten import flattened_segment
from notchbook.geometry.line import Line
from notchbook.geometry.nearest import Nearest, nearest_parameter
from notchbook.geometry.path_data import DataRow, segments_from_data, segments_to_data
from notchbook.geometry.places import clamped
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE
from notchbook.geometry.transform import Transform

Side = Literal["before", "after"]
"""Which of two segments speaks for the corner between them."""


@dataclass(frozen=True)
class Path:
    """A chain of segments, mm. Each starts where the one before ends.

    Gaps up to ``join_mm`` are closed when the path is made (the later start gives way); wider ones are
    refused with the GeometryError ``path-broken``, no segment at all with ``path-empty``. The path is closed
    when it ends where it starts. Segments without length are kept, but never speak for a direction.

    Places are distances from the start along the path. A distance outside [0, length] by more than
    ``place_mm`` is refused with ``place-outside``.
    """

    segments: tuple[Segment, ...]

    def __post_init__(self) -> None:
        object.__setattr__(self, "segments", _chained(self.segments))

    def __hash__(self) -> int:
        return self._hash

    @staticmethod
    def of(*segments: Segment) -> "Path":
        """The path of these segments."""
        return Path(segments)

    @staticmethod
    def line(start: Point, end: Point) -> "Path":
        """The straight path between two points."""
        return Path((Line(start, end),))

    @staticmethod
    def polyline(points: Iterable[Point], closed: bool = False) -> "Path":
        """The straight segments through the points; ``closed`` adds the one back to the first.

        GeometryError ``path-empty`` with fewer than two points.
        """
        listed = list(points)
        if closed and listed and listed[-1] != listed[0]:
            listed.append(listed[0])
        return Path(tuple(Line(a, b) for a, b in pairwise(listed)))

    @staticmethod
    def from_data(data: Sequence[Sequence[str | float]]) -> "Path":
        """The path of rows written by :meth:`to_data`; GeometryError ``path-data`` for anything else."""
        return Path(segments_from_data(data))

    def to_data(self) -> list[DataRow]:
        """Rows ["M", x, y], then ["L", x, y] or ["C", x1, y1, x2, y2, x, y]: lossless, fit for JSON."""
        return segments_to_data(self.segments)

    @property
    def start(self) -> Point:
        """The first point."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """The last point."""
        return self.segments[-1].end

    @property
    def length(self) -> float:
        """The arc length, mm."""
        return self.distances[-1]

    @property
    def is_closed(self) -> bool:
        """Whether the path ends where it starts, after going anywhere."""
        return self.start == self.end and self.length > TOLERANCE.join_mm

    @cached_property
    def distances(self) -> tuple[float, ...]:
        """The distances of the ends of the segments: 0 first, the length last, mm."""
        return (0.0, *accumulate(segment.length for segment in self.segments))

    def point_at(self, distance: float) -> Point:
        """The point at a distance from the start."""
        index, rest = self._locate(distance, "before")
        return self.segments[index].point_at(rest)

    def tangent_at(self, distance: float, side: Side = "before") -> Point:
        """The unit direction of travel at a distance.

        At a corner the segment ``before`` or ``after`` it speaks; on a closed path the last one comes
        before the first one, on an open path the ends have one side only. ``no-direction`` when the path
        has no length.
        """
        index, rest = self._locate_directed(distance, side)
        return self.segments[index].tangent_at(rest)

    def curvature_at(self, distance: float, side: Side = "before") -> float:
        """The signed curvature at a distance, 1/mm: left turns positive, sides as for tangents."""
        index, rest = self._locate_directed(distance, side)
        return self.segments[index].curvature_at(rest)

    def split_at(self, distance: float) -> "tuple[Path, Path]":
        """The parts before and after a distance. At an end one part is a line without length."""
        index, rest = self._locate(distance, "after")
        segment = self.segments[index]
        before, after = self.segments[:index], self.segments[index + 1 :]
        if rest <= TOLERANCE.join_mm:
            after = (segment, *after)
        elif rest >= segment.length - TOLERANCE.join_mm:
            before = (*before, segment)
        else:
            first, second = segment.split_at(rest)
            before, after = (*before, first), (second, *after)
        return (
            Path(before or (Line(self.start, self.start),)),
            Path(after or (Line(self.end, self.end),)),
        )

    def between(self, start: float, end: float) -> "Path":
        """The part from one distance to another.

        On a closed path a ``start`` beyond the ``end`` runs on through the start of the path; on an open
        path it is refused with ``between-backward``.
        """
        start, end = clamped(start, self.length), clamped(end, self.length)
        if start <= end:
            return self.split_at(end)[0].split_at(start)[1]
        if not self.is_closed:
            raise GeometryError("between-backward", start=start, end=end)
        return self.split_at(start)[1].joined(self.split_at(end)[0])

    def starting_at(self, distance: float) -> "Path":
        """The same closed path, started elsewhere; ``path-open`` for an open one."""
        self._require_closed()
        before, after = self.split_at(distance)
        return after.joined(before)

    def reversed(self) -> "Path":
        """The same path traveled the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def transformed(self, transform: Transform) -> "Path":
        """The image of the path. A mirror image keeps the order, so that its area changes sign."""
        return Path(tuple(segment.transformed(transform) for segment in self.segments))

    def joined(self, other: "Path") -> "Path":
        """This path and then the other one, which must start at its end (``path-broken``).

        A part without any length adds nothing.
        """
        gap = self.end.distance_to(other.start)
        if gap > TOLERANCE.join_mm:
            raise GeometryError("path-broken", gap=gap)
        if other.length <= TOLERANCE.join_mm:
            return self
        if self.length <= TOLERANCE.join_mm:
            return other
        return Path((*self.segments, *other.segments))

    def with_start(self, point: Point) -> "Path":
        """The path with its first point moved; the tangent there stays (meant for snapping)."""
        first = self.segments[0]
        return Path((first.with_ends(point, first.end), *self.segments[1:]))

    def with_end(self, point: Point) -> "Path":
        """The path with its last point moved; the tangent there stays (meant for snapping)."""
        last = self.segments[-1]
        return Path((*self.segments[:-1], last.with_ends(last.start, point)))

    def area(self) -> float:
        """The area of a closed path, mm², counter-clockwise positive; ``path-open`` for an open one."""
        self._require_closed()
        return swept_area(self.segments, self.bounds().center)

    def contains(self, point: Point) -> bool:
        """Whether the point lies inside a closed path or on it; ``path-open`` for an open one.

        Inside means that the path winds around it.
        """
        self._require_closed()
        if self.bounds().gap_to(point) > TOLERANCE.crossing_mm:
            return False
        return winding(self.segments, point) != 0 or self.nearest(point).gap <= TOLERANCE.crossing_mm

    def bounds(self) -> Box:
        """The smallest upright box around the path."""
        return self._bounds

    def nearest(self, point: Point) -> Nearest:
        """The place of the path that is nearest to the point; the first one when several are."""
        order = sorted((segment.bounds().gap_to(point), index) for index, segment in enumerate(self.segments))
        best, best_index, best_gap = 0.0, -1, float("inf")
        for floor, index in order:
            if floor > best_gap:
                break
            t, gap = nearest_parameter(self.segments[index], point)
            if gap < best_gap or (gap == best_gap and index < best_index):
                best, best_index, best_gap = t, index, gap
        segment = self.segments[best_index]
        return Nearest(self.distances[best_index] + segment.distance_at(best), segment.at(best), best_gap)

    def intersections(self, other: "Path") -> tuple[Crossing, ...]:
        """All places where the paths meet, along this one; touching and touching ends included.

        Where the paths run along each other, the ends of each common stretch of two segments are given.
        """
        return path_crossings(self.segments, self.distances, other.segments, other.distances)

    def self_crossings(self) -> tuple[Crossing, ...]:
        """The places where the path meets itself, joints left out; ``at_self`` < ``at_other``."""
        return path_self_crossings(self.segments, self.distances, self.is_closed)

    def corners(self, angle_degrees: float = 1.0) -> tuple[float, ...]:
        """The distances of the joints where the direction turns by more than the angle.

        A closed path may have one at 0.
        """
        directed = [
            (distance, segment)
            for distance, segment in zip(self.distances, self.segments, strict=False)
            if segment.length > TOLERANCE.join_mm
        ]
        found = []
        for index, (distance, segment) in enumerate(directed):
            if index == 0 and not self.is_closed:
                continue
            arriving, leaving = directed[index - 1][1].tangent(1.0), segment.tangent(0.0)
            if abs(turn_degrees(arriving, leaving)) > angle_degrees:
                found.append(distance)
        return tuple(found)

    def flattened(self, tolerance_mm: float) -> tuple[Point, ...]:
        """Points of a polyline within the tolerance of the path, from its start to its end inclusive.

        For a closed path the first point stands at the end again. GeometryError ``tolerance-not-positive``.
        """
        points = [self.start]
        for segment in self.segments:
            points.extend(flattened_segment(segment, tolerance_mm))
        return tuple(points)

    @cached_property
    def _hash(self) -> int:
        return hash(self.segments)

    @cached_property
    def _bounds(self) -> Box:
        box = self.segments[0].bounds()
        for segment in self.segments[1:]:
            box = box.union(segment.bounds())
        return box

    def _require_closed(self) -> None:
        if not self.is_closed:
            raise GeometryError("path-open", gap=self.start.distance_to(self.end))

    def _locate(self, distance: float, side: Side) -> tuple[int, float]:
        """The index of the segment at a distance, and the distance along that segment."""
        place = clamped(distance, self.length)
        last = len(self.segments) - 1
        index = min(bisect_right(self.distances, place) - 1, last)
        if side == "before" and index > 0 and place <= self.distances[index]:
            index -= 1
        rest = place - self.distances[index]
        return index, min(max(rest, 0.0), self.segments[index].length)

    def _locate_directed(self, distance: float, side: Side) -> tuple[int, float]:
        """Like ``_locate``, but joints within ``join_mm`` take the side and no segment is without length."""
        place = clamped(distance, self.length)
        margin, directed = TOLERANCE.join_mm, self._directed
        if not directed:
            raise GeometryError("no-direction")
        if side == "before":
            if self.is_closed and place <= margin:
                return directed[-1], self.segments[directed[-1]].length
            index = next((i for i in reversed(directed) if self.distances[i] < place - margin), directed[0])
        else:
            if self.is_closed and place >= self.length - margin:
                return directed[0], 0.0
            index = next((i for i in directed if self.distances[i + 1] > place + margin), directed[-1])
        rest = place - self.distances[index]
        return index, min(max(rest, 0.0), self.segments[index].length)

    @cached_property
    def _directed(self) -> tuple[int, ...]:
        """The indices of the segments that have a length."""
        return tuple(
            index for index, segment in enumerate(self.segments) if segment.length > TOLERANCE.join_mm
        )


def _chained(segments: Iterable[Segment]) -> tuple[Segment, ...]:
    """The segments with small gaps closed, the last one back to the start too."""
    chain: list[Segment] = []
    for segment in segments:
        if chain and segment.start != chain[-1].end:
            gap = chain[-1].end.distance_to(segment.start)
            if gap > TOLERANCE.join_mm:
                raise GeometryError("path-broken", gap=gap)
            segment = segment.with_ends(chain[-1].end, segment.end)
        chain.append(segment)
    if not chain:
        raise GeometryError("path-empty")
    start, last = chain[0].start, chain[-1]
    if len(chain) > 1 and last.end != start and last.end.distance_to(start) <= TOLERANCE.join_mm:
        chain[-1] = last.with_ends(last.start, start)
    return tuple(chain)


def turn_degrees(arriving: Point, leaving: Point) -> float:
    """The signed turn between two unit directions in degrees, left positive, in (-180, 180]."""
    return Point(arriving.dot(leaving), arriving.cross(leaving)).direction()
