"""A run of edges made longer or shorter at one of its ends; the edge beside it follows there."""

from collections.abc import Iterable
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import Edge, Pattern, spoken
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.kept_notches import kept_notches
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.truing.carried_run import carried_run
from notchbook.units import TOLERANCES

RunEnd = Literal["start", "end"]

_STRAIGHT = frozenset({"fold", "leg"})
"""Edges that must stay where they lie: a fold would leave the center, a leg its mate."""


def changed_at_end(pattern: Pattern, run: Iterable[Directed], end: RunEnd, amount: float) -> Pattern:
    """The pattern with the run longer by ``amount`` mm at that end, or shorter with a minus.

    StepRefused: ``truing-at-fold`` where the edge beside it is a fold or a dart leg, ``truing-too-short``
    where nothing of the edge would be left.
    """
    steps = tuple(run)
    step = steps[-1] if end == "end" else steps[0]
    at_edge_end = step.forward == (end == "end")
    edge = step.edge
    beside = _beside(pattern, edge, at_end=at_edge_end)
    if beside.kind in _STRAIGHT:
        raise StepRefused("truing-at-fold", edge=spoken(edge.name), beside=spoken(beside.name))
    if edge.length + amount <= TOLERANCES.seam_walk:
        raise StepRefused("truing-too-short", edge=spoken(edge.name), length=edge.length, amount=-amount)
    path = edge.path if at_edge_end else edge.path.reversed()
    drawn = carried_on(path, amount)
    piece = pattern.piece_of(edge.name)
    paths = {edge.name: drawn if at_edge_end else drawn.reversed()}
    paths |= carried_run(piece, beside, drawn.end - path.end, at_start=at_edge_end)
    after = pattern.with_pieces(redrawn(piece, paths))
    corner = path.end
    return kept_notches(
        pattern,
        after,
        lambda name, point: name == piece.name and point.distance_to(corner) <= TOLERANCES.closure,
    ).pattern


def _beside(pattern: Pattern, edge: Edge, *, at_end: bool) -> Edge:
    piece = pattern.piece_of(edge.name)
    index = piece.edge_index(edge.name)
    return piece.outline[(index + 1) % len(piece.outline)] if at_end else piece.outline[index - 1]
