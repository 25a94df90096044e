"""The strip of allowance along one edge: its outer line, lengthened at both ends for the corners."""

from dataclasses import dataclass

from notchbook.errors import GeometryError, StepRefused
from notchbook.finish.allowance import Given
from notchbook.geometry import TOLERANCE, Crossing, Line, Path, Point, offset
from notchbook.pattern import Edge, spoken


@dataclass(frozen=True, slots=True)
class Strip:
    """One edge with its allowance. ``line`` is the outer line with straight tails at both ends;
    between ``first`` and ``last`` (mm along it) it lies square beside the edge.
    """

    edge: Edge
    given: Given
    line: Path
    first: float
    last: float

    @property
    def start_direction(self) -> Point:
        """The direction of travel where the edge starts."""
        return self.edge.path.tangent_at(0.0, "after")

    @property
    def end_direction(self) -> Point:
        """The direction of travel where the edge ends."""
        return self.edge.path.tangent_at(self.edge.length, "before")

    @property
    def width(self) -> float:
        """The allowance, mm."""
        return self.given.width


def strip_of(edge: Edge, given: Given, tail: float, corner_limit: float) -> Strip:
    """The strip of an edge, with tails of this length (mm) at both ends.

    StepRefused ``allowance-impossible`` when no line lies that far outside the edge.
    """
    outer = edge.path
    if given.ends is not None:
        outer = _running(edge.path, given.ends)
    elif given.width > TOLERANCE.join_mm:
        try:
            outer = offset(edge.path, -given.width, "mitre", corner_limit)
        except GeometryError as error:
            raise StepRefused("allowance-impossible", edge=spoken(edge.name), width=given.width) from error
    before = outer.start - edge.path.tangent_at(0.0, "after") * tail
    after = outer.end + edge.path.tangent_at(edge.length, "before") * tail
    line = Path((Line(before, outer.start), *outer.segments, Line(outer.end, after)))
    return Strip(edge, given, line, tail, tail + outer.length)


def _running(path: Path, widths: tuple[float, float]) -> Path:
    """The outer line of a straight edge whose allowance runs from the one width to the other."""
    starts, ends = path.tangent_at(0.0, "after"), path.tangent_at(path.length, "before")
    return Path.line(
        path.start - starts.perpendicular() * widths[0], path.end - ends.perpendicular() * widths[1]
    )


def nearest_crossing(line: Path, other: Path, place: Point) -> Crossing | None:
    """The crossing of two lines that lies nearest to a place; None when they do not meet."""
    return min(
        line.intersections(other),
        key=lambda crossing: crossing.point.distance_to(place),
        default=None,
    )


def ray(start: Point, toward: Point, length: float) -> Path:
    """A straight line from ``start`` in the direction ``toward`` (any length), ``length`` mm long."""
    return Path.line(start, start + toward.unit() * length)
