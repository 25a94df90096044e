"""How long the elastics of a pattern are: they follow the edges that they lie on."""

from notchbook.pattern.elastic import Elastic
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import Found, resolve
from notchbook.pattern.sewn import sewn_length


def is_on(pattern: Pattern, elastic: Elastic, edges: frozenset[str]) -> bool:
    """Whether the elastic lies on any of these living edges."""
    return any(edges & set(_members(pattern, name)) for name in elastic.edges)


def lost_edges(pattern: Pattern, elastic: Elastic) -> tuple[str, ...]:
    """The edges of an elastic that the pattern does not have any more."""
    return tuple(name for name in elastic.edges if not _members(pattern, name))


def ring_length(pattern: Pattern, elastic: Elastic) -> float:
    """The length of the elastic closed to a ring, mm; edges that are gone count nothing.

    Round the body an edge of a half piece, on the fold or cut as a pair, counts twice.
    """
    if elastic.girth is not None:
        return elastic.share * elastic.girth
    members = [member for name in elastic.edges for member in _members(pattern, name)]
    return elastic.share * sum(
        _times(pattern, elastic, edge) * sewn_length(pattern, edge) for edge in members
    )


def _times(pattern: Pattern, elastic: Elastic, edge: str) -> int:
    is_half = pattern.piece_of(edge).cut in ("fold", "pair")
    return 2 if elastic.goes_round == "body" and is_half else 1


def _members(pattern: Pattern, name: str) -> tuple[str, ...]:
    found = resolve(pattern, name)
    return found.members if isinstance(found, Found) else ()


def without_elastics_on(pattern: Pattern, edges: frozenset[str]) -> Pattern:
    """The pattern without the elastics of these living edges: something else is sewn there now."""
    gone = [one.name for one in pattern.elastics.values() if is_on(pattern, one, edges)]
    return pattern.with_elastics(without=gone)
