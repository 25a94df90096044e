"""A lining less the facing that stands before it: it ends at the facing's free edge and is sewn to it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Seam,
    part_name,
    require,
    require_one,
    spoken,
    walk_seam,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.pattern import frozen_map
from notchbook.style.edges.carried_edge import Carry, carried_edge
from notchbook.style.traced.tracing import TURNED

_NEAR = 5.0
"""mm by which the ends of a free edge may lie beside the outline of the piece: more than any turn of cloth.
Own judgment."""


@dataclass(frozen=True, slots=True)
class _Taken:
    """What a facing takes from a lining: the edges that go, and the outline before and after them."""

    lining: Piece
    gone: tuple[str, ...]
    before: Edge
    after: Edge


def less_facing(pattern: Pattern, names: Mapping[str, str], free_edge: str, slug: str) -> Pattern:
    """The pattern with the lining cut back to the free edge of a facing, and sewn to it.

    ``names``: the name on the lining for each name of what was lined. StepRefused ``lining-no-facing`` where
    the edge is not that of a facing of one lined piece, ``lining-facing-shaped`` where darts were closed in
    the facing or it was laid elsewhere, so that its edge does not lie on the piece.
    """
    free = pattern.edges[require_one(pattern, free_edge)]
    facing = pattern.piece_of(free.name)
    taken = _taken(pattern, facing, names, free)
    reversed_free = free.path.reversed()
    ends = _end_lengths(facing, free)
    before = taken.before.path.split_at(taken.before.length - _reach(taken.before, ends[0], facing))[0]
    after = taken.after.path.split_at(_reach(taken.after, ends[1], facing))[1]
    path = _between(reversed_free, before.end, after.start, facing)
    own = part_name(taken.lining.name, "facing_edge")
    corners = [part_name(taken.lining.name, last_word(point)) for point in (free.end, free.start)]
    outline: list[Edge] = []
    for edge in taken.lining.outline:
        if edge.name == taken.before.name:
            outline.append(replace(edge, path=before, end=corners[0]))
        elif edge.name == taken.after.name:
            outline.append(replace(edge, path=after, start=corners[1]))
        elif edge.name not in taken.gone:
            outline.append(edge)
        if edge.name == taken.gone[0]:
            outline.append(Edge(own, path, corners[0], corners[1], "seam"))
    cut = replace(taken.lining, outline=tuple(outline))
    moved = {taken.before.end: corners[0], taken.after.start: corners[1]}
    after_pattern = _followed(pattern, cut, taken, moved)
    seam = Seam(
        part_name(slug, f"{last_word(taken.lining.name)}_facing"),
        (EdgeUse(free.name, free.end),),
        (EdgeUse(own, corners[0]),),
        allowance_class="lining",
    )
    eased = replace(seam, ease=walk_seam(after_pattern, seam).misfit)
    allowances = {own: Allowance("lining"), free.name: Allowance("lining")}
    return after_pattern.with_seams(eased).with_allowances(allowances)


def _taken(pattern: Pattern, facing: Piece, names: Mapping[str, str], free: Edge) -> _Taken:
    """The edges of the lining that the facing takes the place of."""
    own = {edge.name for edge in facing.outline}
    gone: list[str] = []
    for seam in pattern.seams.values():
        if seam.seam_class == TURNED and {use.edge for use in seam.first} <= own:
            gone += [member for use in seam.second for member in require(pattern, use.edge)]
    lined = [names[edge] for edge in gone if edge in names]
    pieces = {pattern.carriers[edge] for edge in lined}
    if len(pieces) != 1 or len(lined) != len(gone):
        raise StepRefused("lining-no-facing", edge=spoken(free.name))
    lining = pattern.pieces[pieces.pop()]
    in_order = [edge for edge in lining.outline if edge.name in lined]
    index, count = lining.edge_index(in_order[0].name), len(lining.outline)
    run = [lining.outline[(index + step) % count].name for step in range(len(in_order))]
    if run != [edge.name for edge in in_order]:
        raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
    before, after = lining.outline[index - 1], lining.outline[(index + len(run)) % count]
    return _Taken(lining, tuple(run), before, after)


def _end_lengths(facing: Piece, free: Edge) -> tuple[float, float]:
    """How long the ends of the facing are, those after and before its free edge."""
    index, count = facing.edge_index(free.name), len(facing.outline)
    return facing.outline[(index + 1) % count].length, facing.outline[index - 1].length


def _reach(edge: Edge, reach: float, facing: Piece) -> float:
    """How much of an edge the facing takes; refused where it takes all."""
    if not 0.0 < reach < edge.length - 1.0:
        raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
    return reach


def _between(free: Path, start: Point, end: Point, facing: Piece) -> Path:
    """The free edge of the facing drawn between the edges of the lining, a turn of cloth away."""
    moves = start - free.start, end - free.end
    if max(move.norm() for move in moves) > _NEAR:
        raise StepRefused("lining-facing-shaped", facing=spoken(facing.name))
    return carried_edge(free, Carry(*moves, Point(0.0, 0.0)))


def _followed(pattern: Pattern, cut: Piece, taken: _Taken, moved: Mapping[str, str]) -> Pattern:
    """Seams, notches and allowances of the lining after the cut: what lay on the lost edges is gone, what was
    counted from a lost corner is counted from the new one."""
    old = pattern.pieces[cut.name]
    lost = {edge.name: edge.length - cut.edge(edge.name).length for edge in (taken.before, taken.after)}
    gone = set(taken.gone)
    after = pattern.with_pieces(cut)
    groups = {name: group for name, group in after.groups.items() if not set(group.members) & gone}
    groups_gone = after.groups.keys() - groups.keys()
    notches: dict[str, Notch] = {}
    for notch in pattern.notches.values():
        kept = _counted(pattern, old, notch, gone | groups_gone, lost, moved)
        if kept is not None:
            notches[notch.name] = kept
    seams = {
        name: replace(seam, first=_uses(seam.first, moved), second=_uses(seam.second, moved))
        for name, seam in pattern.seams.items()
        if not {use.edge for use in (*seam.first, *seam.second)} & (gone | groups_gone)
    }
    allowances = {name: one for name, one in after.allowances.items() if name not in gone | groups_gone}
    return replace(
        after,
        groups=frozen_map(groups),
        notches=frozen_map(notches),
        seams=frozen_map(seams),
        allowances=frozen_map(allowances),
    )


def _uses(run: tuple[EdgeUse, ...], moved: Mapping[str, str]) -> tuple[EdgeUse, ...]:
    return tuple(replace(use, starts_at=moved.get(use.starts_at, use.starts_at)) for use in run)


def _counted(
    pattern: Pattern,
    lining: Piece,
    notch: Notch,
    gone: set[str],
    lost: Mapping[str, float],
    moved: Mapping[str, str],
) -> Notch | None:
    """The notch counted from where its edge ends now; None where its place was taken."""
    place = notch.place
    if place.edge in gone:
        return None
    members = require(pattern, place.edge)
    shorter = sum(lost.get(member, 0.0) for member in members)
    if shorter == 0.0 or not any(lining.has_edge(member) for member in members):
        return notch
    if place.from_point in moved:
        amount = place.amount - shorter
        return (
            None
            if amount < 0.0
            else replace(notch, place=replace(place, from_point=moved[place.from_point], amount=amount))
        )
    length = sum(pattern.edges[member].length for member in members) - shorter
    return None if place.amount > length else notch
