"""The run of edges that a binding goes along: a ring, half a ring, from one center on, or open."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, run_length, spoken
from notchbook.pattern.run_place import place_on
from notchbook.style._band_openings import at_center, ends_of, meet

Closes = Literal["ring", "half_ring", "from_center", "open"]
"""``ring``: round a limb; ``half_ring``: from center to center of the body; ``from_center``: from the center
where the cloth goes on to the edge of an opening; ``open``: between two free ends."""


@dataclass(frozen=True, slots=True)
class BoundRun:
    """Edges in order, their length as sewn in mm, and how they close; a run that reaches one center begins
    there."""

    pattern: Pattern
    uses: tuple[EdgeUse, ...]
    length: float
    closes: Closes

    @property
    def is_half(self) -> bool:
        """Whether the wearer's other side gives the rest."""
        return self.closes in ("half_ring", "from_center")

    def place(self, along: float) -> Place:
        """The place so far along the run, on the edge where it lies."""
        return place_on(self.pattern, self.uses, along)


def bound_run(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> BoundRun:
    """The run of these edges; StepRefused ``binding-broken`` where one does not go on where the one before
    ends, NameLost where an edge is gone."""
    ends = [ends_of(pattern, use) for use in uses]
    for (_, end), (start, _), use in zip(ends, ends[1:], uses[1:], strict=False):
        if not meet(pattern, end, start):
            raise StepRefused("binding-broken", edge=spoken(use.edge), point=spoken(start))
    first, last = ends[0][0], ends[-1][1]
    central = [at_center(pattern, point, uses) for point in (first, last)]
    length = run_length(pattern, uses)
    if all(central):
        return BoundRun(pattern, uses, length, "half_ring")
    if any(central):
        turned = uses if central[0] else _reversed(uses, ends)
        return BoundRun(pattern, turned, length, "from_center")
    is_ring = len(uses) > 1 and meet(pattern, last, first)
    return BoundRun(pattern, uses, length, "ring" if is_ring or first == last else "open")


def _reversed(uses: tuple[EdgeUse, ...], ends: list[tuple[str, str]]) -> tuple[EdgeUse, ...]:
    """The same edges walked from the other end."""
    return tuple(EdgeUse(use.edge, end) for use, (_, end) in zip(reversed(uses), reversed(ends), strict=True))
