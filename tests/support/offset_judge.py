"""A judge of parallels that shares nothing with ours: distances by shapely from a dense polyline.

Distances are used, not buffers: the buffer of a ring with very many vertices comes out wrong inside by
tens of millimeters in GEOS at large widths.
"""

import numpy as np
import shapely
from scipy import ndimage

from notchbook.geometry import Path, Point

_CHORD_MM = 2e-4
_ON_PARALLEL = 400
_GRID = 50
_FINE_GRID = 160


def dense(path: Path) -> shapely.LineString:
    """The path as a polyline that strays by at most 0.0002 mm."""
    return shapely.LineString([(point.x, point.y) for point in path.flattened(_CHORD_MM)])


def stray(path: Path, parallel: Path, distance: float) -> float:
    """How far the parallel strays from the width, mm; for round joins, or where corners are not outside."""
    places = (parallel.length * index / _ON_PARALLEL for index in range(_ON_PARALLEL + 1))
    points = shapely.points([(p.x, p.y) for p in map(parallel.point_at, places)])
    return float(np.abs(shapely.distance(points, dense(path)) - abs(distance)).max())


def _depths(path: Path, distance: float, grid: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Coordinates of a grid around the parallel and how deep each point lies inside the outline (mm)."""
    ring = dense(path)
    box = path.bounds()
    margin = abs(distance) + 5.0
    xs, ys = np.meshgrid(
        np.linspace(box.min_x - margin, box.max_x + margin, grid),
        np.linspace(box.min_y - margin, box.max_y + margin, grid),
    )
    points = shapely.points(xs, ys)
    side = np.where(shapely.contains(shapely.Polygon(ring.coords), points), 1.0, -1.0)
    return xs, ys, shapely.distance(points, ring) * side


def region_errors(path: Path, parallel: Path, distance: float, tolerance_mm: float) -> list[Point]:
    """Points of a grid that lie on the wrong side of the parallel of a counter-clockwise outline."""
    xs, ys, depth = _depths(path, distance, _GRID)
    inside = shapely.contains(shapely.Polygon(dense(parallel).coords), shapely.points(xs, ys))
    wrong = (inside != (depth > distance)) & (np.abs(depth - distance) > tolerance_mm)
    return [Point(float(x), float(y)) for x, y in zip(xs[wrong], ys[wrong], strict=True)]


def region_parts(path: Path, distance: float) -> int:
    """How many lines the true parallel of an outline has: parts and holes, as far as a grid shows them."""
    _, _, depth = _depths(path, distance, _FINE_GRID)
    parts = ndimage.label(depth > distance)[1]
    outsides = ndimage.label(depth <= distance)[1]
    return int(parts + max(outsides - 1, 0))
