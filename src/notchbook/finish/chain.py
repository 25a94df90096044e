"""Joining parts of an outline to one path, with straight lines across gaps."""

from collections.abc import Iterable

from notchbook.geometry import TOLERANCE, Line, Path, Segment


def chained(parts: Iterable[Path], closed: bool = False) -> Path:
    """The parts one after the other; where one does not begin at the end of the last, a line leads there.

    Parts without length are left out; ``closed`` leads back to the start.
    """
    segments: list[Segment] = []
    for part in parts:
        if part.length <= TOLERANCE.join_mm:
            continue
        if segments and segments[-1].end.distance_to(part.start) > TOLERANCE.join_mm:
            segments.append(Line(segments[-1].end, part.start))
        segments.extend(part.segments)
    if closed and segments[-1].end.distance_to(segments[0].start) > TOLERANCE.join_mm:
        segments.append(Line(segments[-1].end, segments[0].start))
    return Path(tuple(_merged(segments)))


def merged(path: Path) -> Path:
    """The path with straight segments that run straight on made one."""
    return Path(tuple(_merged(path.segments)))


def _merged(segments: Iterable[Segment]) -> list[Segment]:
    found: list[Segment] = []
    for segment in segments:
        last = found[-1] if found else None
        if isinstance(last, Line) and isinstance(segment, Line) and _runs_on(last, segment):
            found[-1] = Line(last.start, segment.end)
        else:
            found.append(segment)
    return found


def _runs_on(first: Line, second: Line) -> bool:
    """Whether the joint lies on the straight line from end to end, and the way goes forward."""
    chord = second.end - first.start
    way = first.end - first.start
    if way.dot(second.end - second.start) <= 0.0:
        return way.norm() <= TOLERANCE.join_mm
    return abs(chord.cross(way)) <= TOLERANCE.join_mm * chord.norm()
