"""What a spread edge has to say: what it is sewn to, and what truing did to its length."""

from collections.abc import Iterator, Mapping

from notchbook.pattern import Finding, Measured, Pattern, Severity, spoken, worded
from notchbook.pattern.seam import Seam
from notchbook.pattern.sewn import run_of
from notchbook.style.fullness.spread import CutEdge, Spread
from notchbook.units import TOLERANCES


def opened_notes(
    before: Pattern, check: str, made: Spread, free: Mapping[str, CutEdge]
) -> tuple[Finding, ...]:
    """For each edge that opened and is not taken up again: the seams that no longer agree.

    For each edge that stayed shut: by how much truing changed its length, where that can be seen.
    """
    found: list[Finding] = []
    for name, met in free.items():
        now = made.piece.edge(name).length
        change = now - met.old.length
        for seam in _seams_with(before, name):
            if abs(change) <= TOLERANCES.closure:
                continue
            opened = met.opened > TOLERANCES.seam_walk
            found.append(
                worded(
                    check,
                    "fullness-not-taken-up" if opened else "fullness-edge-trued",
                    Severity.LOOK if opened else Severity.NOTE,
                    Measured(now, met.old.length),
                    piece=made.piece.name,
                    where=name,
                    names=(name, seam.name),
                    edge=spoken(name),
                    seam=spoken(seam.name),
                    change=change,
                )
            )
    return tuple(found)


def _seams_with(pattern: Pattern, edge: str) -> Iterator[Seam]:
    for seam in pattern.seams.values():
        steps = (*run_of(pattern, seam.first), *run_of(pattern, seam.second))
        if any(step.edge.name == edge for step in steps):
            yield seam
