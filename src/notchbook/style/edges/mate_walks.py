"""Seams that a step put out of true: said at once, with both edges and how much."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Measured, Pattern, Seam, Severity, run_of, spoken, walk_seam, worded
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
        old, new = walk_seam(before, before.seams[seam.name]), walk_seam(after, seam)
        if abs(new.misfit) > max(abs(old.misfit), TOLERANCES.seam_walk):
            yield worded(
                step,
                "seam-put-out",
                Severity.LOOK,
                Measured(new.second, new.first + new.ease),
                names=(seam.name, *_edges(seam)),
                seam=spoken(seam.name),
                first=", ".join(spoken(use.edge) for use in seam.first),
                second=", ".join(spoken(use.edge) for use in seam.second),
                misfit=abs(new.misfit),
                way="longer" if new.misfit > 0.0 else "shorter",
            )


def _seen(pattern: Pattern, seam: Seam) -> tuple[object, ...]:
    """All that a walk along a seam looks at: where none of it changed, it walks as it did."""
    notches = [notch for notch in pattern.notches.values() if notch.serves(seam.name)]
    return seam, run_of(pattern, seam.first), run_of(pattern, seam.second), notches, pattern.drawn_in


def _edges(seam: Seam) -> tuple[str, ...]:
    return tuple(dict.fromkeys(use.edge for use in (*seam.first, *seam.second)))
