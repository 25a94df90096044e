"""Lengths of a drafted skirt by outside code: dense polylines reckoned with numpy alone.

Nothing here uses the lengths, sums or solvers of the project; it reads the control points of the finished
outline.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from notchbook.geometry import Cubic, Path
from notchbook.pattern import Pattern

Points = npt.NDArray[np.float64]

STEPS = 2000
"""Chords a cubic; the polyline of a waist of 200 mm is then short by less than 1e-6 mm."""


def polyline(path: Path) -> Points:
    """Points along a path, by the Bernstein form of its curves."""
    runs = []
    for segment in path.segments:
        ends = [(point.x, point.y) for point in (segment.start, segment.end)]
        if isinstance(segment, Cubic):
            handles = [(point.x, point.y) for point in (segment.start_handle, segment.end_handle)]
            t = np.linspace(0.0, 1.0, STEPS + 1)[:, None]
            a, b, c, d = (np.array(place) for place in (ends[0], *handles, ends[1]))
            runs.append((1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t**2 * (1 - t) * c + t**3 * d)
        else:
            runs.append(np.array(ends))
    return np.vstack(runs)


def length(points: Points) -> float:
    """The length of a polyline, mm."""
    return float(np.hypot(*np.diff(points, axis=0).T).sum())


def skirt_closures(pattern: Pattern, waist: float, hip: float, hip_depth: float) -> dict[str, float]:
    """How far the sewn waist, the hip, the side and the dart legs are from what they must be, mm.

    ``waist`` and ``hip`` are the girths with their ease.
    """
    front, back = pattern.pieces["skirt.front"], pattern.pieces["skirt.back"]
    sewn_waist = width = 0.0
    sides: list[float] = []
    above_hip: list[float] = []
    legs: list[float] = []
    for piece in (front, back):
        edges = {edge.name: polyline(edge.path) for edge in piece.outline}
        start = f"{piece.name}/waist"
        sewn_waist += sum(
            length(points) for name, points in edges.items() if name == start or name.startswith(f"{start}/")
        )
        outline = np.vstack(list(edges.values()))
        width += _width_at_hip(outline)
        side = edges[f"{piece.name}/side_seam"]
        sides.append(length(side))
        above_hip.append(length(side[side[:, 1] >= -1e-9]))
        legs += [
            abs(length(edges[intake.first_leg]) - length(edges[intake.second_leg]))
            for intake in piece.intakes
        ]
    return {
        "waist": 2.0 * sewn_waist - waist,
        "hip": 2.0 * width - hip,
        "side above hip": max((value - hip_depth for value in above_hip), key=abs),
        "sides": sides[0] - sides[1],
        "dart legs": max(legs, default=0.0),
    }


def _width_at_hip(outline: Points) -> float:
    """How far the side is from the center line (x = 0) at the level of the hip (y = 0), mm."""
    closed = np.vstack([outline, outline[:1]])
    (x0, y0), (x1, y1) = closed[:-1].T, closed[1:].T
    crossing = (y0 <= 0.0) != (y1 <= 0.0)
    share = -y0[crossing] / (y1[crossing] - y0[crossing])
    found = x0[crossing] + share * (x1[crossing] - x0[crossing])
    return float(np.abs(found).max())
