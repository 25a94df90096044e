"""Seams that a step put out of true: said at once, with both edges and how much."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Measured, Pattern, Seam, Severity, run_of, seam_misfit, spoken, worded
from notchbook.pattern.sewn import run_length
from notchbook.units import TOLERANCES


def seams_put_out(before: Pattern, after: Pattern, step: str) -> tuple[Finding, ...]:
    """A finding for each seam that walked true before the step and walks less true after it."""
    return tuple(_put_out(before, after, step))


def _put_out(before: Pattern, after: Pattern, step: str) -> Iterator[Finding]:
    for seam in after.seams.values():
        if seam.name not in before.seams:
            continue
        if _seen(before, before.seams[seam.name]) == _seen(after, seam):
            continue
        old, new = seam_misfit(before, before.seams[seam.name]), seam_misfit(after, seam)
        if abs(new) > max(abs(old), TOLERANCES.seam_walk):
            yield worded(
                step,
                "seam-put-out",
                Severity.LOOK,
                Measured(run_length(after, seam.second), run_length(after, seam.first) + seam.ease),
                names=(seam.name, *_edges(seam)),
                seam=spoken(seam.name),
                first=", ".join(spoken(use.edge) for use in seam.first),
                second=", ".join(spoken(use.edge) for use in seam.second),
                misfit=abs(new),
                way="longer" if new > 0.0 else "shorter",
            )


def _seen(pattern: Pattern, seam: Seam) -> tuple[object, ...]:
    """All that the lengths of a seam rest on: where none of it changed, they are what they were."""
    return seam, run_of(pattern, seam.first), run_of(pattern, seam.second), pattern.drawn_in


def _edges(seam: Seam) -> tuple[str, ...]:
    return tuple(dict.fromkeys(use.edge for use in (*seam.first, *seam.second)))
