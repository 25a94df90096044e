"""Seams that lose a part of an edge: it opens now, and only the rest of it is sewn."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.pattern import EdgeUse, Pattern, Seam, directed


@dataclass(frozen=True, slots=True)
class StillSewn:
    """What stays sewn of an edge: the part, the end of the whole that is gone, and the new end there."""

    part: str
    lost_end: str
    new_end: str


def still_sewn(pattern: Pattern, seam: Seam, cut: Mapping[str, StillSewn]) -> Seam:
    """The seam with these edges shorter. ``pattern`` is that before they were divided."""

    def uses(run: tuple[EdgeUse, ...]) -> tuple[EdgeUse, ...]:
        found: list[EdgeUse] = []
        for use in run:
            walked = directed(pattern, use.edge, use.starts_at)
            if not cut.keys() & {step.edge.name for step in walked}:
                found.append(use)
                continue
            for step in walked:
                kept = cut.get(step.edge.name)
                if kept is None:
                    found.append(EdgeUse(step.edge.name, step.start, use.side))
                else:
                    start = kept.new_end if step.start == kept.lost_end else step.start
                    found.append(EdgeUse(kept.part, start, use.side))
        return tuple(found)

    return replace(seam, first=uses(seam.first), second=uses(seam.second))
