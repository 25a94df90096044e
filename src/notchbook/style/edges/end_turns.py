"""The end of an edge turned, so that a corner keeps its angle when the edge beside it turned there."""

from dataclasses import replace
from math import atan2, degrees

from notchbook.geometry import Line, Path
from notchbook.style.edges.as_cubic import as_cubic

_STRAIGHT = 0.01
"""Degrees below which a straight edge stays straight: 0.02 mm on 100 mm."""


def turned(old: Path, new: Path, *, at_end: bool) -> float:
    """By how many degrees a line turned at its end, or at its start."""
    first, second = (path.tangent_at(path.length if at_end else 0.0) for path in (old, new))
    return degrees(atan2(first.cross(second), first.dot(second)))


def bent_end(path: Path, turn: float) -> Path:
    """The line with its last segment bent so that its end turns by so many degrees."""
    last = path.segments[-1]
    if turn == 0.0 or (isinstance(last, Line) and abs(turn) < _STRAIGHT) or last.length == 0.0:
        return path
    curve = as_cubic(last)
    return Path((*path.segments[:-1], replace(curve, end_handle=curve.end_handle.rotated(turn, curve.end))))


def bent_start(path: Path, turn: float) -> Path:
    """The line with its first segment bent so that its start turns by so many degrees."""
    return bent_end(path.reversed(), turn).reversed()
