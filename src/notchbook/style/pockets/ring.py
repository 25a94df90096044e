"""A piece made of named paths that follow each other round it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.geometry import Path
from notchbook.pattern import CutInstruction, Edge, EdgeKind, InternalLine, Piece, part_name
from notchbook.pattern.names import instance_of
from notchbook.style.pockets.parts import cut_as


@dataclass(frozen=True, slots=True)
class RingSide:
    """A side of a piece: the word for it and for the point where it begins, its path and what it is. With
    ``keeps`` it keeps the name of an edge, and with ``from_point`` that of a point."""

    word: str
    begins: str
    path: Path
    kind: EdgeKind = "seam"
    keeps: str = ""
    from_point: str = ""


def ring_piece(
    name: str,
    called: tuple[str, tuple[CutInstruction, ...]],
    sides: Sequence[RingSide],
    below: Piece,
    *,
    clockwise: bool,
    lines: tuple[InternalLine, ...] = (),
) -> Piece:
    """The piece; ``called``: its title and how it is cut, ``below``: the piece whose grain it has."""
    points = [side.from_point or part_name(name, side.begins) for side in sides]
    starts = [side.path.start for side in sides]
    edges: list[Edge] = []
    for index, side in enumerate(sides):
        following = (index + 1) % len(sides)
        path = side.path.with_end(starts[following])
        label = side.keeps or part_name(name, side.word)
        edges.append(Edge(label, path, points[index], points[following], side.kind))
    if clockwise:
        edges = [edge.reversed() for edge in reversed(edges)]
    return Piece(
        name=name,
        title=called[0],
        outline=tuple(edges),
        lines=lines,
        grain=replace(below.grain),
        cut=cut_as(below),
        side=below.side,
        instructions=called[1],
        rule=instance_of(name),
        stretches=below.stretches,
    )
