"""Paths as the page draws them."""

from notchbook.geometry import Line, Path, Point
from notchbook.workroom.answers.form import At


def path_text(path: Path) -> str:
    """The path as SVG data in the frame of its piece (mm, y up), to 0.001 mm."""
    parts = [f"M{_pair(path.start)}"]
    for segment in path.segments:
        if isinstance(segment, Line):
            parts.append(f"L{_pair(segment.end)}")
        else:
            handles = " ".join(map(_pair, (segment.start_handle, segment.end_handle, segment.end)))
            parts.append(f"C{handles}")
    return "".join(parts)


def at(point: Point) -> At:
    """The place, to 0.001 mm."""
    return At(x=round(point.x, 3) + 0.0, y=round(point.y, 3) + 0.0)


def _pair(point: Point) -> str:
    return f"{point.x:.3f} {point.y:.3f}"
