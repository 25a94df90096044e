"""How long the geometry takes beside general-purpose libraries, at equal accuracy of 0.001 mm.

Run as ``python benchmarks/bench_geometry.py``. Times are medians in milliseconds, each of a task done anew
(nothing cached). Ours stands beside libraries that do a part of the same work.
"""

import shapely
from fontTools.misc.bezierTools import calcCubicArcLengthC
from svgpathtools import CubicBezier

from notchbook.geometry import Cubic, Line, Path, Point, curve_between, fair_curve, offset
from timing import Row, median_ms

ACCURACY_MM = 1e-3


def bodice() -> Path:
    """An invented front with three curves."""
    return Path.of(
        Line(Point(0, 0), Point(240, -5)),
        curve_between(Point(240, -5), 95, Point(260, 350), 88),
        curve_between(Point(260, 350), 180, Point(205, 545), 82),
        Line(Point(205, 545), Point(70, 560)),
        curve_between(Point(70, 560), -90, Point(0, 480), 180),
        Line(Point(0, 480), Point(0, 0)),
    )


def rows() -> list[Row]:
    """All rows of the benchmark."""
    return [*_length_rows(), *_offset_rows(), *_other_rows()]


def _length_rows() -> list[Row]:
    task = "arc length of an armhole curve"
    curve = bodice().segments[2]
    if not isinstance(curve, Cubic):
        raise TypeError
    points = (curve.start, curve.start_handle, curve.end_handle, curve.end)
    numbers = [complex(point.x, point.y) for point in points]
    return [
        (task, "notchbook", median_ms(lambda: Cubic(*points).length)),
        (task, "svgpathtools", median_ms(lambda: CubicBezier(*numbers).length(error=ACCURACY_MM))),
        (task, "fontTools", median_ms(lambda: calcCubicArcLengthC(*numbers, tolerance=ACCURACY_MM))),
    ]


def _offset_rows() -> list[Row]:
    """shapely needs a polyline first, and gives a polyline; both are part of its task."""
    rows: list[Row] = []
    for distance in (-10.0, 10.0):
        task = f"parallel of a front at {distance:+.0f} mm"

        def buffered(distance: float = distance) -> shapely.Geometry:
            ring = [(point.x, point.y) for point in bodice().flattened(ACCURACY_MM)]
            return shapely.Polygon(ring).buffer(-distance, quad_segs=90)

        def ours(distance: float = distance) -> Path:
            return offset(bodice(), distance, "round")

        rows += [(task, "notchbook", median_ms(ours)), (task, "shapely", median_ms(buffered))]
    return rows


def _other_rows() -> list[Row]:
    marks = [Point(172, 0), Point(172, 100), Point(160, 205)]
    path = bodice()
    cross = Path.line(Point(-10, 420), Point(300, 400))
    return [
        ("fair curve through three marks", "notchbook", median_ms(lambda: fair_curve(marks))),
        (
            "place of a front nearest to a point",
            "notchbook",
            median_ms(lambda: path.nearest(Point(200, 420))),
        ),
        ("crossings of a front with a line", "notchbook", median_ms(lambda: path.intersections(cross))),
    ]


if __name__ == "__main__":
    for task, who, milliseconds in rows():
        print(f"{task:40} {who:14} {milliseconds:9.4f} ms")
