"""Bindings that meet: the first is folded over and stitched down before the second is sewn over its end."""

from collections.abc import Mapping

from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.task import key_of
from notchbook.pattern import Operation, Pattern
from notchbook.pattern.names import last_word

_FOLDED = "folded"
"""How the line of a binding is called that turns its strip over the raw edge."""


def bound_after(pattern: Pattern) -> Mapping[str, frozenset[str]]:
    """For each seam of a binding, by its key, the lines of folding that come before it: those of the bindings
    that are told before it and end where it does (common practice, no source)."""
    bindings = [one for one in pattern.operations.values() if last_word(one.name) == _FOLDED]
    found: dict[str, frozenset[str]] = {}
    for index, second in enumerate(bindings):
        met = {first.name for first in bindings[:index] if _ends(pattern, first) & _ends(pattern, second)}
        if met:
            found |= {key_of(name): frozenset(met) for name in second.after}
    return found


def _ends(pattern: Pattern, folded: Operation) -> frozenset[str]:
    """The points of the garment at which the seams of a binding begin and end."""
    seams = [pattern.seams[name] for name in folded.after if name in pattern.seams]
    runs = [run for run in (steps(pattern, seam.second) for seam in seams) if run]
    ends = ((run[0].start, run[-1].edge.end if run[-1].forward else run[-1].edge.start) for run in runs)
    return frozenset(point for pair in ends for point in pair)
