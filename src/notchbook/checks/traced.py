"""Edges that were traced off others: their lines are judged where they were drawn, and not once more."""

from notchbook.pattern import Pattern
from notchbook.pattern.seam import TURNED_SEAM


def traced_edges(pattern: Pattern) -> frozenset[str]:
    """The edges that were traced, and the free edges parallel to them on the same pieces."""
    turned = [seam for seam in pattern.seams.values() if seam.seam_class == TURNED_SEAM]
    sewn = {use.edge for seam in turned for use in seam.first}
    pieces = {pattern.carriers[edge] for edge in sewn if edge in pattern.carriers}
    free = {
        edge.name
        for name in pieces
        for edge in pattern.pieces[name].outline
        if edge.kind == "plain" and pattern.pieces[name].rule is not None
    }
    return frozenset(sewn | free)
