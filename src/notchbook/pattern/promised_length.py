"""What a promised length measures now: on the sew line, and in the garment."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from notchbook.errors import NameLost
from notchbook.geometry import Point
from notchbook.pattern.expectation import Expectation, Reach
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import Found, resolve
from notchbook.pattern.seam import Seam
from notchbook.pattern.sewn import run_of, sewn_length


def promised_length(
    pattern: Pattern, promise: Expectation, shares: Mapping[str, float] | None = None
) -> float | None:
    """What the promised length measures on the sew line now, mm; None when a part of it is gone.

    ``shares`` say how much of an edge is left in the garment, by its name (:func:`sewn_shares`).
    """
    left = shares or {}
    lines = {line.name: line.path.length for piece in pattern.pieces.values() for line in piece.lines}
    total = 0.0
    for name in promise.names:
        found = resolve(pattern, name)
        if name in lines:
            total += lines[name]
        elif isinstance(found, Found):
            total += sum(sewn_length(pattern, member) * left.get(member, 1.0) for member in found.members)
        else:
            return None
    for chain in promise.chains:
        points = _points(pattern, chain)
        if points is None:
            return None
        total += sum(distance_apart(*pair, promise.reach) for pair in pairwise(points))
    return promise.times * total


def sewn_shares(pattern: Pattern) -> dict[str, float]:
    """The part of its length that each edge keeps in the garment, where its seam eases it into a shorter run.

    Edges that keep all of it are left out; so is a seam that has lost an edge, for which the checks answer.
    """
    return {edge: share for seam in pattern.seams.values() for edge, share in _shares(pattern, seam)}


def _shares(pattern: Pattern, seam: Seam) -> Iterator[tuple[str, float]]:
    if not seam.ease:
        return
    shorter, longer = (seam.first, seam.second) if seam.ease > 0.0 else (seam.second, seam.first)
    try:
        into, eased = run_of(pattern, shorter), run_of(pattern, longer)
    except NameLost:
        return
    share = sum(step.edge.length for step in into) / sum(step.edge.length for step in eased)
    for step in eased:
        yield step.edge.name, share


def _points(pattern: Pattern, names: tuple[str, ...]) -> list[Point] | None:
    """Where these corners and marks of one piece lie; None when one is gone."""
    carrier = pattern.carriers.get(names[0])
    if carrier is None:
        return None
    places = pattern.pieces[carrier].points
    return [places[name] for name in names] if all(name in places for name in names) else None


def distance_apart(first: Point, second: Point, reach: Reach) -> float:
    """How far two points of one piece are apart, mm: straight, or only along y or x of its frame."""
    if reach == "down":
        return abs(first.y - second.y)
    return abs(first.x - second.x) if reach == "across" else first.distance_to(second)
