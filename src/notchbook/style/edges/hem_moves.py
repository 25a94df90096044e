"""A hem that moves square to itself."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Point, offset
from notchbook.pattern import Edge, Piece, spoken
from notchbook.style.edges.carried import carried_on
from notchbook.units import TOLERANCES


def moved_hem(piece: Piece, name: str, amount: float) -> Piece:
    """The piece with the named hem moved outward square to itself by the amount, mm (negative: inward).

    StepRefused ``hem-beyond-edge``, ``hem-not-square``.
    """
    if amount == 0.0:
        return piece
    index = piece.edge_index(name)
    outline = list(piece.outline)
    following = (index + 1) % len(outline)
    hem = offset(outline[index].path, -amount)
    before = _ended(outline[index - 1], hem.start, amount)
    after = _ended(outline[following].reversed(), hem.end, amount).reversed()
    outline[index - 1] = before
    outline[following] = after
    outline[index] = replace(outline[index], path=hem.with_start(before.path.end).with_end(after.path.start))
    return replace(piece, outline=tuple(outline))


def _ended(edge: Edge, goal: Point, amount: float) -> Edge:
    """The edge carried on, or cut back, to end where the moved hem begins."""
    if -amount >= edge.length - TOLERANCES.closure:
        raise StepRefused("hem-beyond-edge", edge=spoken(edge.name), length=edge.length, amount=-amount)
    path = carried_on(edge.path, 2.0 * amount) if amount > 0.0 else edge.path
    nearest = path.nearest(goal)
    if nearest.gap > TOLERANCES.seam_walk:
        raise StepRefused("hem-not-square", edge=spoken(edge.name), gap=nearest.gap)
    kept = path.between(0.0, min(nearest.distance_along, path.length))
    return replace(edge, path=kept)
