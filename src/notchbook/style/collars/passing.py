"""Whether the head gets through a neck that a collar is sewn to, where nothing opens it."""

from collections.abc import Iterator

from notchbook.pattern import Finding, Measured, Pattern, Severity, run_of, worded
from notchbook.recipe import StepContext
from notchbook.style._band_openings import at_center, ends_of
from notchbook.style.collars.neck import Neck


def head_notes(context: StepContext, neck: Neck) -> Iterator[Finding]:
    """A neck closed in front and behind that is smaller than the head; nothing where the head was not
    measured, where the cloth stretches, or where a zip opens the garment."""
    if not _is_closed(neck) or _has_zip(neck.pattern):
        return
    pieces = {neck.pattern.carriers[step.edge.name] for step in run_of(neck.pattern, neck.uses)}
    if any(neck.pattern.pieces[name].stretches for name in pieces):
        return
    head = context.find("head_girth", "both")
    girth = 2.0 * neck.length
    if head is None or girth >= head:
        return
    yield worded(
        "collar",
        "collar-under-head",
        Severity.LOOK,
        Measured(girth, head),
        piece=sorted(pieces)[0],
        where=neck.uses[0].edge,
        neck=girth,
        head=head,
    )


def _is_closed(neck: Neck) -> bool:
    """Whether the cloth goes on, or a seam closes it, at both centers."""
    ends = ends_of(neck.pattern, neck.uses[0])[0], ends_of(neck.pattern, neck.uses[-1])[1]
    return all(at_center(neck.pattern, point, neck.uses) for point in ends)


def _has_zip(pattern: Pattern) -> bool:
    return any("zip" in notch.purpose for notch in pattern.notches.values()) or any(
        "zip" in allowance.allowance_class for allowance in pattern.allowances.values()
    )
