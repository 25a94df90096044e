"""The cubic with given end directions through one point, without a wave where there is such a curve."""

from notchbook.geometry import Cubic, Point, direction
from notchbook.units import TOLERANCES

_TRIED = tuple(0.25 + 0.01 * step for step in range(51))
"""Shares of the curve at which it may pass the point."""


def curve_through(start: Point, leaving: float, through: Point, end: Point, arriving: float) -> Cubic | None:
    """The cubic through the point whose two handles reach equally far toward where the tangents meet.

    None when every such curve would wave or run back: the point lies outside the triangle of the tangents, or
    the tangents do not meet ahead of both ends. Directions of travel in degrees.
    """
    ways = direction(leaving), direction(arriving)
    sides = tangent_sides(start, ways[0], end, ways[1])
    if sides is None:
        return None
    found = [
        (abs(handles[0] / sides[0] - handles[1] / sides[1]), share, handles)
        for share in _TRIED
        if (handles := _handles((start, through, end), ways, share)) is not None
        and handles[0] < sides[0]
        and handles[1] < sides[1]
    ]
    if not found:
        return None
    _, _, (first, last) = min(found)
    return Cubic(start, start + ways[0] * first, end - ways[1] * last, end)


def tangent_sides(start: Point, leaving: Point, end: Point, arriving: Point) -> tuple[float, float] | None:
    """How far both tangents run until they meet; None when they do not meet ahead of both ends."""
    cross = leaving.cross(arriving)
    if abs(cross) < TOLERANCES.join:
        return None
    chord = end - start
    first, last = chord.cross(arriving) / cross, leaving.cross(chord) / cross
    return (first, last) if first > 0.0 and last > 0.0 else None


def _handles(
    points: tuple[Point, Point, Point], ways: tuple[Point, Point], share: float
) -> tuple[float, float] | None:
    """The lengths of both handles with which the curve passes the middle point at a share of itself."""
    start, through, end = points
    rest = 1.0 - share
    first, last = 3.0 * rest * rest * share, 3.0 * rest * share * share
    goal = through - start * (rest**3 + first) - end * (share**3 + last)
    leaving, arriving = ways[0] * first, ways[1] * -last
    cross = leaving.cross(arriving)
    if abs(cross) < TOLERANCES.join:
        return None
    handles = goal.cross(arriving) / cross, leaving.cross(goal) / cross
    return handles if min(handles) > 0.0 else None
