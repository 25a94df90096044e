"""Edges divided at a distance from one of their ends: the part at that end opens, or is sewn otherwise."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Edge,
    Pattern,
    Piece,
    Place,
    child_name,
    directed,
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
    counted and the ``far`` one, with the name of the point between them; the edge that was divided, its
    end there, and how long the near part is, mm."""

    piece: Piece
    parts: tuple[str, str]
    near: str
    far: str
    point: str
    edge: str
    end: str
    opened: float


def owner_on(slug: str, piece: str) -> str:
    """The name under which a step names what it makes on a piece, with the piece's side."""
    base, side = split_side(piece)
    return with_side(piece_name(slug, last_word(base)), side)


def beside(point: str, word: str) -> str:
    """The name of what a step makes at a point of its own: the name of the point and one word more."""
    base, side = split_side(point)
    return with_side(f"{base}_{word}", side)


def words_at(pattern: Pattern, ends: Sequence[tuple[str, str]], index: int, word: str) -> str:
    """The word for what a step makes at one of these ends: with that of its edge where two of them lie on one
    piece, as the two edges of a sleeve seam do."""
    carriers = [pattern.carriers[directed(pattern, *end)[0].edge.name] for end in ends]
    if carriers.count(carriers[index]) == 1:
        return word
    edge = split_side(ends[index][0])[0].split("/")[1:]
    return "_".join((*edge, word))


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
    opened = (first if begins else second).length
    return Divided(replace(piece, outline=outline), names, near, far, own, edge.name, point, opened)


def all_divided(
    pattern: Pattern, ends: Sequence[tuple[str, str, float]], words: tuple[str, str, str], slug: str
) -> tuple[Pattern, list[Divided]]:
    """The pattern with each of these edges divided so far from its end, mm, one after the other: two of them
    may lie on one piece."""
    named = [(edge, point) for edge, point, _ in ends]
    after = pattern
    cuts: list[Divided] = []
    for index, (edge, point, distance) in enumerate(ends):
        told = (words[0], words[1], words_at(pattern, named, index, words[2]))
        cut = divided(after, (edge, point), distance, told, slug)
        cuts.append(cut)
        after = after.with_pieces(cut.piece)
    return after, cuts
