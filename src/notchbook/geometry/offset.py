"""Parallels of paths, such as a cut line beside a sew line."""

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import get_args

from notchbook.errors import GeometryError
from notchbook.geometry.line import Line
from notchbook.geometry.offset_fit import Run, parallel_runs
from notchbook.geometry.offset_join import Join, corner_segments
from notchbook.geometry.offset_trim import without_loops
from notchbook.geometry.path import Path, turn_degrees
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE

MITRE_LIMIT = 2.5
"""A mitred tip reaches no farther than this many widths from its corner (common practice, no source)."""

_STRAIGHT = 1e-9
"""Sine of the angle under which two lines in a row are one."""


def offset(path: Path, distance: float, join: Join = "mitre", mitre_limit: float = MITRE_LIMIT) -> Path:
    """The parallel of a path at a distance in mm, left of the direction of travel positive.

    A counter-clockwise outline grows with a negative distance and shrinks with a positive one. The
    result stays within 0.05 mm of the true parallel; lines stay lines, curves are refitted.

    Outside corners are joined as asked (see :func:`~notchbook.geometry.offset_join.corner_segments`); a
    turn of 180 degrees is an outside corner on both sides. Inside corners are trimmed to where the
    parallels meet, and loops are removed, also where a curve bends more tightly than the width. The
    parallel of an open path ends square beside its ends, unless it is trimmed there; closed pockets
    beside it are left out. A closed result starts near the start of the source. The source must not
    cross itself: what is left and what is right is not defined then.

    GeometryError: ``offset-vanishes`` when nothing is left, ``offset-in-pieces`` when the result would
    be several lines, ``offset-join`` for an unknown join or a limit below 1, ``no-direction`` for a path
    without length.
    """
    if join not in get_args(Join) or not mitre_limit >= 1.0:
        raise GeometryError("offset-join", join=join)
    if not math.isfinite(distance):
        raise GeometryError("place-not-finite", value=distance)
    if path.length <= TOLERANCE.join_mm:
        raise GeometryError("no-direction")
    if distance == 0.0:
        return path
    raw = _raw_parallel(path, distance, join, mitre_limit)
    if raw is None:
        raise GeometryError("offset-vanishes", distance=distance)
    kept = without_loops(raw, path, distance, lambda: _raw_parallel(path, -distance, join, mitre_limit))
    tidy = _tidied(kept.segments, path.is_closed)
    return _started_near(tidy, path.start) if path.is_closed else tidy


def _raw_parallel(path: Path, distance: float, join: Join, mitre_limit: float) -> Path | None:
    """The runs of the parallel, joined; it may still cross itself. None when there is no run at all."""
    runs = _runs(path, distance)
    if not runs:
        return None
    if path.is_closed and len(runs) == 1:
        runs = _halved(runs[0])
    joints: list[list[Segment]] = []
    for index in range(len(runs) if path.is_closed else len(runs) - 1):
        following = (index + 1) % len(runs)
        if _is_outside(runs[index], runs[following], distance):
            joints.append(_corner(runs[index], runs[following], distance, join, mitre_limit))
        else:
            runs[index], runs[following], joint = _inner_joint(runs[index], runs[following])
            joints.append(joint)
    segments: list[Segment] = []
    for index, run in enumerate(runs):
        segments += run.path.segments
        if index < len(joints):
            segments += joints[index]
    return _tidied(segments, path.is_closed)


def _runs(path: Path, distance: float) -> list[Run]:
    """The runs of all segments; those without length only where an outside corner is joined to them."""
    runs: list[Run] = []
    for segment in path.segments:
        if segment.length > TOLERANCE.join_mm:
            runs += parallel_runs(segment, distance)
    kept: list[Run] = []
    for index, run in enumerate(runs):
        before = runs[index - 1] if index > 0 or path.is_closed else None
        after = runs[(index + 1) % len(runs)] if index + 1 < len(runs) or path.is_closed else None
        is_corner = (before is not None and _is_outside(before, run, distance)) or (
            after is not None and _is_outside(run, after, distance)
        )
        if run.path.length > TOLERANCE.join_mm or is_corner:
            kept.append(run)
    return kept


def _halved(run: Run) -> list[Run]:
    """One run as two, so that a closed path has a run on each side of its start."""
    place = run.path.length / 2.0
    first, second = run.path.split_at(place)
    middle, tangent = run.path.point_at(place), run.path.tangent_at(place)
    return [
        replace(run, path=first, source_end=middle, end_tangent=tangent, is_cut_after=False),
        replace(run, path=second, source_start=middle, start_tangent=tangent, is_cut_before=False),
    ]


def _turn(first: Run, second: Run) -> float:
    return turn_degrees(first.end_tangent, second.start_tangent)


def _is_outside(first: Run, second: Run, distance: float) -> bool:
    """Whether the runs stand apart at an outside corner."""
    if first.is_cut_after or second.is_cut_before:
        return False
    turn = _turn(first, second)
    if abs(turn) <= TOLERANCE.smooth_join_degrees:
        return False
    return turn * distance < 0.0 or abs(turn) >= 180.0 - TOLERANCE.smooth_join_degrees


def _corner(first: Run, second: Run, distance: float, join: Join, mitre_limit: float) -> list[Segment]:
    tangents = (first.end_tangent, second.start_tangent)
    return corner_segments(first.source_end, *tangents, distance, join, mitre_limit)


def _inner_joint(first: Run, second: Run) -> tuple[Run, Run, list[Segment]]:
    """Runs that meet smoothly, or overlap at an inside corner: trimmed to where they meet.

    Runs that do not meet are linked by a line, which the removal of loops takes away.
    """
    if first.path.end.distance_to(second.path.start) <= TOLERANCE.join_mm:
        return first, second, []
    found = first.path.intersections(second.path)
    if found:
        length = first.path.length
        meeting = min(found, key=lambda crossing: length - crossing.at_self + crossing.at_other)
        trimmed = replace(first, path=first.path.split_at(meeting.at_self)[0])
        rest = replace(second, path=second.path.split_at(meeting.at_other)[1])
        return trimmed, rest, []
    return first, second, [Line(first.path.end, second.path.start)]


def _tidied(segments: Sequence[Segment], is_closed: bool) -> Path:
    """The path of the segments, slivers dropped and lines that go on straight made one."""
    kept: list[Segment] = []
    for segment in segments:
        if segment.length <= TOLERANCE.sliver_mm and len(segments) > 1:
            continue
        if not kept:
            kept.append(segment)
            continue
        following = segment.with_ends(kept[-1].end, segment.end)
        if _go_on_straight(kept[-1], following):
            following = Line(kept.pop().start, following.end)
        kept.append(following)
    if not kept:
        kept = [segments[0]]
    if is_closed and len(kept) > 1:
        kept[-1] = kept[-1].with_ends(kept[-1].start, kept[0].start)
        if len(kept) > 2 and _go_on_straight(kept[-1], kept[0]):
            kept[0] = Line(kept.pop().start, kept[0].end)
    return Path(tuple(kept))


def _go_on_straight(first: Segment, second: Segment) -> bool:
    if not (isinstance(first, Line) and isinstance(second, Line)):
        return False
    if min(first.length, second.length) <= TOLERANCE.join_mm:
        return False
    before, after = first.tangent(1.0), second.tangent(0.0)
    return before.dot(after) > 0.0 and abs(before.cross(after)) <= _STRAIGHT


def _started_near(closed: Path, point: Point) -> Path:
    """The closed path, started at the joint nearest to the point."""
    return closed.starting_at(min(closed.distances, key=lambda d: closed.point_at(d).distance_to(point)))
