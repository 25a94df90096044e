"""Truing: an edge drawn anew where it does not run on, across a closed dart or where one was closed."""

from dataclasses import dataclass, replace
from math import radians

from notchbook.geometry import Cubic, Path, Point, Transform, run_on
from notchbook.geometry.roots import unit_roots
from notchbook.pattern.piece import Intake, Piece
from notchbook.units import TOLERANCES

MOUTH_REACH = 12.0
"""mm on each side of a dart's mouth along which the edge is drawn anew. Own judgment: half the width of a
finger, so that level lines and notches stay clear of it."""

LONGER_REACHES = (30.0, 24.0, 18.0)
"""The same for a dart that a step opened or drew anew: the longest that keeps the length of the edge is
taken, for in a curve a short one shows as a bump. Own judgment."""

JOINT_REACH = 20.0
"""The same where a dart was closed: more than at a mouth, so that what was trued for the dart goes too."""

LOST_LENGTH = 0.04
"""mm of edge that truing may cost; a sharper corner is trued along a shorter stretch."""

_NO_CORNER = 0.02
"""Degrees below which the edge runs on as it is."""

_LEAST_REACH = 0.5
"""mm; a shorter stretch is not drawn anew, and none so short is left over."""

_FLAT = 1e-6
"""Radians that count as the least turn, so that nothing is divided by zero."""


@dataclass(frozen=True, slots=True)
class _Bridge:
    """The new line from ``stop`` mm along the edge before to ``reach`` mm along the edge after."""

    stop: float
    reach: float
    line: Cubic


@dataclass(frozen=True, slots=True)
class TruedMouth:
    """The edge before and after a dart, drawn anew; they end and begin at the ends of its mouth."""

    before: Path
    after: Path


def trued_mouth(
    before: Path,
    mouth: tuple[Point, Point],
    point: Point,
    after: Path,
    most_moved: float | None = None,
    reach: float = MOUTH_REACH,
) -> TruedMouth | None:
    """The edge drawn anew across a closed dart, so that it runs on; None where it does so already.

    ``mouth`` is the end of ``before`` and the start of ``after``, ``point`` the point of the dart. Unfolded,
    both legs end on the new line and are equally long. The mouth moves by no more than ``most_moved`` mm;
    the edge is drawn anew for ``reach`` mm on each side of it at most.
    """
    first, second = mouth
    if first.distance_to(second) <= TOLERANCES.sew_length:
        return None
    closing = Transform.rotation((first - point).direction() - (second - point).direction(), point)
    bridge = _bridge(before, after.transformed(closing), reach, most_moved)
    if bridge is None:
        return None
    inner, outer = bridge.line.split(_on_fold(bridge.line, point, first))
    return TruedMouth(
        before.between(0.0, bridge.stop).joined(Path.of(inner)),
        Path.of(outer).transformed(closing.inverse()).joined(after.between(bridge.reach, after.length)),
    )


def true_mouth(piece: Piece, intake: Intake) -> Piece:
    """The piece with the edge drawn anew across one of its darts, so that it runs on when the dart is closed.

    A dart of nothing, or beside another leg, is left as it is.
    """
    first, second = piece.edge(intake.first_leg), piece.edge(intake.second_leg)
    before, after = piece.edge_before(first.name), piece.edge_after(second.name)
    if "leg" in (before.kind, after.kind):
        return piece
    mouth = first.path.start, second.path.end
    trued = _trued_long(before.path, mouth, first.path.end, after.path)
    if trued is None:
        return piece
    return piece.with_edges(
        replace(before, path=trued.before),
        replace(first, path=first.path.with_start(trued.before.end)),
        replace(second, path=second.path.with_end(trued.after.start)),
        replace(after, path=trued.after),
    )


def _trued_long(before: Path, mouth: tuple[Point, Point], point: Point, after: Path) -> TruedMouth | None:
    """The edge drawn anew along the longest stretch that keeps its length within a pencil line's half."""
    for reach in LONGER_REACHES:
        trued = trued_mouth(before, mouth, point, after, reach=reach)
        if trued is None:
            return None
        changed = trued.before.length + trued.after.length - before.length - after.length
        if abs(changed) <= TOLERANCES.closure / 2.0:
            return trued
    return trued_mouth(before, mouth, point, after)


def true_joint(piece: Piece, point: str) -> Piece:
    """The corner at the named point between two edges drawn smooth: a dart was closed there.

    Each of the two keeps its half of the new line; their lengths change by less than a tenth of a millimeter.
    """
    before = next(edge for edge in piece.outline if edge.end == point)
    after = next(edge for edge in piece.outline if edge.start == point)
    bridge = _bridge(before.path, after.path, JOINT_REACH)
    if bridge is None:
        return piece
    line = Path.of(bridge.line)
    first, second = line.split_at(line.length / 2.0)
    return piece.with_edges(
        replace(before, path=before.path.between(0.0, bridge.stop).joined(first)),
        replace(after, path=second.joined(after.path.between(bridge.reach, after.length))),
    )


def _bridge(before: Path, after: Path, most: float, most_moved: float | None = None) -> _Bridge | None:
    """The line that runs on from one path into the next; None where they do so already."""
    turn = _turn(before.tangent_at(before.length), after.tangent_at(0.0))
    reach = min(most, 0.45 * before.length, 0.45 * after.length, _cheap_reach(turn))
    if most_moved is not None:
        reach = min(reach, 4.0 * most_moved / max(radians(abs(turn)), _FLAT))
    if abs(turn) < _NO_CORNER or reach <= _LEAST_REACH:
        return None
    stop, reach = _off_joints(before, before.length - reach), _off_joints(after, reach)
    return _Bridge(stop, reach, run_on(before, stop, after, reach))


def _off_joints(path: Path, place: float) -> float:
    """The place, or a joint of the path beside it: no part too short to draw is left between them."""
    joint = 0.0
    for segment in path.segments[:-1]:
        joint += segment.length
        if abs(joint - place) <= _LEAST_REACH:
            return joint
    return place


def _cheap_reach(turn: float) -> float:
    """How far from a corner of so many degrees a new line may begin and cost no more length than it may."""
    return 6.0 * LOST_LENGTH / max(radians(abs(turn)), _FLAT) ** 2


def _turn(arriving: Point, leaving: Point) -> float:
    return Point(arriving.dot(leaving), arriving.cross(leaving)).direction()


def _on_fold(line: Cubic, point: Point, mouth: Point) -> float:
    """The parameter at which the ray from the dart point through the mouth meets the new line."""
    up = (mouth - point).unit()
    (x1, x2, x3), (y1, y2, y3) = line.powers
    beside = (
        up.cross(line.start - point),
        up.x * y1 - up.y * x1,
        up.x * y2 - up.y * x2,
        up.x * y3 - up.y * x3,
    )
    return next(iter(unit_roots(beside)), 0.5)
