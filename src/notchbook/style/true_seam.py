"""True a seam: the side that is not the master is made as long as the master asks, at one end of the seam.

The edge is carried on along its own direction there, or cut back, and the edge beside it is drawn to the new
end over its whole run, through its darts as they lie closed, at the angle that it had (a long straight hem,
which would wave, within the two degrees that no corner shows). By how much follows
from what the two sides measure, so that every size is trued by its own misfit; declared ease stays.
"""

from typing import Literal

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Finding,
    Measured,
    Pattern,
    Seam,
    Severity,
    run_of,
    spoken,
    walk_seam,
    worded,
)
from notchbook.pattern.resolve import expand
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import SeamName
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.truing.at_one_end import RunEnd, changed_at_end
from notchbook.style.truing.found import found_seam
from notchbook.units import TOLERANCES

_STEP = "true-seam"

SeamRun = Literal["first", "second"]


class TrueSeamParameters(StepParameters):
    """The ``seam``, which of its sides is the ``master``, and the ``end`` at which the other is changed."""

    seam: SeamName
    """The seam whose two sides are to agree."""
    master: SeamRun = "first"
    """The side that stays; the other becomes as long as it, declared ease apart."""
    end: RunEnd = "end"
    """The end of the seam at which the other side is made longer or shorter."""
    most: AmountText = "10 mm"
    """What is more than this is no truing: it is refused, for an earlier step went wrong."""


def run(pattern: Pattern, context: StepContext, parameters: TrueSeamParameters) -> Change:
    """Make the other side as long as its master asks; nothing where it is so already."""
    seam = found_seam(pattern, parameters.seam)
    _require_two(pattern, seam)
    misfit = walk_seam(pattern, seam).misfit
    if abs(misfit) <= TOLERANCES.join:
        return Change(pattern)
    most = context.positive(parameters.most, "most")
    if abs(misfit) > most:
        raise StepRefused("true-seam-too-far", seam=spoken(seam.name), misfit=abs(misfit), most=most)
    uses, amount = (seam.second, -misfit) if parameters.master == "first" else (seam.first, misfit)
    after = changed_at_end(pattern, run_of(pattern, uses), parameters.end, amount)
    return Change(
        after,
        asked={use.edge: amount for use in uses[:1]},
        notes=(_told(seam, parameters, amount), *seams_put_out(pattern, after, _STEP)),
    )


def _require_two(pattern: Pattern, seam: Seam) -> None:
    """A seam of an edge to its own reflection has no side that could be changed alone."""
    first, second = (
        {member for use in uses for member in expand(pattern, use.edge)[0]}
        for uses in (seam.first, seam.second)
    )
    if first & second or not second:
        raise StepRefused("true-seam-own-edge", seam=spoken(seam.name))


def _told(seam: Seam, parameters: TrueSeamParameters, amount: float) -> Finding:
    uses = seam.second if parameters.master == "first" else seam.first
    return worded(
        _STEP,
        "seam-trued",
        Severity.NOTE,
        Measured(abs(amount)),
        where=seam.name,
        names=tuple(use.edge for use in uses),
        seam=spoken(seam.name),
        edge=", ".join(spoken(use.edge) for use in uses),
        amount=abs(amount),
        way="longer" if amount > 0.0 else "shorter",
        end="its beginning" if parameters.end == "start" else "its end",
    )


STEP = StepDefinition(
    operation="true_seam",
    version=2,
    kind="style",
    title="True a seam",
    sentence="{seam}: {master} is the master, the other changed at the {end}",
    parameters=TrueSeamParameters,
    run=run,
    upcasters={1: dict},
)
