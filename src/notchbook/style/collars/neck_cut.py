"""The neck of a front that goes on into a button stand, cut at the center where the collar begins."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, child_name, locate, run_length, run_of, spoken
from notchbook.pattern.sewn import Directed
from notchbook.pattern.splitting import EdgeNames, cut_edge
from notchbook.units import TOLERANCES

Splits = dict[str, tuple[str, ...]]


def neck_from(
    pattern: Pattern, uses: tuple[EdgeUse, ...], left_free: float
) -> tuple[Pattern, tuple[EdgeUse, ...], Splits]:
    """The neck without its first ``left_free`` mm: the pattern with the edge cut there, the run that is left
    and the parts of the edge that was cut. StepRefused ``collar-extension-long``.
    """
    first = run_length(pattern, uses[:1])
    if abs(first - left_free) <= TOLERANCES.closure and len(uses) > 1:
        return pattern, uses[1:], {}
    if first <= left_free:
        raise StepRefused(
            "collar-extension-long", edge=spoken(uses[0].edge), extension=left_free, length=first
        )
    found = locate(pattern, Place(uses[0].edge, uses[0].starts_at, left_free))
    walk = run_of(pattern, uses[:1])
    number, step = next((n, one) for n, one in enumerate(walk) if one.edge.name == found.edge.name)
    if found.edge.length - TOLERANCES.closure <= found.distance or found.distance <= TOLERANCES.closure:
        kept = walk[number + 1 :] if (found.distance > TOLERANCES.closure) is step.forward else walk[number:]
        return pattern, (*_uses(kept), *uses[1:]), {}
    free, collared = child_name(found.edge.name, "near"), child_name(found.edge.name, "far")
    point = child_name(collared, "center_end")
    names = (free, collared) if step.forward else (collared, free)
    parts = cut_edge(found.edge, found.distance, EdgeNames(*names, point, point))
    piece = pattern.pieces[found.piece]
    index = piece.edge_index(found.edge.name)
    outline = (*piece.outline[:index], *parts, *piece.outline[index + 1 :])
    after = pattern.with_pieces(replace(piece, outline=outline))
    rest = (EdgeUse(collared, point), *_uses(walk[number + 1 :]), *uses[1:])
    return after, rest, {found.edge.name: names}


def _uses(walk: tuple[Directed, ...]) -> tuple[EdgeUse, ...]:
    """Each edge of a walk as a use of its own."""
    return tuple(EdgeUse(step.edge.name, step.start) for step in walk)
