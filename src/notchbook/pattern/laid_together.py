"""Panels laid together along their seams, edge to edge, as a length that runs over a seam is measured."""

import heapq
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import count

from notchbook.errors import NameLost
from notchbook.geometry import Point, Transform
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import Edge, Piece
from notchbook.pattern.sewn import run_of


@dataclass(frozen=True, slots=True)
class _Begin:
    """An edge at the end of its seam: at its own start or end, and the piece that carries it."""

    edge: Edge
    at_start: bool
    piece: str

    @property
    def corner(self) -> Point:
        """Where the seam begins on this edge."""
        return self.edge.path.start if self.at_start else self.edge.path.end

    @property
    def ahead(self) -> Point:
        """A place straight on along the seam."""
        path = self.edge.path
        if self.at_start:
            return path.start + path.tangent_at(0.0)
        return path.end - path.tangent_at(path.length)


@dataclass(frozen=True, slots=True)
class _Joint:
    """An end of a seam as one piece meets it, and the other piece there."""

    own: _Begin
    other: _Begin

    def motion(self) -> Transform:
        """What lays the other piece to this one: corner to corner, seam along seam."""
        return Transform.carrying(self.other.corner, self.other.ahead, self.own.corner, self.own.ahead)


def laid_place(pattern: Pattern, point: str, base: str, near: Point) -> Point | None:
    """Where a corner or mark lies in the frame of the piece ``base``, mm; None where no seams lead there.

    A point of another piece is found by laying the pieces edge to edge at ends of seams: over as few seams as
    lead there, and then by the shortest way from ``near``, a place of the base. At the end of a seam the
    pieces are laid corner to corner and along each other, as they were cut apart there: farther along, darts
    that were closed into the seam let them gape or lap. Facings, linings and other derived pieces lead
    nowhere.
    """
    carrier = pattern.carriers[point]
    target = pattern.pieces[carrier].points[point]
    if carrier == base:
        return target
    way = _way(pattern, (base, near), (carrier, target))
    if way is None:
        return None
    for joint in reversed(way):
        target = joint.motion().apply(target)
    return target


def _way(pattern: Pattern, start: tuple[str, Point], stop: tuple[str, Point]) -> tuple[_Joint, ...] | None:
    """The joints of the way over the fewest seams, and of these the shortest, straight from joint to joint.

    A shorter way may lead round over the shoulder, where the pieces do not lie as they hang.
    """
    joints = _joints(pattern)
    order = count()  # ways of one length are taken in turn: joints have no order
    ways: list[tuple[int, float, int, tuple[str, Point], tuple[_Joint, ...]]] = []
    heapq.heappush(ways, (0, 0.0, next(order), start, ()))
    done: set[tuple[str, Point]] = set()
    while ways:
        _, length, _, at, walked = heapq.heappop(ways)
        if at == stop:
            return walked
        if at in done:
            continue
        done.add(at)
        piece, place = at
        if piece == stop[0]:
            so_far = length + place.distance_to(stop[1])
            heapq.heappush(ways, (len(walked), so_far, next(order), stop, walked))
        for joint in joints.get(piece, ()):
            onward = (joint.other.piece, joint.other.corner)
            so_far = length + place.distance_to(joint.own.corner)
            heapq.heappush(ways, (len(walked) + 1, so_far, next(order), onward, (*walked, joint)))
    return None


def _joints(pattern: Pattern) -> Mapping[str, list[_Joint]]:
    """By piece, the ends of its seams to other pieces of the shell."""
    found: dict[str, list[_Joint]] = {}
    for first, second in _met_ends(pattern):
        if first.piece != second.piece:
            found.setdefault(first.piece, []).append(_Joint(first, second))
            found.setdefault(second.piece, []).append(_Joint(second, first))
    return found


def _met_ends(pattern: Pattern) -> Iterator[tuple[_Begin, _Begin]]:
    """The edges of shell pieces that meet at both ends of each seam."""
    for seam in pattern.seams.values():
        if any(use.side != "both" for use in (*seam.first, *seam.second)):
            continue
        try:
            runs = run_of(pattern, seam.first), run_of(pattern, seam.second)
        except NameLost:
            continue  # the check of the seams tells of it
        for steps, is_begin in (((runs[0][0], runs[1][0]), True), ((runs[0][-1], runs[1][-1]), False)):
            ends = [
                _Begin(one.edge, one.forward is is_begin, pattern.carriers[one.edge.name]) for one in steps
            ]
            if all(_is_shell(pattern.pieces[end.piece]) for end in ends):
                yield ends[0], ends[1]


def _is_shell(piece: Piece) -> bool:
    """Whether the piece is the garment's own and was not traced off another."""
    return piece.rule is None
