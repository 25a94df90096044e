"""How a facing lay on the panels that it was traced from, found anew from the seams that join it to them."""

from notchbook.errors import StepRefused
from notchbook.pattern import Edge, Pattern, Piece, require, spoken
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.laid import at_home, in_order, laid_together
from notchbook.style.traced.mates import keeps_last, mated_ends
from notchbook.style.traced.panel_run import Asked

_ROUNDS = 3
"""How often panels are laid again, edge to edge down to where the free edge of an all-in-one facing was found
to cross their seam."""


def facing_laid(pattern: Pattern, facing: Piece, free: Edge) -> tuple[FacedRun, ...]:
    """The runs of the facing as they lay, counter-clockwise, the grain as on the facing.

    StepRefused ``lining-no-facing`` where the edge is not the free edge of a facing.
    """
    asked, is_forward = _asked(pattern, facing, free)
    walked = asked if is_forward else asked[::-1]
    runs = _at_home(pattern, faced_runs(pattern, walked))
    if all(one.faces for one in asked):
        return runs
    for _ in range(_ROUNDS):
        lines = [seam.first for run in runs for seam in run.seams]
        depths = [found.at_self for line in lines for found in line.intersections(free.path)]
        runs = _at_home(pattern, faced_runs(pattern, walked, max(depths, default=None)))
    return runs


def _at_home(pattern: Pattern, runs: tuple[FacedRun, ...]) -> tuple[FacedRun, ...]:
    if len(runs) > 1:
        runs = laid_together(in_order(runs, mated_ends(pattern, runs)), 0.0)
    return at_home(runs, keeps_last=keeps_last(pattern, runs))


def _asked(pattern: Pattern, facing: Piece, free: Edge) -> tuple[list[Asked], bool]:
    """What was traced, counter-clockwise, and whether it was walked in that order."""
    first = facing.edge_index(free.name) + 2
    count = len(facing.outline)
    edges = [facing.outline[(first + step) % count].name for step in range(count - 3)]
    sources = {
        use.edge: (seam.second[0], use.starts_at == facing.edge(use.edge).start)
        for seam in pattern.seams.values()
        if seam.seam_class == TURNED_SEAM
        for use in seam.first
        if use.edge in edges
    }
    if not sources:
        raise StepRefused("lining-no-facing", edge=spoken(free.name))
    is_forward = all(forward for _, forward in sources.values())
    asked: list[Asked] = []
    for name in edges:
        if name in sources:
            use = sources[name][0]
            asked.append(Asked(use.edge, use.starts_at, _depth(facing, free)))
        else:
            asked.append(_between(pattern, asked, free, is_forward=is_forward))
    return asked, is_forward


def _between(pattern: Pattern, asked: list[Asked], free: Edge, *, is_forward: bool) -> Asked:
    """The edge after those so far that the facing covers without being sewn to it: the shoulder."""
    if not asked:
        raise StepRefused("lining-no-facing", edge=spoken(free.name))
    last = require(pattern, asked[-1].edge)[-1]
    edge = pattern.piece_of(last).edge_after(last).name
    wholes = [name for name in pattern.groups if edge in expand(pattern, name)[0]]
    whole = max(wholes, key=lambda name: len(expand(pattern, name)[0]), default=edge)
    members = [pattern.edges[name] for name in require(pattern, whole)]
    return Asked(whole, members[0].start if is_forward else members[-1].end, asked[-1].depth, faces=False)


def _depth(facing: Piece, free: Edge) -> float:
    return max(end_lengths(facing, free))


def end_lengths(facing: Piece, free: Edge) -> tuple[float, float]:
    """How long the ends of the facing are, those after and before its free edge."""
    index, count = facing.edge_index(free.name), len(facing.outline)
    return facing.outline[(index + 1) % count].length, facing.outline[index - 1].length
