"""A piece made wider or narrower along some of its edges, and darts opened or closed at their mouths."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import asin, degrees

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, direction
from notchbook.pattern import Edge, Intake, Pattern, Piece, directed, spoken
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.dart_points import middled_darts
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.edges.swelling import Swelling, swollen
from notchbook.style.edges.trued_corners import trued_corner

_LEAST_UPRIGHT = 0.5
"""An edge that runs nearer to square to the grain than 30 degrees cannot be moved along it. Own judgment."""


_LEAST_ACROSS = 0.5
"""An edge counts as running across the body from 30 degrees to the grain on. Own judgment."""

_TRIES = 5
"""Corrections until an edge grows by what was asked; each leaves about a hundredth of the error."""


@dataclass(frozen=True, slots=True)
class WidenedEdge:
    """An edge or group, the end its places are counted from, and by how much it moves where."""

    edge: str
    from_point: str
    swelling: Swelling


@dataclass(frozen=True)
class Widened:
    """The pattern, and by how much the edges across the body were meant to grow, mm by name."""

    pattern: Pattern
    asked: Mapping[str, float]


def widened_edge(pattern: Pattern, widened: WidenedEdge) -> Widened:
    """The pattern with the edge moved outward square to the grain (inward where negative).

    Where it ends at an edge that runs across the body, such as the waist, that edge grows by exactly what
    was asked. StepRefused ``width-edge-level`` where the edge runs square to the grain, ``width-fold-bent``
    where a fold would not stay straight, ``run-across-pieces`` where a line has cut the edge apart.
    """
    walk = directed(pattern, widened.edge, widened.from_point)
    piece = pattern.piece_of(walk[0].edge.name)
    carriers = dict.fromkeys(pattern.carriers[step.edge.name] for step in walk)
    if len(carriers) > 1:
        pieces = tuple(map(spoken, carriers))
        raise StepRefused("run-across-pieces", edge=spoken(widened.edge), pieces=pieces)
    if any(step.edge.kind == "fold" for step in walk) and widened.swelling.runs_out:
        raise StepRefused("width-fold-bent", edge=spoken(widened.edge), piece=spoken(piece.name))
    outward = _outward(piece, walk, widened)
    asked = _asked(piece, walk, widened.swelling, outward)
    swelling = widened.swelling
    moved = _moved(piece, walk, swelling, outward)
    if swelling.amount != 0.0 and asked:
        name, wanted = max(asked.items(), key=lambda one: abs(one[1]))
        for _ in range(_TRIES):
            missing = wanted - (moved.edge(name).length - piece.edge(name).length)
            swelling = replace(swelling, amount=swelling.amount + missing)
            moved = _moved(piece, walk, swelling, outward)
    for edge, beside, _, at_its_end in _ends(piece, walk, swelling):
        if _runs_across(beside, outward, at_its_end) and beside.name not in asked:
            moved = trued_corner(piece, moved, edge.name, beside.name)
    return Widened(pattern.with_pieces(moved), asked)


def _moved(piece: Piece, walk: tuple[Directed, ...], swelling: Swelling, outward: Point) -> Piece:
    paths: dict[str, Path] = {}
    begins = 0.0
    for step in walk:
        path = swollen(step.path, begins, swelling, outward)
        paths[step.edge.name] = path if step.forward else path.reversed()
        begins += step.edge.length
    moved = redrawn(piece, paths)
    return replace(moved, outline=middled_darts(piece, moved.outline))


def _asked(piece: Piece, walk: tuple[Directed, ...], swelling: Swelling, outward: Point) -> dict[str, float]:
    """The edges beside both ends of the walk that run across the body, and how much each is to grow."""
    return {
        beside.name: amount
        for _, beside, amount, at_its_end in _ends(piece, walk, swelling)
        if amount != 0.0 and _runs_across(beside, outward, at_its_end)
    }


def _ends(
    piece: Piece, walk: tuple[Directed, ...], swelling: Swelling
) -> tuple[tuple[Edge, Edge, float, bool], ...]:
    """Both ends of the walk: its edge there, the one beside it, how far the corner moves, and whether it is
    the end of the one beside."""
    forward, first, last = walk[0].forward, walk[0].edge, walk[-1].edge
    before = piece.edge_before(first.name) if forward else piece.edge_after(first.name)
    after = piece.edge_after(last.name) if forward else piece.edge_before(last.name)
    return (
        (first, before, swelling.at(0.0), forward),
        (last, after, swelling.at(swelling.length), not forward),
    )


def _runs_across(edge: Edge, outward: Point, at_its_end: bool) -> bool:
    """Whether an edge beside the moved one runs across the body there; a fold is left straight."""
    way = edge.path.tangent_at(edge.length if at_its_end else 0.0)
    return edge.kind != "fold" and abs(way.dot(outward)) >= _LEAST_ACROSS


def _outward(piece: Piece, walk: tuple[Directed, ...], widened: WidenedEdge) -> Point:
    """The way out of the piece, square to its grain, at the place where the amount is full."""
    across = direction(piece.grain.degrees - 90.0)
    out = -_tangent_at(walk, widened.swelling.full).perpendicular()
    reach = across.dot(out)
    if abs(reach) < _LEAST_UPRIGHT:
        raise StepRefused("width-edge-level", edge=spoken(widened.edge), piece=spoken(piece.name))
    return across if reach > 0.0 else -across


def _tangent_at(walk: tuple[Directed, ...], distance: float) -> Point:
    """The direction of the outline, counter-clockwise, at a distance along the walk."""
    for step in walk:
        if distance <= step.edge.length or step is walk[-1]:
            along = min(max(distance, 0.0), step.edge.length)
            return step.edge.path.tangent_at(along if step.forward else step.edge.length - along)
        distance -= step.edge.length
    raise AssertionError("a walk has at least one edge")


def mouth_width(piece: Piece, intake: Intake) -> float:
    """How wide a dart is at its mouth, straight across, mm."""
    return piece.edge(intake.first_leg).path.start.distance_to(piece.edge(intake.second_leg).path.end)


def narrowed_dart(pattern: Pattern, intake: Intake, amount: float) -> Widened:
    """The pattern with the dart taking up less by ``amount``, mm (more where negative).

    Both legs turn about the point by the same angle and keep their lengths; the two edges at its mouth grow
    by exactly the amount. StepRefused ``width-no-dart`` for an intake without legs, ``width-dart-used-up``
    when the dart does not take up so much.
    """
    piece = pattern.piece_of(intake.name)
    if intake.kind != "dart":
        raise StepRefused("width-no-dart", intake=spoken(intake.name))
    beside = _beside_mouth(piece, intake)
    width, turned = mouth_width(piece, intake), amount
    leg = piece.edge(intake.first_leg).path
    if amount > width or width - amount >= leg.start.distance_to(leg.end):
        raise StepRefused("width-dart-used-up", intake=spoken(intake.name), width=width, amount=amount)
    narrowed = piece
    for _ in range(_TRIES):
        narrowed = _narrowed(piece, intake, turned, width)
        turned += amount - sum(narrowed.edge(name).length - piece.edge(name).length for name in beside)
    return Widened(pattern.with_pieces(narrowed), dict.fromkeys(beside, amount / 2.0))


def _beside_mouth(piece: Piece, intake: Intake) -> tuple[str, str]:
    return piece.edge_before(intake.first_leg).name, piece.edge_after(intake.second_leg).name


def _narrowed(piece: Piece, intake: Intake, amount: float, width: float) -> Piece:
    leg, other = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    reach = leg.start.distance_to(leg.end)
    half = degrees(asin(width / 2.0 / reach) - asin(max(width - amount, 0.0) / 2.0 / reach))
    opens_left = (leg.start - leg.end).cross(other.end - leg.end) >= 0.0
    turn = half if opens_left else -half
    paths = {
        intake.first_leg: leg.transformed(Transform.rotation(turn, leg.end)).with_end(leg.end),
        intake.second_leg: other.transformed(Transform.rotation(-turn, leg.end)).with_start(leg.end),
    }
    return redrawn(piece, paths)
