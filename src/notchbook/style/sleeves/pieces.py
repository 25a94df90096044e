"""Small pieces of a sleeve drawn from corners: strips, towers, cuffs."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, EdgeKind, part_name


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a piece: the corner where it begins and the words of the corner and of the edge that
    follows it, counter-clockwise; ``path`` where it is not straight."""

    corner: Point
    point: str
    edge: str
    kind: EdgeKind = "plain"
    path: Path | None = None


def outlined(name: str, sides: Sequence[Side]) -> tuple[Edge, ...]:
    """The outline of a piece from its sides, each running to the corner of the next one."""
    found: list[Edge] = []
    for side, following in zip(sides, (*sides[1:], sides[0]), strict=True):
        path = side.path or Path.line(side.corner, following.corner)
        ends = part_name(name, side.point), part_name(name, following.point)
        found.append(Edge(part_name(name, *side.edge.split("/")), path, *ends, side.kind))
    return tuple(found)
