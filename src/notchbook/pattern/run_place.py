"""A place so far along a run of edges."""

from collections.abc import Sequence

from notchbook.pattern.pattern import Pattern
from notchbook.pattern.place import Place
from notchbook.pattern.seam import EdgeUse
from notchbook.pattern.sewn import run_length
from notchbook.units import TOLERANCES


def place_on(pattern: Pattern, uses: Sequence[EdgeUse], distance: float) -> Place:
    """The place ``distance`` mm along the run as sewn, on the edge where it lies; at a joint the earlier,
    beyond the run its end."""
    rest = distance
    for use in uses[:-1]:
        length = run_length(pattern, (use,))
        if rest <= length + TOLERANCES.sew_length:
            return Place(use.edge, use.starts_at, min(rest, length))
        rest -= length
    last = uses[-1]
    return Place(last.edge, last.starts_at, min(rest, run_length(pattern, (last,))))
