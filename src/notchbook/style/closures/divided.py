"""An edge divided at a distance from one of its ends: the part at that end opens, or is sewn otherwise."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Edge,
    Pattern,
    Piece,
    Place,
    child_name,
    locate,
    part_name,
    piece_name,
    split_side,
    spoken,
    with_side,
)
from notchbook.pattern.names import last_word


@dataclass(frozen=True, slots=True)
class Divided:
    """The piece with the divided edge; its parts in their order; the part ``near`` the end from which was
    counted and the ``far`` one, with the name of the point between them; the edge that was divided."""

    piece: Piece
    parts: tuple[str, str]
    near: str
    far: str
    point: str
    edge: str


def owner_on(slug: str, piece: str) -> str:
    """The name under which a step names what it makes on a piece, with the piece's side."""
    base, side = split_side(piece)
    return with_side(piece_name(slug, last_word(base)), side)


def divided(
    pattern: Pattern, end: tuple[str, str], distance: float, words: tuple[str, str, str], slug: str
) -> Divided:
    """The edge divided so far from its end, mm.

    ``end``: the edge or group, and its end; ``words``: of the part there, of the rest, and of the point.
    StepRefused ``closure-across-parts`` where the place is not on the part at the end.
    """
    name, point = end
    found = locate(pattern, Place(name, point, distance))
    edge, piece = found.edge, pattern.pieces[found.piece]
    if point not in (edge.start, edge.end):
        raise StepRefused(
            "closure-across-parts", edge=spoken(name), part=spoken(edge.name), distance=distance
        )
    begins = edge.start == point
    first, second = edge.path.split_at(found.distance)
    own = part_name(owner_on(slug, piece.name), words[2])
    near, far = child_name(edge.name, words[0]), child_name(edge.name, words[1])
    names = (near, far) if begins else (far, near)
    parts = (
        Edge(names[0], first, edge.start, own, edge.kind),
        Edge(names[1], second, own, edge.end, edge.kind),
    )
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *parts, *piece.outline[index + 1 :])
    return Divided(replace(piece, outline=outline), names, near, far, own, edge.name)
