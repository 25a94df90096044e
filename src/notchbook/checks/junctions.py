"""Where the edges beside a seam meet across it, and whether they should run on."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.checks.centers import are_reflections
from notchbook.checks.corners import Corner, End, corner
from notchbook.checks.walks import WalkedSeam, walked_seams
from notchbook.pattern import Pattern
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.sewn import Directed


@dataclass(frozen=True, slots=True)
class Junction:
    """One end of a seam: the corners beside it on its two sides, intakes closed."""

    walked: WalkedSeam
    at_start: bool
    first: Corner
    second: Corner

    @property
    def degrees(self) -> float:
        """The angle that the two neighbor edges make across the seam; 180 where they run on."""
        return self.first.degrees + self.second.degrees


def junctions(pattern: Pattern) -> Iterator[Junction]:
    """Every end of a seam across which its neighbor edges become one line.

    Left out are ends where the cloth goes on, edges sewn to their own reflection, a seam that turns a corner,
    as at a vent, a seam that is turned, as at a facing: its two layers come to lie on each other, and those
    of a gusset.
    """
    sewn = _sewn_together(pattern)
    for walked in walked_seams(pattern):
        if walked.seam.seam_class == TURNED_SEAM or _sets_in(pattern, walked):
            continue
        for at_start in (True, False):
            first, second = (_corner(pattern, walked, side, at_start) for side in (0, 1))
            if first is None or second is None or first.is_open or second.is_open:
                continue
            if frozenset((first.neighbor.name, second.neighbor.name)) not in sewn:
                yield Junction(walked, at_start, first, second)


def _sets_in(pattern: Pattern, walked: WalkedSeam) -> bool:
    """Whether a gusset is sewn in: three seams end at each of its corners, and no line runs on over them."""
    steps = (step for run in walked.runs for step in run)
    return any("gusset" in last_word(pattern.carriers[step.edge.name]).split("_") for step in steps)


def _corner(pattern: Pattern, walked: WalkedSeam, side: int, at_start: bool) -> Corner | None:
    """The corner where a run begins or ends; None where an edge is sewn to its own reflection."""
    run, other = walked.runs[side], walked.runs[1 - side]
    step, mate = (run[0], other[0]) if at_start else (run[-1], other[-1])
    if are_reflections(step.edge.name, mate.edge.name):
        return None
    return corner(pattern.piece_of(step.edge.name), step.edge, _end(step, at_start))


def _end(step: Directed, at_start: bool) -> End:
    return "start" if step.forward == at_start else "end"


def _sewn_together(pattern: Pattern) -> frozenset[frozenset[str]]:
    """Pairs of edges of one seam: where these are the neighbors, the seam turns a corner, as at a vent."""
    return frozenset(
        frozenset((one.edge.name, two.edge.name))
        for walked in walked_seams(pattern)
        for one in walked.runs[0]
        for two in walked.runs[1]
    )
