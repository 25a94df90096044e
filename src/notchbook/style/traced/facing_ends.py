"""Where one piece of a lining ends at a facing and the piece beside it does not: the end of the facing is
sewn in its place, as the shoulder of a front facing to the lining of the back."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from notchbook.pattern import EdgeUse, Pattern, Seam, require, run_of


@dataclass(frozen=True, slots=True)
class FacingEnd:
    """The ``corner`` of the lining at an end of the facing, the end edge of the facing there, and its
    corners: ``outer`` at the garment's edge, ``inner`` at the free edge."""

    corner: str
    edge: str
    outer: str
    inner: str


def with_facing_ends(pattern: Pattern, seams: Sequence[str], ends: Sequence[FacingEnd]) -> Pattern:
    """The pattern with the ends of facings in those of the named seams that would else be too short there."""
    sewn = {
        name
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for name in require(pattern, use.edge)
    }
    loose = {end.corner: end for end in ends if end.edge not in sewn}
    changed = [_sewn(pattern, pattern.seams[name], loose) for name in seams if name in pattern.seams]
    return pattern.with_seams(*changed)


def _sewn(pattern: Pattern, seam: Seam, ends: dict[str, FacingEnd]) -> Seam:
    runs = [seam.first, seam.second]
    for at_start in (True, False):
        found = [ends.get(_corner(pattern, run, at_start=at_start)) for run in runs]
        for index, end in enumerate(found):
            if end is None or found[1 - index] is not None:
                continue
            use = EdgeUse(end.edge, end.outer if at_start else end.inner)
            runs[index] = (use, *runs[index]) if at_start else (*runs[index], use)
    return replace(seam, first=runs[0], second=runs[1])


def _corner(pattern: Pattern, run: tuple[EdgeUse, ...], *, at_start: bool) -> str:
    """The point at which a run begins or ends."""
    if at_start:
        return run[0].starts_at
    last = run_of(pattern, run)[-1]
    return last.edge.end if last.forward else last.edge.start
