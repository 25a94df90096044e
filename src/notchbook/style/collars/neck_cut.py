"""The neck of a front that goes on into a button stand, from where the collar begins: at a corner, or cut."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, child_name, locate, run_length, run_of, spoken
from notchbook.pattern.splitting import EdgeNames, cut_edge
from notchbook.style.collars.neck_walk import (
    corner_near,
    corners_of,
    each_edge,
    parted_at,
)

Splits = dict[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class NeckLeft:
    """What is left of a neck for the collar: the pattern, the run, the parts of the edge that was cut."""

    pattern: Pattern
    uses: tuple[EdgeUse, ...]
    splits: Splits


def from_corner(pattern: Pattern, uses: tuple[EdgeUse, ...], at: float) -> NeckLeft:
    """The neck from its corner so far along, mm; StepRefused ``collar-begins-elsewhere``."""
    corner = corner_near(corners_of(pattern, uses), at)
    if corner is None:
        raise StepRefused("collar-begins-elsewhere", edge=spoken(uses[0].edge), place=at, begins="corner")
    return NeckLeft(pattern, parted_at(pattern, uses, corner.index)[1], {})


def from_cut(pattern: Pattern, uses: tuple[EdgeUse, ...], at: float) -> NeckLeft:
    """The neck from a place so far along, mm, within one of its edges, which is cut there.

    StepRefused ``collar-begins-elsewhere`` where a corner lies there.
    """
    if corner_near(corners_of(pattern, uses), at) is not None:
        raise StepRefused("collar-begins-elsewhere", edge=spoken(uses[0].edge), place=at, begins="cut")
    number, rest = 0, at
    while rest > (length := run_length(pattern, uses[number : number + 1])):
        number, rest = number + 1, rest - length
    use = uses[number]
    found = locate(pattern, Place(use.edge, use.starts_at, rest))
    walk = run_of(pattern, (use,))
    index, step = next((n, one) for n, one in enumerate(walk) if one.edge.name == found.edge.name)
    free, collared = child_name(found.edge.name, "near"), child_name(found.edge.name, "far")
    point = child_name(collared, "center_end")
    names = (free, collared) if step.forward else (collared, free)
    parts = cut_edge(found.edge, found.distance, EdgeNames(*names, point, point))
    piece = pattern.pieces[found.piece]
    place = piece.edge_index(found.edge.name)
    outline = (*piece.outline[:place], *parts, *piece.outline[place + 1 :])
    left = (EdgeUse(collared, point), *each_edge(walk[index + 1 :]), *uses[number + 1 :])
    return NeckLeft(pattern.with_pieces(replace(piece, outline=outline)), left, {found.edge.name: names})
