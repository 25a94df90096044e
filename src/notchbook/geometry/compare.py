"""A comparison of paths for tests, ours and others'."""

from notchbook.geometry.path import Path

_SAMPLES = 200


def greatest_gap(path: Path, expected: Path, samples: int = _SAMPLES) -> float:
    """How far the paths stray from each other, mm: from evenly spread places of each to the other path.

    Blind to direction of travel and to starts of closed paths.
    """
    return max(_one_way(path, expected, samples), _one_way(expected, path, samples))


def assert_paths_close(path: Path, expected: Path, tolerance_mm: float) -> None:
    """AssertionError unless both paths have the same ends, length and shape within the tolerance (mm).

    Direction of travel counts: a reversed open path has its ends swapped, a reversed closed one its area.
    """
    if path.is_closed != expected.is_closed:
        raise AssertionError(f"one path is closed, the other is not: {path.is_closed}, {expected.is_closed}")
    if path.is_closed:
        if (path.area() > 0.0) != (expected.area() > 0.0):
            raise AssertionError("the closed paths run around in different directions")
    else:
        for name, point, other in (("start", path.start, expected.start), ("end", path.end, expected.end)):
            if point.distance_to(other) > tolerance_mm:
                raise AssertionError(f"the paths {name} {point.distance_to(other):.6f} mm apart")
    gap = greatest_gap(path, expected)
    if gap > tolerance_mm:
        raise AssertionError(f"the paths are {gap:.6f} mm apart, allowed {tolerance_mm} mm")
    slack = tolerance_mm * (2 + len(path.segments) + len(expected.segments))
    if abs(path.length - expected.length) > slack:
        raise AssertionError(f"the lengths differ: {path.length:.6f} mm and {expected.length:.6f} mm")


def _one_way(path: Path, other: Path, samples: int) -> float:
    corners = list(path.distances)
    spread = [path.length * index / samples for index in range(samples + 1)]
    return max(other.nearest(path.point_at(place)).gap for place in corners + spread)
