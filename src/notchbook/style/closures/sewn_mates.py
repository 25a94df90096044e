"""Where a seam opens from one of its ends: its edge there, and the edge that is sewn to it."""

from collections.abc import Sequence

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, directed, require, spoken
from notchbook.pattern.sewn import Directed, run_length
from notchbook.style.closures.not_on_fold import require_not_on_fold
from notchbook.units import TOLERANCES

End = tuple[str, str]
"""An edge or group, and the end of it from which it opens."""


def opened_ends(pattern: Pattern, edge: str, end: str) -> tuple[End, ...]:
    """The edge with its end, then what meets it there across each of its seams.

    A part of an edge is taken for the whole that is sewn, so that both sides of the seam are treated alike.
    Across a seam to its own reflection there is nothing else. StepRefused ``opening-inside-seam`` where the
    end lies inside a seam, at no joint of its other side; ``opening-on-fold``.
    """
    require_not_on_fold(pattern, edge)
    begins = directed(pattern, edge, end)[0].edge.name
    own: End = (edge, end)
    mates: list[End] = []
    for seam in pattern.seams.values():
        for run, other in ((seam.first, seam.second), (seam.second, seam.first)):
            index = _index_of(pattern, run, begins)
            if index is None or _members(pattern, run) == _members(pattern, other):
                continue
            own = _whole(pattern, run[index], own)
            mate = _mate(pattern, run, other, index, end)
            if mate is None:
                raise StepRefused(
                    "opening-inside-seam", edge=spoken(edge), point=spoken(end), seam=spoken(seam.name)
                )
            mates.append(mate)
    return tuple(dict.fromkeys((own, *mates)))


def _index_of(pattern: Pattern, run: Sequence[EdgeUse], edge: str) -> int | None:
    """Which edge or group of the run has this edge."""
    return next((index for index, use in enumerate(run) if edge in require(pattern, use.edge)), None)


def _members(pattern: Pattern, run: Sequence[EdgeUse]) -> frozenset[str]:
    return frozenset(member for use in run for member in require(pattern, use.edge))


def _whole(pattern: Pattern, use: EdgeUse, own: End) -> End:
    """The whole of which the edge is a part, where they have this end in common."""
    edge, end = own
    is_part = set(require(pattern, edge)) < set(require(pattern, use.edge))
    return (use.edge, end) if is_part and end in _ends(pattern, use) else own


def _ends(pattern: Pattern, use: EdgeUse) -> tuple[str, str]:
    """The two ends of an edge or group, the one first from which a seam is walked."""
    return use.starts_at, _far(directed(pattern, use.edge, use.starts_at)[-1])


def _far(step: Directed) -> str:
    return step.edge.end if step.forward else step.edge.start


def _mate(
    pattern: Pattern, run: tuple[EdgeUse, ...], other: tuple[EdgeUse, ...], index: int, end: str
) -> End | None:
    """The edge across the seam that has an end where this edge of the run has its own."""
    first, last = _ends(pattern, run[index])
    if end not in (first, last):
        return None
    from_last = end == last
    if index == (len(run) - 1 if from_last else 0):  # the end of the whole seam, however much is eased
        use = other[-1 if from_last else 0]
        return use.edge, _ends(pattern, use)[1 if from_last else 0]
    travelled = run_length(pattern, run[: index + 1 if from_last else index])
    for place, use in enumerate(other):
        reached = run_length(pattern, other[: place + 1 if from_last else place])
        if abs(reached - travelled) <= TOLERANCES.closure:
            return use.edge, _ends(pattern, use)[1 if from_last else 0]
    return None
