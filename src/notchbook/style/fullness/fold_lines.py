"""The lines of folds end on the edge across as it was trued, so that it can be notched there."""

from collections.abc import Collection
from dataclasses import replace

from notchbook.geometry import Path
from notchbook.pattern import Piece

_NEAR = 20.0
"""mm by which truing may move the edge across; more, and a line is left as it is. Own judgment."""


def ended_on_edge(piece: Piece, lines: Collection[str], edges: Collection[str]) -> Piece:
    """The piece with these straight lines ended on these edges, led on or cut off."""
    across = [edge.path for edge in piece.outline if edge.name in edges]
    drawn = tuple(
        replace(line, path=_ended(line.path, across)) if line.name in lines else line for line in piece.lines
    )
    return replace(piece, lines=drawn)


def _ended(line: Path, across: Collection[Path]) -> Path:
    ahead = line.tangent_at(line.length) * _NEAR
    reach = Path.line(line.end - ahead, line.end + ahead)
    met = [crossing.point for path in across for crossing in reach.intersections(path)]
    return Path.line(line.start, min(met, key=line.end.distance_to)) if met else line
