"""What a promised length measures now: on the sew line, and in the garment."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from notchbook.errors import NameLost
from notchbook.geometry import Point
from notchbook.pattern.expectation import Expectation, Reach
from notchbook.pattern.laid_pleats import laid_away
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.promise_parts import Gone, PromiseParts, promise_parts
from notchbook.pattern.seam import TURNED_SEAM, Seam
from notchbook.pattern.sewn import run_of, sewn_length


def promised_length(
    pattern: Pattern, promise: Expectation, shares: Mapping[str, float] | None = None
) -> float | None:
    """What the promised length measures on the sew line now, mm; None when a part of it is gone.

    Lines are measured along all their parts, wherever cuts and darts have carried them; a distance between
    points that lie on several panels now with these laid together along their seams. With ``shares``, which
    say how much of an edge is left in the garment, by its name (:func:`sewn_shares`), it is the length in the
    garment: eased in, and with the pleats that a level runs through laid.
    """
    parts = promise_parts(pattern, promise)
    return None if isinstance(parts, Gone) else promise.times * _measured(pattern, promise, parts, shares)


def _measured(
    pattern: Pattern, promise: Expectation, parts: PromiseParts, shares: Mapping[str, float] | None
) -> float:
    left = shares or {}
    total = sum(sewn_length(pattern, edge) * left.get(edge, 1.0) for edge in parts.edges)
    for line in parts.lines:
        total += line.path.length
        if shares is not None:
            total -= laid_away(pattern.piece_of(line.name), line.path)
    for chain in parts.chains:
        total += sum(distance_apart(*pair, promise.reach) for pair in pairwise(chain))
    return total


def sewn_shares(pattern: Pattern) -> dict[str, float]:
    """The part of its length that each edge keeps in the garment, where its seam eases it into a shorter run.

    Edges that keep all of it are left out; so is a seam that has lost an edge, for which the checks answer,
    and one that is turned: there the facing is smaller, and what it faces keeps its length.
    """
    return {edge: share for seam in pattern.seams.values() for edge, share in _shares(pattern, seam)}


def _shares(pattern: Pattern, seam: Seam) -> Iterator[tuple[str, float]]:
    if not seam.ease or seam.seam_class == TURNED_SEAM:
        return
    shorter, longer = (seam.first, seam.second) if seam.ease > 0.0 else (seam.second, seam.first)
    try:
        into, eased = run_of(pattern, shorter), run_of(pattern, longer)
    except NameLost:
        return
    share = sum(step.edge.length for step in into) / sum(step.edge.length for step in eased)
    for step in eased:
        yield step.edge.name, share


def distance_apart(first: Point, second: Point, reach: Reach) -> float:
    """How far two points of one piece are apart, mm: straight, or only along y or x of its frame."""
    if reach == "down":
        return abs(first.y - second.y)
    return abs(first.x - second.x) if reach == "across" else first.distance_to(second)
