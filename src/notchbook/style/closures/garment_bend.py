"""How the closed waist of a garment bends, for a band that is traced on above it."""

from collections.abc import Sequence

from notchbook.geometry import offset
from notchbook.pattern import Pattern, require
from notchbook.style.closures.half_waist import HalfWaist
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.laid import in_order, laid_together
from notchbook.style.traced.mates import mated_ends
from notchbook.style.traced.panel_run import Asked


def carried_on_girth(pattern: Pattern, halves: Sequence[HalfWaist], depth: float) -> float:
    """How long the line is that runs so far above the whole waist, mm, its darts closed and its panels laid
    together.

    What the traced pieces refuse is refused here too.
    """
    return sum(_above(pattern, half, depth) for half in halves)


def _above(pattern: Pattern, half: HalfWaist, depth: float) -> float:
    asked = [Asked(use.edge, use.starts_at, depth) for use in half.uses]
    runs = faced_runs(pattern, asked)
    laid = laid_together(in_order(runs, mated_ends(pattern, runs)), 0.0) if len(runs) > 1 else runs
    whole = None
    for run in laid:
        for faced in run.faced:
            path = faced.path
            whole = path if whole is None else whole.joined(path.with_start(whole.end))
    assert whole is not None, require(pattern, half.uses[0].edge)
    return offset(whole, -depth).length
