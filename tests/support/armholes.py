"""Armholes drawn by hand for the tests of the sleeve, and a judge of caps in numpy and shapely alone. mm.

The usual one is of the order of size of a woman of bust 92: front 200, back 213, invented.
"""

import math
from typing import Any

import numpy as np
import numpy.typing as npt
from shapely import LineString, distance
from shapely import points as places

from notchbook.blocks.set_in.given import ArmholeGiven, SleeveGiven
from notchbook.geometry import Line, Path, Point, Transform, curve_between

Points = npt.NDArray[np.float64]

_MIRROR = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))


def half_armhole(width: float, height: float, across: float, tip: float, slope: float) -> Path:
    """From the underarm, level, to where it is upright (``width`` inward, ``across`` up), to the tip."""
    upright, shoulder = Point(width, across), Point(tip, height)
    return Path(
        (
            curve_between(Point(0.0, 0.0), 0.0, upright, 90.0),
            curve_between(upright, 90.0, shoulder, 90.0 + slope),
        )
    )


def armhole(wider: float = 0.0, higher: float = 0.0) -> ArmholeGiven:
    """An armhole; each half ``wider`` and ``higher`` than the usual one."""
    front = half_armhole(57.0 + wider, 170.0 + higher, 72.0 + 0.4 * higher, 42.0 + wider, 23.0)
    back = half_armhole(62.0 + wider, 180.0 + higher, 88.0 + 0.4 * higher, 48.0 + wider, 17.0)
    notches = [path.segments[0].length for path in (front, back)]
    return ArmholeGiven(front, back.transformed(_MIRROR), notches[0], notches[1])


def sleeve(hole: ArmholeGiven | None = None, **changes: Any) -> SleeveGiven:
    """A long sleeve into an armhole, for an upper arm of 280 and a wrist of 165."""
    fields: dict[str, Any] = {
        "armhole": hole or armhole(),
        "cap_ease": 20.0,
        "front_ease_share": 0.45,
        "keep": "biceps",
        "biceps": 330.0,
        "cap_height": None,
        "hem": 215.0,
        "length": 585.0,
        "elbow_length": 340.0,
    }
    return SleeveGiven(**(fields | changes))


def dense(path: Path, step: float = 0.25) -> Points:
    """Points of a path in numpy, from its control points alone."""
    found = []
    for segment in path.segments:
        t = np.linspace(0.0, 1.0, max(int(segment.start.distance_to(segment.end) / step), 8))[:, None]
        ends = [np.array([point.x, point.y]) for point in (segment.start, segment.end)]
        if isinstance(segment, Line):
            found.append(ends[0] + t * (ends[1] - ends[0]))
            continue
        handles = [np.array([point.x, point.y]) for point in (segment.start_handle, segment.end_handle)]
        found.append(
            (1 - t) ** 3 * ends[0]
            + 3 * t * (1 - t) ** 2 * handles[0]
            + 3 * t**2 * (1 - t) * handles[1]
            + t**3 * ends[1]
        )
    return np.vstack(found)


def length_of(points: Points) -> float:
    """The length of a polyline."""
    return float(np.hypot(*np.diff(points, axis=0).T).sum())


def changes_of_side(points: Points) -> int:
    """How often a line changes the side to which it bends; turns below 0.001 degrees are straight."""
    steps = np.diff(points, axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    ways = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    turns = np.diff(ways)
    sides = np.sign(turns[np.abs(turns) > math.radians(0.001)])
    return int(np.count_nonzero(np.diff(sides)))


def laid_gap(cap: Path, seam: Path, hole: Path, inward: float, reach: float = 60.0) -> float:
    """How far the first ``reach`` mm of a cap lie off the armhole, seams and underarms laid together.

    The cap is turned over: its underarm seam comes to lie down along -y, its inward side along ``inward``.
    """
    points, line = dense(cap), dense(hole)
    down = dense(seam)[1] - dense(seam)[0]
    offsets = points - points[0]
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    up = -down / np.hypot(*down)
    side = np.array([up[1], -up[0]])
    flat = np.column_stack([offsets @ side, offsets @ up])
    flat[:, 0] = inward * np.abs(flat[:, 0])
    lower = flat[along <= reach]
    return float(distance(LineString(line), places(lower)).max())
