"""The outline of a piece from its sides, each called by a word."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, EdgeKind, part_name


@dataclass(frozen=True, slots=True)
class Side:
    """A side of a piece: the word for it and for the point where it begins, its path and what it is. With
    ``keeps`` it keeps the name of an edge, and with ``from_point`` that of a point."""

    word: str
    begins: str
    path: Path
    kind: EdgeKind = "seam"
    keeps: str = ""
    from_point: str = ""


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of a piece with straight sides: the words for it and for the side that begins there."""

    place: Point
    begins: str
    word: str
    kind: EdgeKind = "plain"


def outlined(owner: str, sides: Sequence[Side], *, clockwise: bool = False) -> tuple[Edge, ...]:
    """The edges, each ending exactly where the next one begins, named under ``owner``; counter-clockwise also
    where the sides run ``clockwise``."""
    edges = [
        Edge(
            side.keeps or part_name(owner, *side.word.split("/")),
            side.path.with_end(following.path.start),
            _point(owner, side),
            _point(owner, following),
            side.kind,
        )
        for side, following in pairwise((*sides, sides[0]))
    ]
    return tuple(edge.reversed() for edge in reversed(edges)) if clockwise else tuple(edges)


def straight_sides(corners: Sequence[Corner]) -> tuple[Side, ...]:
    """Straight sides from corner to corner and back to the first."""
    return tuple(
        Side(corner.word, corner.begins, Path.line(corner.place, following.place), corner.kind)
        for corner, following in pairwise((*corners, corners[0]))
    )


def _point(owner: str, side: Side) -> str:
    return side.from_point or part_name(owner, side.begins)
