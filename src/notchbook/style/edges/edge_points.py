"""Points beside an edge, told by how far along it they lie and how far out: they go with the edge to any
body."""

from itertools import pairwise
from math import atan2, degrees
from typing import Annotated

from pydantic import Field

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, fair_curve, inflections
from notchbook.pattern import spoken
from notchbook.pattern.sewn import Directed
from notchbook.recipe import AmountText, StepContext, StepParameters
from notchbook.style.edges.figures import SEEN_WAVE


class EdgePoint(StepParameters):
    """A point that an edge is drawn through: a share of the way along it, and how far out of the piece."""

    along: Annotated[float, Field(gt=0.0, lt=1.0)]
    """Where along the edge as it is, as a share of its length from the named end, 0 to 1."""
    out: AmountText
    """How far from it, square to it: out of the piece, or with a minus into it."""


def outward_at(step: Directed, distance: float) -> Point:
    """The unit vector out of the piece, square to the walked edge at a distance."""
    way = step.path.tangent_at(distance).perpendicular()
    return -way if step.forward else way


def points_beside(step: Directed, context: StepContext, points: tuple[EdgePoint, ...]) -> list[Point]:
    """Where the points lie; StepRefused ``edge-points-order`` when they do not follow each other."""
    require_order(points, spoken(step.edge.name))
    length = step.edge.length
    return [
        step.path.point_at(length * point.along)
        + outward_at(step, length * point.along) * context.mm(point.out)
        for point in points
    ]


def require_order(points: tuple[EdgePoint, ...], said: str) -> None:
    """StepRefused ``edge-points-order`` when the points do not follow each other along the edge."""
    shares = [point.along for point in points]
    if shares != sorted(set(shares)):
        raise StepRefused("edge-points-order", edge=said, shares=tuple(shares))


def faired(points: list[Point], directions: tuple[float, float], said: str) -> Path:
    """The fair curve through the points with its end directions, degrees; it may change sides.

    StepRefused ``edge-not-fair`` when no fair curve goes through them; ``said`` is the edge as it is said.
    """
    try:
        return fair_curve(points, *directions, inflections_allowed=len(points)).path
    except GeometryError as error:
        raise StepRefused("edge-not-fair", edge=said) from error


def require_no_new_wave(old: Path, new: Path, said: str) -> None:
    """StepRefused ``edge-waves`` where the new line visibly changes the side to which it bends more often."""
    if waves_more(old, new):
        place, turned = _visible_bends(new)[-1]
        raise StepRefused("edge-waves", edge=said, place=place, turned=abs(turned))


def waves_more(old: Path, new: Path) -> bool:
    """Whether the new line visibly changes the side to which it bends more often than the old one."""
    return len(_visible_bends(new)) > max(len(_visible_bends(old)), 1)


def _visible_bends(path: Path) -> list[tuple[float, float]]:
    """The stretches that bend to one side: where each begins (mm) and how far it turns (degrees, signed).

    A turn that the eye does not see counts with its neighbors.
    """
    joints = sorted({0.0, *inflections(path), *path.corners(SEEN_WAVE.value), path.length})
    found: list[tuple[float, float]] = []
    for start, end in pairwise(joints):
        turned = _turned(path, start, end)
        if found and found[-1][1] * turned > 0.0:
            found[-1] = (found[-1][0], found[-1][1] + turned)
        elif abs(turned) > SEEN_WAVE.value:
            found.append((start, turned))
    return found


def _turned(path: Path, start: float, end: float) -> float:
    """By how many degrees a line turns from one distance to another, summed over its segments."""
    places = [start, *(joint for joint in path.distances if start < joint < end), end]
    total = 0.0
    for first, last in pairwise(places):
        leaving, arriving = path.tangent_at(first, "after"), path.tangent_at(last, "before")
        total += degrees(atan2(leaving.cross(arriving), leaving.dot(arriving)))
    return total
