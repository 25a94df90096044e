"""Amounts at edges that belong to both of the wearer's sides: there both sides must move alike."""

from collections.abc import Iterable

from notchbook.pattern import Pattern, Piece
from notchbook.pattern.names import Side
from notchbook.pattern.sewn import shared_by_sides


def side_of_amount(pattern: Pattern, edges: Iterable[str]) -> Side | None:
    """Whose measures an amount is reckoned from: those of both sides where an edge lies on a fold or is sewn
    left to right, else (None) those of the side that is drawn."""
    return "both" if any(shared_by_sides(pattern, name) for name in edges) else None


def beside(piece: Piece, name: str) -> tuple[str, str]:
    """The names of the two edges beside an edge."""
    return piece.edge_before(name).name, piece.edge_after(name).name
