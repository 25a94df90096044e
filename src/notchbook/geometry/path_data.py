"""Paths as plain rows of letters and numbers, for files."""

from collections.abc import Sequence
from numbers import Real

from notchbook.errors import GeometryError
from notchbook.geometry.cubic import Cubic
from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment

DataRow = list[str | float]
"""["M", x, y] or ["L", x, y] or ["C", x1, y1, x2, y2, x, y], mm: the letters of SVG paths."""

_NUMBERS = {"M": 2, "L": 2, "C": 6}


def segments_to_data(segments: Sequence[Segment]) -> list[DataRow]:
    """The rows of a chain of segments."""
    rows: list[DataRow] = [["M", segments[0].start.x, segments[0].start.y]]
    for segment in segments:
        if isinstance(segment, Line):
            rows.append(["L", segment.end.x, segment.end.y])
        else:
            points = (segment.start_handle, segment.end_handle, segment.end)
            rows.append(["C", *(number for point in points for number in (point.x, point.y))])
    return rows


def segments_from_data(data: Sequence[Sequence[str | float]]) -> tuple[Segment, ...]:
    """The segments of rows; GeometryError ``path-data`` names the first row that is wrong."""
    segments: list[Segment] = []
    here = Point(0.0, 0.0)
    for number, row in enumerate(data):
        letter, points = _points(row, number)
        if (letter == "M") != (number == 0):
            raise GeometryError("path-data", row=number + 1)
        if letter == "L":
            segments.append(Line(here, points[-1]))
        elif letter == "C":
            segments.append(Cubic(here, points[0], points[1], points[2]))
        here = points[-1]
    return tuple(segments)


def _points(row: Sequence[str | float], number: int) -> tuple[str, list[Point]]:
    is_row = isinstance(row, (list, tuple)) and len(row) > 0 and isinstance(row[0], str)
    if not is_row or len(row) - 1 != _NUMBERS.get(str(row[0])):
        raise GeometryError("path-data", row=number + 1)
    values: list[float] = []
    for value in row[1:]:
        if not isinstance(value, Real) or isinstance(value, bool):
            raise GeometryError("path-data", row=number + 1)
        values.append(float(value))
    return str(row[0]), [Point(x, y) for x, y in zip(values[::2], values[1::2], strict=True)]
