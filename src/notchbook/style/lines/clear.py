"""A line meets the outline at its own two ends and nowhere else."""

from collections.abc import Iterable

from notchbook.errors import NameLost
from notchbook.geometry import Path
from notchbook.pattern import Edge, Piece, spoken
from notchbook.units import TOLERANCES


def edges_met(line: Path, edges: Iterable[Edge]) -> list[str]:
    """The names of the edges that the line meets between its ends."""
    return [edge.name for edge in edges if _crosses(line, edge.path)]


def lost_across(piece: Piece, ends: tuple[str, str], crossed: str) -> NameLost:
    """The refusal of a line from edge to edge that runs across something of the piece."""
    return NameLost(
        "style-line-crosses",
        name=crossed,
        piece=spoken(piece.name),
        start=spoken(ends[0]),
        end=spoken(ends[1]),
        crossed=spoken(crossed),
        candidates=(),
        by="",
    )


def _crosses(path: Path, other: Path) -> bool:
    ends = TOLERANCES.closure
    return any(ends < crossing.at_self < path.length - ends for crossing in path.intersections(other))
