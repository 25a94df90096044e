"""Paths written as path data of SVG."""

from collections.abc import Iterable

from notchbook.geometry import Line, Path, Point, Transform


def path_text(paths: Iterable[Path], onto: Transform) -> str:
    """The paths, carried by ``onto``, as one path data text to 0.01 mm; empty without paths."""
    return "".join(_one(path.transformed(onto)) for path in paths)


def _one(path: Path) -> str:
    words = ["M", _point(path.start)]
    for segment in path.segments:
        if isinstance(segment, Line):
            words += ["L", _point(segment.end)]
        else:
            handles = (segment.start_handle, segment.end_handle, segment.end)
            words += ["C", " ".join(_point(point) for point in handles)]
    return "".join(words) + ("Z" if path.is_closed else "")


def _point(point: Point) -> str:
    return f"{_number(point.x)} {_number(point.y)}"


def _number(value: float) -> str:
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")
