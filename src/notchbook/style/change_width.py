"""Make a garment wider or narrower at a level, the amount shared over darts and seams, running to nothing.

Each edge moves square to the grain: by its whole share at one place, by nothing from the named places on. The
usual share is the same at every seam and dart that is named: small amounts are divided over all seams.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Finding, Measured, Pattern, Severity, require, require_one, sewn_length, worded
from notchbook.pattern.sewn import place_distance
from notchbook.recipe import (
    AmountText,
    Change,
    IntakeName,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.edges.evened import evened
from notchbook.style.edges.figures import MOST_AT_ONE_SEAM
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.swelling import Swelling
from notchbook.style.edges.widened import Widened, WidenedEdge, narrowed_dart, widened_edge
from notchbook.units import TOLERANCES

_WHOLE = 1.0

_AS_WHOLE = 1e-3
"""Shares that come to one within this are the whole: a tenth of a percent is dropped in rounding by hand."""

Share = Annotated[float, Field(ge=0.0, le=_WHOLE)]


class WidenedSeam(StepParameters):
    """An edge that moves: by its whole share at ``level``, by nothing from each place of ``nothing_at``
    on."""

    level: PlaceParameters
    """Where the edge moves by its whole share: an edge, the end to count from, how far."""
    nothing_at: tuple[PlaceParameters, ...] = ()
    """Where it runs to nothing, at one or both sides of the level; without one it moves on to the end."""
    share: Share | None = None
    """How much of the amount this edge takes, as a share, 0 to 1; empty shares evenly."""


class NarrowedDart(StepParameters):
    """A dart that takes its part: made narrower where the garment is made wider."""

    intake: IntakeName
    """The dart."""
    share: Share | None = None
    """How much of the amount this dart takes, as a share, 0 to 1; empty shares evenly."""


class WidthParameters(StepParameters):
    """The ``amount`` on the whole girth, and the ``seams`` and ``darts`` that share it."""

    amount: AmountText
    """How much wider the whole girth becomes, both sides together; with a minus narrower."""
    seams: tuple[WidenedSeam, ...] = ()
    """Every edge that moves, both edges of a seam."""
    darts: tuple[NarrowedDart, ...] = ()
    """Darts that take a part, before the seams do."""


def settle(context: StepContext, parameters: WidthParameters) -> WidthParameters:
    """Shares that are not given are even ones of what the given ones leave; they are written down."""
    takers = _takers(parameters)
    given = [one.share for one in takers if one.share is not None]
    left = len(takers) - len(given)
    if not left:
        return parameters
    even = max(_WHOLE - sum(given), 0.0) / left

    def share(one: float | None) -> float:
        return even if one is None else one

    darts = tuple(one.model_copy(update={"share": share(one.share)}) for one in parameters.darts)
    seams = tuple(one.model_copy(update={"share": share(one.share)}) for one in parameters.seams)
    return parameters.model_copy(update={"darts": darts, "seams": seams})


def _takers(parameters: WidthParameters) -> tuple[NarrowedDart | WidenedSeam, ...]:
    return (*parameters.darts, *parameters.seams)


def run(pattern: Pattern, context: StepContext, parameters: WidthParameters) -> Change:
    """Move every edge and dart by its share of half of the girth; all or nothing."""
    settled = settle(context, parameters)
    shares = [one.share or 0.0 for one in _takers(settled)]
    if abs(sum(shares) - _WHOLE) > _AS_WHOLE:
        raise StepRefused("width-shares", sum=sum(shares))
    girth = context.mm(settled.amount)
    after, asked = pattern, dict[str, float]()
    for dart in settled.darts:
        name = require_one(pattern, dart.intake, "intake")
        part = girth / 2.0 * (dart.share or 0.0)
        after = _taken(narrowed_dart(after, after.intakes[name], part), asked)
    for seam in settled.seams:
        after = _taken(widened_edge(after, _widened(pattern, context, seam, girth / 2.0)), asked)
    after = evened(pattern, after)
    notes = (*_one_seam(pattern, settled, girth), *seams_put_out(pattern, after, "change-width"))
    return Change(after, notes=notes, asked=asked)


def _taken(widened: Widened, asked: dict[str, float]) -> Pattern:
    """The pattern; what was asked of its edges is added up."""
    for name, amount in widened.asked.items():
        asked[name] = asked.get(name, 0.0) + amount
    return widened.pattern


def _widened(pattern: Pattern, context: StepContext, seam: WidenedSeam, half: float) -> WidenedEdge:
    edge, point = seam.level.edge, seam.level.from_point
    total = sewn_length(pattern, edge)
    nothing: list[float] = []
    for place in seam.nothing_at:
        if place.edge != edge:
            raise StepRefused("width-nothing-elsewhere", edge=edge, other=place.edge)
        distance = place_distance(pattern, context.place(pattern, place))
        nothing.append(distance if place.from_point == point else total - distance)
    full = place_distance(pattern, context.place(pattern, seam.level))
    if any(abs(place - full) <= TOLERANCES.closure for place in nothing):
        raise StepRefused("width-nothing-at-level", edge=edge)
    amount = half * (seam.share or 0.0)
    return WidenedEdge(edge, point, Swelling(total, amount, full, tuple(nothing)))


def _one_seam(pattern: Pattern, parameters: WidthParameters, girth: float) -> tuple[Finding, ...]:
    """Said when a large amount is taken at one seam alone: the trade never takes all at the side."""
    edges = {member for seam in parameters.seams for member in require(pattern, seam.level.edge)}
    seams = {
        seam.name
        for seam in pattern.seams.values()
        if edges & {m for use in (*seam.first, *seam.second) for m in require(pattern, use.edge)}
    }
    alone = len(seams) == 1 and not parameters.darts
    if not alone or abs(girth) <= MOST_AT_ONE_SEAM.value:
        return ()
    most = Measured(abs(girth), MOST_AT_ONE_SEAM.value)
    return (worded("change-width", "width-one-seam", Severity.LOOK, most, names=tuple(sorted(seams))),)


STEP = StepDefinition(
    operation="change_width",
    version=1,
    kind="style",
    title="Change width",
    sentence="{amount|wider|narrower} at {seams:{level}}, and {darts}",
    parameters=WidthParameters,
    run=run,
    settle=settle,
)
