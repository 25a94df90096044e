"""How long an edge is when it is sewn: as measured on the outline, less what is gathered or eased in."""

from notchbook.checks.measured import length
from notchbook.pattern import Edge, Pattern
from notchbook.pattern.sewn import drawn_in


def sewn(pattern: Pattern, edge: Edge) -> float:
    """The measured length of an edge as sewn, mm."""
    return length(edge.path) - drawn_in(pattern, edge.name)


def sewn_share(pattern: Pattern, edge: Edge) -> float:
    """How much of the length of an edge is left when it is sewn, as a share."""
    whole = length(edge.path)
    return sewn(pattern, edge) / whole if whole > 0.0 else 1.0
