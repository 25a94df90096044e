"""The corners of a neck: where its edges meet on the way from the front end to the center back."""

from dataclasses import dataclass

from notchbook.pattern import EdgeUse, Pattern, run_length, run_of
from notchbook.pattern.sewn import Directed

SAME_PLACE = 0.5
"""mm within which a place on the neck is taken for its corner: finer than anybody cuts. Own judgment."""

Parted = tuple[tuple[EdgeUse, ...], tuple[EdgeUse, ...]]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the neck: how far it lies from the front end as sewn, mm, what it is called on the pieces
    that meet there, and the number of the edge of the walk that begins there."""

    along: float
    names: frozenset[str]
    index: int


def corners_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[Corner, ...]:
    """The front end, and every corner at which another edge begins; the center back is none of them."""
    found: list[Corner] = []
    along, reached = 0.0, ""
    for index, step in enumerate(run_of(pattern, uses)):
        found.append(Corner(along, frozenset({step.start, reached} - {""}), index))
        along += run_length(pattern, (EdgeUse(step.edge.name, step.start),))
        reached = end_of(step)
    return tuple(found)


def end_of(step: Directed) -> str:
    """The name of the point where the walk of an edge ends."""
    return step.edge.end if step.forward else step.edge.start


def corner_near(corners: tuple[Corner, ...], along: float) -> Corner | None:
    """The corner at a place so far along, mm; None where none lies there."""
    nearest = min(corners, key=lambda one: abs(one.along - along))
    return nearest if abs(nearest.along - along) <= SAME_PLACE else None


def parted_at(pattern: Pattern, uses: tuple[EdgeUse, ...], index: int) -> Parted:
    """The run before and behind an edge of the walk; what was named as a whole stays so where it can."""
    before = 0
    for number, use in enumerate(uses):
        if before == index:
            return uses[:number], uses[number:]
        before += len(run_of(pattern, (use,)))
    walk = run_of(pattern, uses)
    return each_edge(walk[:index]), each_edge(walk[index:])


def each_edge(walk: tuple[Directed, ...]) -> tuple[EdgeUse, ...]:
    """Each edge of a walk as a use of its own."""
    return tuple(EdgeUse(step.edge.name, step.start) for step in walk)
