"""Lengthen or shorten at the hem, all named hems by the same amount.

The hem moves square to itself; the edges beside it are carried on along their own direction, or cut.
"""

from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, offset
from notchbook.pattern import Edge, Pattern, Piece, require, spoken
from notchbook.recipe import AmountText, Change, EdgeName, StepContext, StepDefinition, StepParameters
from notchbook.units import TOLERANCES


class LengthParameters(StepParameters):
    """The ``hems`` and the ``amount`` by which they move outward (longer) or, negative, inward."""

    hems: Annotated[tuple[EdgeName, ...], Field(min_length=1)]
    """Every hem that moves, so that the seams between them still agree."""
    amount: AmountText
    """How far the hems move: longer, or with a minus shorter."""


def run(pattern: Pattern, context: StepContext, parameters: LengthParameters) -> Change:
    """Move every hem; all or nothing."""
    amount = context.mm(parameters.amount)
    names = [member for hem in parameters.hems for member in require(pattern, hem)]
    for name in dict.fromkeys(names):
        piece = pattern.piece_of(name)
        pattern = pattern.with_pieces(_moved(piece, name, amount))
    return Change(pattern)


def _moved(piece: Piece, name: str, amount: float) -> Piece:
    if amount == 0.0:
        return piece
    index = piece.edge_index(name)
    outline = list(piece.outline)
    following = (index + 1) % len(outline)
    hem = offset(outline[index].path, -amount)
    before = _ended(outline[index - 1], hem.start, amount)
    after = _ended(outline[following].reversed(), hem.end, amount).reversed()
    outline[index - 1] = before
    outline[following] = after
    outline[index] = replace(outline[index], path=hem.with_start(before.path.end).with_end(after.path.start))
    return replace(piece, outline=tuple(outline))


def _ended(edge: Edge, goal: Point, amount: float) -> Edge:
    """The edge carried on, or cut back, to end where the moved hem begins."""
    if -amount >= edge.length - TOLERANCES.closure:
        raise StepRefused("hem-beyond-edge", edge=spoken(edge.name), length=edge.length, amount=-amount)
    path = _carried_on(edge.path, amount) if amount > 0.0 else edge.path
    nearest = path.nearest(goal)
    if nearest.gap > TOLERANCES.seam_walk:
        raise StepRefused("hem-not-square", edge=spoken(edge.name), gap=nearest.gap)
    kept = path.between(0.0, min(nearest.distance_along, path.length))
    return replace(edge, path=kept)


def _carried_on(path: Path, amount: float) -> Path:
    """The path with its last direction followed for twice the amount, as one line where it was straight."""
    last = path.segments[-1]
    goal = path.end + path.tangent_at(path.length) * (2.0 * amount)
    if isinstance(last, Line):
        return Path((*path.segments[:-1], Line(last.start, goal)))
    return path.joined(Path.line(path.end, goal))


STEP = StepDefinition(
    operation="change_length",
    version=1,
    kind="style",
    title="Change length",
    sentence="{amount} at {hems}",
    parameters=LengthParameters,
    run=run,
)
