"""Mates made equal again: what drawing two edges anew changed in their lengths is taken up at a free end."""

from collections.abc import Collection

from notchbook.geometry import Path
from notchbook.pattern import Pattern, Seam, run_of, seam_misfit
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import EdgeUse
from notchbook.pattern.sewn import Directed
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.redrawn import redrawn
from notchbook.units import TOLERANCES

MOST_EVENED = 3.0
"""mm of the length of an edge that are taken up at a free end: more is not arithmetic but another shape,
and is told instead. Own judgment."""


def evened(before: Pattern, after: Pattern, between: Collection[str] | None = None) -> Pattern:
    """``after`` with the second run of each seam as true as it was before, where both end at free edges.

    A free edge is a hem, or one that is sewn to nothing yet, such as the waist of a bodice. The second edge
    is carried on or cut there by what the step changed, and the free edge follows; what is more than 3 mm
    stays. ``between``: only the seams that end so at two of these edges; all where left out.
    """
    for seam in before.seams.values():
        if seam.name in after.seams and (between is None or _ends_at(after, seam, between)):
            after = _evened(before, after, seam)
    return after


def _evened(before: Pattern, after: Pattern, seam: Seam) -> Pattern:
    change = seam_misfit(after, after.seams[seam.name]) - seam_misfit(before, seam)
    if not TOLERANCES.join < abs(change) <= MOST_EVENED or _touches(seam.first, seam.second):
        return after
    last = _at_free_end(after, seam.second)
    if last is None or _at_free_end(after, seam.first) is None:
        return after
    path = _ended(last.path, -change)
    piece = after.piece_of(last.edge.name)
    return after.with_pieces(redrawn(piece, {last.edge.name: _as_drawn(path, last)}))


def _ends_at(pattern: Pattern, seam: Seam, edges: Collection[str]) -> bool:
    """Whether both runs of the seam end with one of these edges."""
    return all(run_of(pattern, uses)[-1].edge.name in edges for uses in (seam.first, seam.second))


def _touches(first: tuple[EdgeUse, ...], second: tuple[EdgeUse, ...]) -> bool:
    """Whether a seam joins an edge to itself, left to right: then both change alike."""
    return bool({use.edge for use in first} & {use.edge for use in second})


def _ended(path: Path, amount: float) -> Path:
    """Carried on or cut; a hair is carried on by moving the end, for a part too short to draw is no line."""
    if 0.0 < amount <= TOLERANCES.seam_walk:
        return path.with_end(path.end + path.tangent_at(path.length) * amount)
    return carried_on(path, amount)


def _as_drawn(path: Path, step: Directed) -> Path:
    return path if step.forward else path.reversed()


def _at_free_end(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> Directed | None:
    """The last edge of a run, where it ends at an edge that is sewn to nothing."""
    last = run_of(pattern, uses)[-1]
    piece = pattern.piece_of(last.edge.name)
    name = last.edge.name
    beside = piece.edge_after(name) if last.forward else piece.edge_before(name)
    return last if beside.kind == "hem" or not is_sewn(pattern, beside.name) else None


def is_sewn(pattern: Pattern, edge: str) -> bool:
    """Whether a seam joins the edge to anything."""
    return any(
        edge in expand(pattern, use.edge)[0]
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
    )
