"""Lengths and places as sewn: along an edge or a group, with the intakes closed."""

from dataclasses import dataclass

from notchbook.errors import InputError, NameLost, StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern.names import spoken
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Edge, Intake, Piece
from notchbook.pattern.place import Place
from notchbook.pattern.resolve import expand, require
from notchbook.pattern.seam import EdgeUse
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class Directed:
    """An edge walked forward (along its own direction) or backward."""

    edge: Edge
    forward: bool

    @property
    def path(self) -> Path:
        """The path in the direction of the walk."""
        return self.edge.path if self.forward else self.edge.path.reversed()

    @property
    def start(self) -> str:
        """The name of the point where the walk of this edge begins."""
        return self.edge.start if self.forward else self.edge.end


@dataclass(frozen=True, slots=True)
class Located:
    """A place found on one edge: ``distance`` mm from the start of the edge itself."""

    edge: Edge
    piece: str
    distance: float
    position: Point


def directed(pattern: Pattern, name: str, from_point: str) -> tuple[Directed, ...]:
    """The edges behind a name, walked from the named end; NameLost when it is no end of it."""
    edges = [pattern.edges[member] for member in require(pattern, name)]
    if edges[0].start == from_point:
        return tuple(Directed(edge, True) for edge in edges)
    if edges[-1].end == from_point:
        return tuple(Directed(edge, False) for edge in reversed(edges))
    raise NameLost("end-lost", name=name, point=from_point, ends=(edges[0].start, edges[-1].end))


def run_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[Directed, ...]:
    """The whole run of a seam, edge by edge in walking order."""
    return tuple(step for use in uses for step in directed(pattern, use.edge, use.starts_at))


def drawn_in(pattern: Pattern, edge: str) -> float:
    """How much shorter an edge is as sewn, mm: what gathers and eases draw in along it.

    Where the edge that was drawn in has been divided since, its parts share the amount by their lengths.
    """
    total = 0.0
    for intake in pattern.drawn_in:
        if edge in (members := expand(pattern, intake.edge)[0]):
            whole = sum(pattern.edges[member].length for member in members)
            total += intake.amount * pattern.edges[edge].length / whole if whole > 0.0 else 0.0
    return total


def sewn_edge_length(pattern: Pattern, edge: Edge) -> float:
    """The length of one edge as sewn, mm: along the sew line, less what is drawn in."""
    return edge.length - drawn_in(pattern, edge.name)


def sewn_length(pattern: Pattern, name: str) -> float:
    """The length of an edge or group as sewn, mm."""
    return sum(sewn_edge_length(pattern, pattern.edges[member]) for member in require(pattern, name))


