"""Curve a hem: a shirt tail, or higher in front than behind. Its ends move along the seams beside it.

The hem is one fair curve, square to what it meets at both ends, so that it runs on across the seams.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Edge, Pattern, directed, require_one, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.edges.carried import carried_on
from notchbook.style.edges.edge_points import EdgePoint, faired, points_beside
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.redrawn import redrawn
from notchbook.style.edges.shared_amounts import side_of_amount
from notchbook.units import TOLERANCES


class CurvedHem(StepParameters):
    """A hem, and how far its two ends are lowered, or with a minus raised."""

    edge: EdgeName
    """The hem."""
    from_point: PointName
    """One of its ends, such as the center."""
    start: AmountText = "0 cm"
    """How far the hem is lowered at this end; with a minus raised."""
    end: AmountText = "0 cm"
    """How far it is lowered at the other end; the same on the piece that is sewn to it there."""
    points: tuple[EdgePoint, ...] = ()
    """Points that it goes through, counted along the hem as it was; without them one smooth curve."""


class CurveHemParameters(StepParameters):
    """The ``hems`` that are curved."""

    hems: Annotated[tuple[CurvedHem, ...], Field(min_length=1)]
    """Every hem that is curved, front and back."""


def run(pattern: Pattern, context: StepContext, parameters: CurveHemParameters) -> Change:
    """Draw every hem; all or nothing."""
    after = pattern
    for hem in parameters.hems:
        after = _curved(after, context, hem)
    waves = {hem.edge: len(hem.points) + 1 for hem in parameters.hems}
    return Change(after, waves=waves, notes=seams_put_out(pattern, after, "curve-hem"))


def _curved(pattern: Pattern, context: StepContext, hem: CurvedHem) -> Pattern:
    name = require_one(pattern, hem.edge)
    (step,) = directed(pattern, name, hem.from_point)
    piece = pattern.piece_of(name)
    before, after = piece.edge_before(name), piece.edge_after(name)
    ends = (before, after) if step.forward else (after, before)
    amounts = [
        context.mm(text, side_of_amount(pattern, [edge.name]))
        for text, edge in zip((hem.start, hem.end), ends, strict=True)
    ]
    if amounts == [0.0, 0.0] and not hem.points:
        return pattern
    lowered = amounts if step.forward else amounts[::-1]
    first = _ended(before, before.path, lowered[0])
    last = _ended(after, after.path.reversed(), lowered[1])
    inside = points_beside(step, context, hem.points)
    points = [first.end, *(inside if step.forward else inside[::-1]), last.end]
    inward = first.tangent_at(first.length).perpendicular(), -last.tangent_at(last.length).perpendicular()
    drawn = _drawn(points, inward[0].direction(), inward[1].direction() + 180.0, spoken(name))
    return pattern.with_pieces(redrawn(piece, {before.name: first, name: drawn, after.name: last.reversed()}))


def _ended(edge: Edge, path: Path, amount: float) -> Path:
    """The edge beside the hem, running to it, carried on or cut back."""
    if -amount >= path.length - TOLERANCES.closure:
        raise StepRefused("hem-beyond-edge", edge=spoken(edge.name), length=path.length, amount=-amount)
    return carried_on(path, amount)


def _drawn(points: list[Point], leaving: float, arriving: float, said: str) -> Path:
    if len(points) == 2:
        return Path.of(curve_between(points[0], leaving, points[1], arriving))
    return faired(points, (leaving, arriving), said)


STEP = StepDefinition(
    operation="curve_hem",
    version=1,
    kind="style",
    title="Curve hem",
    sentence=(
        "{hems:{edge}, {start|lower|higher} at its first end, {end|lower|higher} at the other end, "
        "through {points:{out} out at {along}}}"
    ),
    parameters=CurveHemParameters,
    run=run,
)
