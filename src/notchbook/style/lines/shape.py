"""The shape of a style line between two places."""

from collections.abc import Callable

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, fair_curve
from notchbook.geometry.met_square import met_square
from notchbook.pattern import spoken
from notchbook.style.lines.parameters import LineParameters


def line_path(
    line: LineParameters, start: tuple[Point, float], end: tuple[Point, float], mm: Callable[[str], float]
) -> Path:
    """The line from a place to a place, each with the direction of travel that is square to its edge,
    degrees.

    StepRefused ``style-line-turns-back`` where no fair curve runs through the points.
    """
    if line.shape in ("straight", "square"):
        return _through_points(line, start[0], end[0], mm, None)
    leaving, arriving = start[1] + line.start_angle, end[1] + line.end_angle
    if line.shape == "even":
        chord = (end[0] - start[0]).direction()
        if line.keeps_grain == "end":
            leaving = 2.0 * chord - arriving
        else:
            arriving = 2.0 * chord - leaving
    if not line.through:
        return met_square((start[0], leaving), (end[0], arriving))
    return _through_points(line, start[0], end[0], mm, (leaving, arriving))


def _through_points(
    line: LineParameters,
    start: Point,
    end: Point,
    mm: Callable[[str], float],
    directions: tuple[float, float] | None,
) -> Path:
    beside = (end - start).unit().perpendicular()
    points = [start, *(start.lerp(end, one.along) + beside * mm(one.off) for one in line.through), end]
    if directions is None:
        return Path.polyline(points)
    try:
        return fair_curve(points, *directions).path
    except GeometryError as error:
        raise StepRefused(
            "style-line-turns-back", start=spoken(line.start.edge), end=spoken(line.end.edge)
        ) from error
