"""Measures a drafted half from dense polylines with numpy alone: other code than the construction."""

import numpy as np
from numpy.typing import NDArray

from notchbook.blocks.upper import BodiceHalf, OpenDart
from notchbook.geometry import Cubic, Path, Point

Array = NDArray[np.float64]
STEPS = 2000


def polyline(path: Path) -> Array:
    """Points along a path by the Bernstein form, one row each."""
    parts = []
    for segment in path.segments:
        corners = [segment.start, segment.end]
        if isinstance(segment, Cubic):
            corners = [segment.start, segment.start_handle, segment.end_handle, segment.end]
        p = np.array([[corner.x, corner.y] for corner in corners])
        t = np.linspace(0.0, 1.0, STEPS)[:, None]
        if len(p) == 2:
            parts.append((1 - t) * p[0] + t * p[1])
        else:
            parts.append(
                (1 - t) ** 3 * p[0] + 3 * t * (1 - t) ** 2 * p[1] + 3 * t * t * (1 - t) * p[2] + t**3 * p[3]
            )
    return np.vstack(parts)


def length(path: Path) -> float:
    """The length of the polyline."""
    return float(np.hypot(*np.diff(polyline(path), axis=0).T).sum())


def heading(path: Path, at_end: bool) -> float:
    """The direction of travel at an end, degrees."""
    points = polyline(path)
    step = points[-1] - points[-2] if at_end else points[1] - points[0]
    return float(np.degrees(np.arctan2(step[1], step[0])))


def turn(first: float, second: float) -> float:
    """From one direction to another, in -180 to 180 degrees."""
    return (second - first + 180.0) % 360.0 - 180.0


def leg_difference(dart: OpenDart) -> float:
    """By how much the legs of a dart differ."""
    return abs(_way(dart.first, dart.point) - _way(dart.point, dart.second))


def dart_turn(dart: OpenDart) -> float:
    """The angle of a dart, degrees."""
    first = np.arctan2(dart.first.y - dart.point.y, dart.first.x - dart.point.x)
    second = np.arctan2(dart.second.y - dart.point.y, dart.second.x - dart.point.x)
    return abs(turn(float(np.degrees(first)), float(np.degrees(second))))


def waist(half: BodiceHalf) -> float:
    """Half the waist as sewn."""
    return sum(length(path) for path in (*half.front.waist, *half.back.waist))


def neck(half: BodiceHalf) -> float:
    """Half the neckline."""
    return length(half.front.neck) + length(half.back.neck)


def bust(half: BodiceHalf) -> float:
    """Half the bust: each side seam cut at the level of the bust point, or as near to it as it comes."""
    front, back, point = half.front, half.back, half.front.bust_point
    foot, top = front.side.end, front.side.start
    share = min((point.y - foot.y) / (top.y - foot.y), 1.0)
    side = (foot.x + share * (top.x - foot.x), foot.y + share * (top.y - foot.y))
    way = share * length(front.side) / length(back.side)
    beside = back.side.end.x + way * (back.side.start.x - back.side.end.x)
    return point.x + float(np.hypot(side[0] - point.x, side[1] - point.y)) + beside


def bends(path: Path) -> int:
    """How often the polyline changes the side to which it turns."""
    steps = np.diff(polyline(path), axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    turns = steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0]
    signs = np.sign(turns[np.abs(turns) > 1e-9])
    return int((np.diff(signs) != 0).sum())


def hollow(path: Path) -> tuple[float, float]:
    """How deep an armhole is against its straight way, and how high over the underarm, as shares of it."""
    points = polyline(path)[::-1]
    chord = points[-1] - points[0]
    size = float(np.hypot(*chord))
    along = (points - points[0]) @ chord / size**2
    across = (
        np.abs(chord[0] * (points[:, 1] - points[0, 1]) - chord[1] * (points[:, 0] - points[0, 0])) / size**2
    )
    deepest = int(across.argmax())
    return float(across[deepest]), float(along[deepest])


def _way(first: Point, second: Point) -> float:
    return float(np.hypot(second.x - first.x, second.y - first.y))
