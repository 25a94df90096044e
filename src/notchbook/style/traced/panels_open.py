"""What the step says where panels that were laid together for a facing do not lie edge to edge within it."""

from collections.abc import Sequence

from notchbook.pattern import Finding, Measured, Severity, spoken, worded
from notchbook.style.traced.faced_run import FacedRun

_OPEN = 3.0
"""mm that panels may lie open or over within a facing before it is said: an eighth of an inch. Own
judgment."""


def panels_open(step: str, runs: Sequence[FacedRun], depth: float) -> tuple[Finding, ...]:
    """A finding for each seam along which the panels lie open or over by more than that, down to the depth
    (mm) of the facing, which is drawn in one over it."""
    found: list[Finding] = []
    for run in runs:
        for seam in run.seams:
            apart = seam.apart(depth)
            if apart > _OPEN:
                edge = run.faced[0].name
                found.append(
                    worded(
                        step,
                        "facing-panels-open",
                        Severity.LOOK,
                        Measured(apart, 0.0),
                        names=(edge,),
                        edge=spoken(edge),
                        seam=spoken(seam.name),
                        apart=apart,
                    )
                )
    return tuple(found)