def run_length(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> float:
    """The length of a seam's run as sewn, mm."""
    return sum(sewn_edge_length(pattern, step.edge) for step in run_of(pattern, uses))


def shared_by_sides(pattern: Pattern, name: str) -> bool:
    """Whether the edge belongs to both of the wearer's sides: on a fold, or sewn left to right."""
    members = set(require(pattern, name))
    if any(pattern.edges[member].kind == "fold" for member in members):
        return True
    return any(
        use.side != "both" and members & set(require(pattern, use.edge))
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
    )


def place_distance(pattern: Pattern, place: Place, through: frozenset[str] = frozenset()) -> float:
    """How far the place lies from its named end, as sewn, mm; refused beyond the edge.

    ``through`` holds the notches from which the place is already being counted.
    """
    total = sewn_length(pattern, place.edge)
    amount = place.amount * total if place.measure == "fraction" else place.amount
    if place.notch is not None:
        amount += _notch_distance(pattern, place, through)
    if not -TOLERANCES.sew_length <= amount <= total + TOLERANCES.sew_length:
        raise InputError("place-beyond-edge", edge=spoken(place.edge), wanted=amount, length=total)
    return min(max(amount, 0.0), total)


def _notch_distance(pattern: Pattern, place: Place, through: frozenset[str]) -> float:
    notch = pattern.notches.get(place.notch or "")
    if notch is None:
        raise NameLost(
            "name-lost",
            name=place.notch,
            candidates=(),
            by="no step",
            reason="no notch of this pattern has this name",
            wanted="notch",
        )
    if notch.place.edge != place.edge:
        raise InputError("notch-on-other-edge", notch=spoken(notch.name), edge=spoken(place.edge))
    if notch.name in through:
        raise InputError("notch-from-itself", notch=spoken(notch.name))
    distance = place_distance(pattern, notch.place, through | {notch.name})
    if notch.place.from_point == place.from_point:
        return distance
    return sewn_length(pattern, place.edge) - distance


def locate(pattern: Pattern, place: Place) -> Located:
    """The place on the one edge where it lies; at a joint of a group the earlier edge is taken."""
    remaining = place_distance(pattern, place)
    walk = directed(pattern, place.edge, place.from_point)
    for step in walk:
        length = sewn_edge_length(pattern, step.edge)
        if remaining <= length + TOLERANCES.sew_length or step is walk[-1]:
            along = min(remaining, length)
            sewn = along if step.forward else length - along
            distance = sewn if length == step.edge.length else sewn * step.edge.length / length
            return Located(
                step.edge, pattern.carriers[step.edge.name], distance, step.edge.path.point_at(distance)
            )
        remaining -= length
    raise InputError("place-beyond-edge", edge=spoken(place.edge), wanted=place.amount, length=0.0)


def closing_motion(piece: Piece, intake: Intake) -> Transform:
    """The motion that lays the second leg on the first: about the dart point; of a tuck or pleat, that which
    lays its second line on its first."""
    if intake.is_folded:
        still, moved = piece.line(intake.first_line).path, piece.line(intake.second_line).path
        return Transform.carrying(moved.start, moved.end, still.start, still.end)
    first = piece.edge(intake.first_leg).path
    second = piece.edge(intake.second_leg).path
    pivot = first.end
    if first.start.distance_to(pivot) <= TOLERANCES.join:
        return Transform.identity()
    angle = (first.start - pivot).direction() - (second.end - pivot).direction()
    return Transform.rotation(angle, pivot)


def closed_motions(piece: Piece, first_edge: str, last_edge: str) -> dict[str, Transform]:
    """For each edge from ``first_edge`` to ``last_edge`` counter-clockwise: its motion when the
    intakes between are closed, the first edge lying still. Dart legs are left out."""
    by_first_leg = {intake.first_leg: intake for intake in piece.intakes if intake.has_legs}
    second_legs = {intake.second_leg for intake in piece.intakes if intake.has_legs}
    motion = Transform.identity()
    found: dict[str, Transform] = {}
    index = piece.edge_index(first_edge)
    for step in range(len(piece.outline)):
        edge = piece.outline[(index + step) % len(piece.outline)]
        if edge.name in by_first_leg:
            motion = closing_motion(piece, by_first_leg[edge.name]).then(motion)
        elif edge.name not in second_legs:
            found[edge.name] = motion
        if edge.name == last_edge:
            return found
    return found


def closed_path(pattern: Pattern, name: str) -> Path:
    """An edge or group of one piece as one path with its intakes closed, its first edge still.

    Refused (``run-across-pieces``) when its edges lie on several pieces.
    """
    members = require(pattern, name)
    carriers = tuple(dict.fromkeys(pattern.carriers[member] for member in members))
    if len(carriers) > 1:
        raise StepRefused("run-across-pieces", edge=spoken(name), pieces=tuple(map(spoken, carriers)))
    piece = pattern.piece_of(members[0])
    motions = closed_motions(piece, members[0], members[-1])
    return Path(
        tuple(
            segment
            for member in members
            for segment in piece.edge(member).path.transformed(motions[member]).segments
        )
    )
