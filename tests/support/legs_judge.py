"""Measures drafted trousers from dense polylines with numpy alone: other code than the construction."""

import numpy as np
from numpy.typing import NDArray

from notchbook.blocks.legs import TrouserPanel
from notchbook.geometry import Path
from support.upper_judge import heading, length, polyline, turn

Array = NDArray[np.float64]


def waist(panel: TrouserPanel) -> float:
    """The sewn waist of a panel: its parts without the darts."""
    return sum(length(part) for part in panel.waist)


def outline(panel: TrouserPanel) -> Array:
    """The outline as it is cut, from the center of the waist over the side, one row a point; darts open."""
    rows: list[Array] = []
    for index, part in enumerate(panel.waist):
        rows.append(polyline(part))
        if index < len(panel.waist_darts):
            point = panel.waist_darts[index].point
            rows.append(np.array([[point.x, point.y]]))
    rows += [polyline(panel.side), polyline(panel.hem)]
    rows += [polyline(panel.inseam)[::-1], polyline(panel.crotch)[::-1]]
    return np.vstack(rows)


def x_at(path: Path, level: float) -> float:
    """Where a line that runs up or down crosses a level."""
    points = polyline(path)
    above = points[:, 1] >= level
    index = int(np.nonzero(above[:-1] != above[1:])[0][0])
    (x, y), (u, v) = points[index], points[index + 1]
    return float(x + (u - x) * (level - y) / (v - y))


def leg_width(panel: TrouserPanel, below: float) -> float:
    """The width so far below the panel's own crotch point."""
    level = panel.crotch_point.y - below
    if below == 0.0:
        return x_at(panel.side, level) - panel.crotch_point.x
    return x_at(panel.side, level) - x_at(panel.inseam, level)


def corner_depth(panel: TrouserPanel) -> float:
    """From the foot of the straight center at 45 degrees to the crotch seam.

    The foot is where the line through the waist's center and the hip's center meets the crotch level.
    """
    points = polyline(panel.crotch)
    top, low = points[0], points[1]
    foot = top[0] + (low[0] - top[0]) * (0.0 - top[1]) / (low[1] - top[1])
    beside = (points[:, 0] - foot) + points[:, 1]
    index = int(np.nonzero((beside[:-1] >= 0.0) != (beside[1:] >= 0.0))[0][0])
    share = beside[index] / (beside[index] - beside[index + 1])
    place = points[index] + share * (points[index + 1] - points[index])
    return float(np.hypot(place[0] - foot, place[1]))


def fork_angle(panel: TrouserPanel) -> float:
    """The angle inside the panel between inseam and crotch seam at the crotch point."""
    return abs(turn(heading(panel.inseam, at_end=False), heading(panel.crotch, at_end=True) + 180.0))


def waist_corners(panel: TrouserPanel) -> tuple[float, float]:
    """The angles inside the panel at the waist: at the center and at the side, both 90 for square."""
    center = turn(heading(panel.waist[0], at_end=False), heading(panel.crotch, at_end=False))
    side = turn(heading(panel.waist[-1], at_end=True) + 180.0, heading(panel.side, at_end=False))
    return abs(center), abs(side)


def bends(path: Path) -> int:
    """How often the path turns the other way; a turn of less than 0.1 degrees counts for none."""
    steps = np.diff(polyline(path), axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    turns = np.degrees(
        np.arctan2(
            steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0],
            (steps[:-1] * steps[1:]).sum(axis=1),
        )
    )
    found, last, total = 0, 0.0, 0.0
    for each in turns:
        total = total + each if total * each >= 0.0 else each
        if abs(total) > 0.1:
            if last * total < 0.0:
                found += 1
            last = total
    return found


def belly(front: TrouserPanel, back: TrouserPanel, depth: float, hip_depth: float) -> float:
    """The girth of the trousers so far below the top edge, its darts closed: the pieces doubled."""
    level = front.hip + hip_depth - depth
    total = 0.0
    for panel in (front, back):
        total += x_at(panel.side, level) - x_at(panel.crotch, level)
        for dart in panel.waist_darts:
            mouth = (dart.first.y + dart.second.y) / 2.0
            share = (level - dart.point.y) / (mouth - dart.point.y)
            total -= max(0.0, share) * dart.first.distance_to(dart.second)
    return 2.0 * total
