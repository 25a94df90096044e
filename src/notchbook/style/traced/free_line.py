"""The free edge of a facing: parallel to what it faces, its corners rounded."""

from collections.abc import Sequence

from notchbook.geometry import Path, Point, curve_between, offset, run_on
from notchbook.style.lines.truing import turn_between
from notchbook.units import TOLERANCES

_CORNER = 5.0
"""Degrees from which a corner of the free edge is rounded. Own judgment."""

_ROUND = 0.8
"""Share of the depth along which a corner is rounded, on each side. Own judgment."""

_CARRIED = 8.0
"""Depths by which the parallel is carried on: enough for a V neckline of 15 degrees. Own judgment."""

_TURNED = 0.3
"""Degrees by which a line may miss the wanted direction before its end is bent. Own judgment."""

_NEAR = 0.3
"""mm by which it may miss its goal before its end is bent. Own judgment."""


def parallel_line(paths: Sequence[Path], depths: Sequence[float]) -> Path:
    """The parallel on the inner side (left) of counter-clockwise edges, each at its own depth, mm.

    It is carried on straight at both ends, to reach the edges beside.
    """
    whole = offset(paths[0], depths[0])
    for path, depth, before in zip(paths[1:], depths[1:], depths, strict=False):
        whole = _met(whole, offset(path, depth), max(depth, before))
    return _carried(whole, _CARRIED * depths[0], _CARRIED * depths[-1])


def _carried(path: Path, at_start: float, at_end: float) -> Path:
    start = Path.line(path.start - path.tangent_at(0.0) * at_start, path.start)
    end = Path.line(path.end, path.end + path.tangent_at(path.length) * at_end)
    return start.joined(path).joined(end)


def _met(first: Path, second: Path, depth: float) -> Path:
    """Two parallels in a row as one line: where they cross, else where they meet when carried on."""
    if first.end.distance_to(second.start) > TOLERANCES.join:
        one, other = _carried(first, 0.0, 2.0 * depth), _carried(second, 2.0 * depth, 0.0)
        crossings = one.intersections(other)
        if not crossings:
            return _bridged(first, second, depth)
        crossing = max(crossings, key=lambda found: found.at_self)
        first, second = one.split_at(crossing.at_self)[0], other.split_at(crossing.at_other)[1]
        second = second.with_start(first.end)
    if abs(turn_between(first, second)) < _CORNER:
        return first.joined(second)
    return _bridged(first, second, depth)


def _bridged(first: Path, second: Path, depth: float) -> Path:
    """The corner between two lines rounded."""
    reach = min(_ROUND * depth, first.length / 2.0, second.length / 2.0)
    kept, rest = first.split_at(first.length - reach)[0], second.split_at(reach)[1]
    return kept.joined(Path.of(run_on(kept, kept.length, rest, 0.0))).joined(rest)


def ended_at(line: Path, goal: Point, arriving: Point, reach: float) -> Path:
    """The line with its last stretch bent to end in the goal, traveling in the direction ``arriving``."""
    now = line.tangent_at(line.length)
    off = abs(Point(arriving.dot(now), arriving.cross(now)).direction())
    if line.end.distance_to(goal) <= _NEAR and off <= _TURNED:
        return line.with_end(goal)
    kept = line.split_at(line.length - min(reach, line.length / 3.0))[0]
    bend = curve_between(kept.end, kept.tangent_at(kept.length).direction(), goal, arriving.direction())
    return kept.joined(Path.of(bend))
