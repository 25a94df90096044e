"""Draw an edge anew through points beside it, fair, its ends kept; its mate with it.

The points are told along the edge and square to it, so that on another body the edge keeps its proportions.
The edge keeps the directions at its ends, or turns them by the given angles, and does not begin to wave.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Pattern, directed, require_one, spoken
from notchbook.pattern.sewn import Directed
from notchbook.recipe import Change, EdgeName, PointName, StepContext, StepDefinition, StepParameters
from notchbook.style.edges.bent_edge import bent
from notchbook.style.edges.edge_points import (
    EdgePoint,
    points_beside,
    require_no_new_wave,
    require_order,
)
from notchbook.style.edges.evened import evened
from notchbook.style.edges.mate_walks import seams_put_out
from notchbook.style.edges.one_point_curve import curve_through
from notchbook.style.edges.redrawn import redrawn

Turn = Annotated[float, Field(ge=-60.0, le=60.0)]


class MateEdge(StepParameters):
    """An edge that is drawn anew in the same way, such as the other edge of the seam."""

    edge: EdgeName
    """The edge."""
    from_point: PointName
    """Its end that meets the named end of the first edge."""


class ReshapeParameters(StepParameters):
    """The ``edge`` with the end to count from, the ``points`` that it goes through, and its ``mates``."""

    edge: EdgeName
    """The edge that is drawn anew."""
    from_point: PointName
    """The end from which the points are counted."""
    points: tuple[EdgePoint, ...] = ()
    """The points that it goes through, in order; beyond an outermost one with 0 it stays as it is."""
    start_turn: Turn = 0.0
    """Degrees by which it leaves the named end turned out of the piece; with a minus into it."""
    end_turn: Turn = 0.0
    """Degrees by which it leaves the other end turned out of the piece; with a minus into it."""
    may_wave: bool = False
    """Whether it may bend one way and then the other where it did not."""
    mates: tuple[MateEdge, ...] = ()
    """Edges that are drawn anew in the same way, so that the seam stays true."""


def run(pattern: Pattern, context: StepContext, parameters: ReshapeParameters) -> Change:
    """Draw the edge and its mates; all or nothing."""
    if not parameters.points and parameters.start_turn == 0.0 and parameters.end_turn == 0.0:
        return Change(pattern)
    after = pattern
    ends = ((parameters.edge, parameters.from_point), *((m.edge, m.from_point) for m in parameters.mates))
    for edge, from_point in ends:
        (step,) = directed(pattern, require_one(pattern, edge), from_point)
        if step.edge.kind == "fold":
            raise StepRefused("reshape-fold", edge=spoken(edge))
        path = _reshaped(step, context, parameters)
        piece = after.piece_of(step.edge.name)
        drawn = path if step.forward else path.reversed()
        after = after.with_pieces(redrawn(piece, {step.edge.name: drawn}))
    after = evened(pattern, after)
    waves = {edge: len(parameters.points) + 1 for edge, _ in ends} if parameters.may_wave else {}
    return Change(after, waves=waves, notes=seams_put_out(pattern, after, "reshape-edge"))


def _reshaped(step: Directed, context: StepContext, parameters: ReshapeParameters) -> Path:
    old, said = step.path, spoken(step.edge.name)
    require_order(parameters.points, said)
    turns = (parameters.start_turn, parameters.end_turn)
    new = _swept(step, context, parameters) or bent(
        old,
        [(point.along * old.length, context.mm(point.out)) for point in parameters.points],
        turns,
        -1.0 if step.forward else 1.0,
    )
    if not parameters.may_wave:
        require_no_new_wave(old, new, said)
    return new


def _swept(step: Directed, context: StepContext, parameters: ReshapeParameters) -> Path | None:
    """The one sweep through a single point, where the edge is one curve and such a sweep does not wave."""
    old = step.path
    if len(parameters.points) != 1 or len(old.segments) != 1:
        return None
    out = -1.0 if step.forward else 1.0
    leaving = old.tangent_at(0.0).direction() + out * parameters.start_turn
    arriving = old.tangent_at(old.length).direction() - out * parameters.end_turn
    (point,) = points_beside(step, context, parameters.points)
    curve = curve_through(old.start, leaving, point, old.end, arriving)
    return None if curve is None else Path.of(curve)


STEP = StepDefinition(
    operation="reshape_edge",
    version=1,
    kind="style",
    title="Reshape edge",
    sentence="{edge} through {points:{out} out at {along}}",
    parameters=ReshapeParameters,
    run=run,
)
