"""Angles at the corners of a piece, inside it, with the intakes closed."""

from dataclasses import dataclass
from typing import Literal

from notchbook.checks.measured import end_direction, start_direction, wrapped
from notchbook.geometry import Point
from notchbook.pattern import Edge, Piece

End = Literal["start", "end"]


_OPEN = 150.0
"""Degrees inside a corner from which cloth goes on beyond the end of a seam: a vent, an underlap, a band
that runs on. Such a corner ends no line that could be matched. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner seen from one of its edges: the angle inside the piece (degrees) and the neighbor edge."""

    degrees: float
    neighbor: Edge
    position: Point

    @property
    def is_open(self) -> bool:
        """Whether the piece goes on beyond this end of the edge."""
        return self.degrees > _OPEN


def inside_angle(before: Edge, after: Edge) -> float:
    """The angle inside the piece between an edge and the one that follows it, degrees in [0, 360)."""
    return 180.0 - wrapped(start_direction(after.path) - end_direction(before.path))


def corner(piece: Piece, edge: Edge, end: End) -> Corner:
    """The corner at one end of an edge; intakes that open there are closed and passed over."""
    mates = {i.first_leg: i.second_leg for i in piece.darts} | {
        i.second_leg: i.first_leg for i in piece.darts
    }
    step = 1 if end == "end" else -1
    count = len(piece.outline)
    position = edge.path.end if end == "end" else edge.path.start
    total, here = 0.0, edge
    for _ in range(count):
        neighbor = piece.outline[(piece.edge_index(here.name) + step) % count]
        before, after = (here, neighbor) if step == 1 else (neighbor, here)
        total += inside_angle(before, after)
        if neighbor.name not in mates:
            break
        here = piece.edge(mates[neighbor.name])
    return Corner(total, neighbor, position)
