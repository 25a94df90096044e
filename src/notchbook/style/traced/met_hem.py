"""A facing that reaches the hem where the lining is shorter: the lining ends at its own hem, and the free
edge of the facing hangs below it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Edge, Pattern, Piece, child_name, part_name, spoken
from notchbook.style.traced.panels_faced import PanelFaced

_MOVED = 4.0
"""mm by which the hem of a lining lies at least elsewhere than that which was faced, more than any turn of
cloth. Own judgment."""


@dataclass(frozen=True, slots=True)
class Hanging:
    """How much of the free edge of a facing hangs below the lining, mm: at its end and at its start."""

    at_end: float = 0.0
    at_start: float = 0.0


@dataclass(frozen=True, slots=True)
class FreeEdge:
    """The pattern with the free edge parted where it hangs, the part that the lining is sewn to, and what the
    edge was parted into."""

    pattern: Pattern
    sewn: Edge
    splits: Mapping[str, tuple[str, ...]]


def met_hem(
    lining: Piece, names: Mapping[str, str], panel: PanelFaced, facing: str
) -> tuple[PanelFaced, Hanging]:
    """The panel with the free edge ended at the hem that its lining has now, and how much hangs below.

    StepRefused ``lining-facing-shaped`` where the free edge does not meet the hem.
    """
    free, reach, hangs = list(panel.free), list(panel.reach), [0.0, 0.0]
    for ahead, index in ((False, 0), (True, -1)):
        own = lining.edge(names[panel.ends[ahead]])
        path = free[index]
        if own.kind != "hem" or own.path.nearest(path.end if ahead else path.start).gap <= _MOVED:
            continue
        crossings = own.path.intersections(path)
        if not crossings:
            raise StepRefused("lining-facing-shaped", facing=spoken(facing))
        crossing = crossings[0]
        above, below = path.split_at(crossing.at_other)[:: 1 if ahead else -1]
        free[index], hangs[ahead] = above, below.length
        reach[ahead] = crossing.at_self if ahead else own.length - crossing.at_self
    return replace(panel, free=tuple(free), reach=(reach[0], reach[1])), Hanging(*hangs)


def free_edge_parted(pattern: Pattern, free: Edge, hanging: Hanging, owner: str) -> FreeEdge:
    """The free edge parted where the lining ends, new points named under ``owner``; left whole where nothing
    hangs."""
    if not hanging.at_start and not hanging.at_end:
        return FreeEdge(pattern, free, {})
    first, rest = free.path.split_at(hanging.at_start)
    middle, last = rest.split_at(rest.length - hanging.at_end)
    facing = pattern.piece_of(free.name)
    start = part_name(owner, "facing_hangs_above") if hanging.at_start else free.start
    end = part_name(owner, "facing_hangs") if hanging.at_end else free.end
    sewn = Edge(child_name(free.name, "sewn"), middle, start, end, free.kind)
    parts = [sewn]
    if hanging.at_start:
        parts.insert(0, Edge(child_name(free.name, "hanging_above"), first, free.start, start, free.kind))
    if hanging.at_end:
        parts.append(Edge(child_name(free.name, "hanging"), last, end, free.end, free.kind))
    index = facing.edge_index(free.name)
    parted = replace(facing, outline=(*facing.outline[:index], *parts, *facing.outline[index + 1 :]))
    loose = {part.name: Allowance("neatened_edge") for part in parts if part is not sewn}
    after = pattern.with_pieces(parted).with_allowances(loose)
    return FreeEdge(after, sewn, {free.name: tuple(part.name for part in parts)})
