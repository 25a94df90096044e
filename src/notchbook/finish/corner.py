"""Corners of the cut line where two edges meet: mitred, ended square, or folded back."""

from dataclasses import dataclass

from notchbook.finish.strip import Strip, nearest_crossing, ray
from notchbook.geometry import Path, Point, Transform
from notchbook.units import TOLERANCES

_STRAIGHT_ON = 15.0
"""Degrees. Below this turn two edges run on into each other, and a change of width is cut as a step;
a mitre would be a long sliver (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Corner:
    """How the cut line goes from one strip to the next: it leaves the first strip's line at ``leave``,
    follows ``bridge`` (None: nothing between) and enters the second one's line at ``enter`` (mm along
    each). ``blunted`` says that a sharp tip was cut off.
    """

    leave: float
    enter: float
    bridge: Path | None = None
    blunted: bool = False


def mitred(first: Strip, second: Strip, limit: float) -> Corner:
    """Both cut lines run on until they meet.

    A tip farther out than ``limit`` times the wider allowance is cut off square to the corner's middle.
    Where the edges run straight on, a change of width becomes a step square to the edge.
    """
    tip = first.edge.path.end
    end, start = first.line.point_at(first.last), second.line.point_at(second.first)
    if end.distance_to(start) <= TOLERANCES.sew_length:
        return Corner(first.last, second.first)
    turn = _turn(first.end_direction, second.start_direction)
    if abs(turn) < _STRAIGHT_ON and abs(first.width - second.width) > TOLERANCES.sew_length:
        return Corner(first.last, second.first, Path.line(end, start))
    reach = limit * max(first.width, second.width)
    crossing = nearest_crossing(first.line, second.line, tip)
    if crossing is not None and (turn < 0.0 or crossing.point.distance_to(tip) <= reach):
        return Corner(crossing.at_self, crossing.at_other)
    blunt = _blunted(first, second, tip, reach) if turn > 0.0 else None
    return blunt or Corner(first.last, second.first, Path.line(end, start))


def ended_square(first: Strip, second: Strip, sewn_first: Strip, limit: float) -> Corner:
    """The allowance of the seam that is sewn first ends square to it, where its stitching, run on
    straight, leaves the cloth. Too sharp a corner is mitred with its limit instead.
    """
    tip = first.edge.path.end
    reach = limit * max(first.width, second.width)
    on_first = sewn_first is first
    outward = first.end_direction if on_first else -second.start_direction
    other = second if on_first else first
    crossing = nearest_crossing(other.line, ray(tip, outward, max(reach, 1.0)), tip)
    if crossing is None or crossing.at_other <= TOLERANCES.sew_length:
        return mitred(first, second, limit)
    run = crossing.at_other
    if on_first:
        foot = first.line.point_at(first.last + run)
        return Corner(first.last + run, crossing.at_self, Path.line(foot, crossing.point))
    foot = second.line.point_at(second.first - run)
    return Corner(crossing.at_self, second.first - run, Path.line(crossing.point, foot))


def folded_back(first: Strip, second: Strip, hem: Strip, limit: float) -> Corner:
    """The allowance beyond a hem is the reflection of the piece above its fold line, so that it lies
    flat on the piece, edge on edge, when it is turned. Mitred where no such corner can be made.

    At a curved hem the fold line is taken straight along the hem's direction at the corner.
    """
    tip = first.edge.path.end
    side, along = (first, second.start_direction) if hem is second else (second, first.end_direction)
    reach = max(hem.first, side.first)
    fold = Path.line(tip - along * reach, tip + along * reach)
    turned = side.line.transformed(Transform.reflection(tip, tip + along))
    at_fold = nearest_crossing(side.line, fold, tip)
    if at_fold is None or hem.width <= TOLERANCES.sew_length:
        return mitred(first, second, limit)
    at_edge = nearest_crossing(turned, hem.line, at_fold.point)
    if at_edge is None:
        return mitred(first, second, limit)
    place, edge_place = at_fold.at_self, at_edge.at_self
    if hem is second and edge_place < place:
        return Corner(place, at_edge.at_other, turned.between(edge_place, place).reversed())
    if hem is first and edge_place > place:
        return Corner(at_edge.at_other, place, turned.between(place, edge_place).reversed())
    return mitred(first, second, limit)


def _blunted(first: Strip, second: Strip, tip: Point, reach: float) -> Corner | None:
    outward = first.end_direction - second.start_direction
    if outward.norm() <= TOLERANCES.sew_length:
        return None
    outward = outward.unit()
    middle = tip + outward * reach
    across = outward.perpendicular() * (reach + first.first)
    cut = Path.line(middle - across, middle + across)
    leave = nearest_crossing(first.line, cut, middle)
    enter = nearest_crossing(second.line, cut, middle)
    if leave is None or enter is None:
        return None
    return Corner(leave.at_self, enter.at_self, Path.line(leave.point, enter.point), blunted=True)


def _turn(arriving: Point, leaving: Point) -> float:
    """Degrees, left (an outer corner) positive."""
    return Point(arriving.dot(leaving), arriving.cross(leaving)).direction()
