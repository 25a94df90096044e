"""Runs of several pieces laid together along the seams between them, to be traced as one piece."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Transform
from notchbook.pattern import spoken
from notchbook.style.lines.truing import trued
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.mates import End, Mates, edge_at
from notchbook.style.traced.shortened import shortened

_LOST = 0.01
"""mm that the traced edges may lose where they are drawn as one line across a seam. Own judgment."""


def in_order(runs: Sequence[FacedRun], mates: Mates) -> tuple[FacedRun, ...]:
    """The runs in counter-clockwise order, each ending at the seam where the next begins.

    StepRefused ``facing-order`` where they do not follow each other, ``facing-not-sewn`` where no seam joins
    a run to the next.
    """
    if len({run.forward for run in runs}) > 1:
        raise StepRefused("facing-order", first=spoken(runs[0].faced[0].name))
    for index in range(len(runs) - 1):
        here, there = (index, index + 1) if runs[0].forward else (index + 1, index)
        mate = mates.get(End(here, True))
        if mate is None or mate[0] != End(there, False):
            raise StepRefused(
                "facing-not-sewn",
                first=spoken(edge_at(tuple(runs), End(here, True))),
                second=spoken(edge_at(tuple(runs), End(there, False))),
            )
    return tuple(runs) if runs[0].forward else tuple(reversed(runs))


def laid_together(runs: Sequence[FacedRun], turn: float) -> tuple[FacedRun, ...]:
    """The runs laid seam on seam, the first still; at each seam they overlap by the turn of both, mm.

    The seams are laid together where they meet the traced edges, so that these run on into each other.
    """
    laid = [runs[0]]
    for run in runs[1:]:
        before, here = laid[-1], run.before.path
        seat = before.after.path
        motion = Transform.carrying(
            here.start, here.start + here.tangent_at(0.0), seat.start, seat.start + seat.tangent_at(0.0)
        )
        laid[-1], placed = _trimmed(before, 0.0, turn), _trimmed(run.moved(motion), turn, 0.0)
        overlap = laid[-1].faced[-1].path.end - placed.faced[0].path.start
        placed = placed.moved(Transform.translation(overlap.x, overlap.y))
        paths = trued((laid[-1].faced[-1].path, placed.faced[0].path), _LOST)
        laid[-1] = replace(laid[-1], faced=(*laid[-1].faced[:-1], replace(laid[-1].faced[-1], path=paths[0])))
        laid.append(replace(placed, faced=(replace(placed.faced[0], path=paths[1]), *placed.faced[1:])))
    return tuple(laid)


def _trimmed(run: FacedRun, at_start: float, at_end: float) -> FacedRun:
    """The run without so much at its two ends, mm."""
    faced = list(run.faced)
    for index, trim in ((0, (at_start, 0.0)), (-1, (0.0, at_end))):
        one = faced[index]
        total = one.trim[0] + trim[0], one.trim[1] + trim[1]
        faced[index] = replace(one, path=shortened(one.path, *trim), trim=total)
    return replace(run, faced=tuple(faced))


def at_home(runs: Sequence[FacedRun], *, keeps_last: bool) -> tuple[FacedRun, ...]:
    """The laid runs moved so that the grain is kept at the last end, or at the first."""
    kept = runs[-1].panels[-1] if keeps_last else runs[0].panels[0]
    return tuple(run.moved(kept.motion.inverse()) for run in runs)
