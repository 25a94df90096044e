"""The edges that are sewn to an edge alone, each with the end that meets a named end of it."""

from collections.abc import Iterator

from notchbook.pattern import Pattern, directed


def mates_of(pattern: Pattern, edge: str, end: str) -> Iterator[tuple[str, str]]:
    """The other edge of every seam that joins this edge to one other, and its end at the named end.

    Where a seam joins several edges, or the edge to its own reflection, there is none.
    """
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            if [use.edge for use in own] == [edge] and len(other) == 1 and other[0].edge != edge:
                (begins, _), (mate, far) = (_ends(pattern, use.edge, use.starts_at) for use in (*own, *other))
                yield other[0].edge, mate if begins == end else far


def _ends(pattern: Pattern, edge: str, starts_at: str) -> tuple[str, str]:
    """The two ends of an edge or group, the one first from which a seam is walked."""
    last = directed(pattern, edge, starts_at)[-1]
    return starts_at, last.edge.end if last.forward else last.edge.start
