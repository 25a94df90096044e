"""Drafting one of the wearer's sides so that it meets the other at the centers.

The centers belong to both sides: neck pit and hem must lie at one height on each, whatever the sides differ.
"""

from dataclasses import replace

from notchbook.blocks.bodice_pieces.below_waist import HipHalf, draft_to_hip, with_shared_hems
from notchbook.blocks.bodice_pieces.bodice_measures import (
    BodiceMeasures,
    bodice_measures,
    center_front_of,
    with_center,
)
from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.blocks.upper.kept_bodice import kept_bodice
from notchbook.blocks.upper.shapes import BodiceHalf
from notchbook.body import Side
from notchbook.recipe import StepContext
from notchbook.units import TOLERANCES


def draft_side(
    context: StepContext, parameters: UpperParameters, length: float | None
) -> tuple[BodiceHalf, HipHalf | None, BodiceMeasures]:
    """Draft this side of the wearer; where the two sides differ, both get the same neck pit and hem.

    ``length`` is how far below the waist the hem lies at the center back, mm (None: at the hip, or at the
    waist where the panels end there). The front neck begins at the higher of where the two sides would have
    it, so that it is too deep for neither; a hem at the hip lies at the lower of the two hips, so that it is
    too short for neither.
    """
    is_one_piece = not parameters.has_waist_seam
    own = bodice_measures(context, parameters, context.side)
    half, hip = _draft(own, length, is_one_piece=is_one_piece)
    if context.sides_are_alike():
        return half, hip, own
    other_side: Side = "left" if context.side == "right" else "right"
    other = bodice_measures(context, parameters, other_side, own.trusted)
    if own.given == other.given and own.hip == other.hip:
        return half, hip, own
    other_half, other_hip = _draft(other, length, is_one_piece=is_one_piece)
    lowered = own.given.pit_lowered, other.given.pit_lowered
    pits = (half.front.neck.start.y + lowered[0], other_half.front.neck.start.y + lowered[1])
    raised: float | None = None
    if abs(pits[0] - pits[1]) >= TOLERANCES.join:
        raised = max(pits) - center_front_of(own, pits[0])
        own, other = with_center(own, max(pits)), with_center(other, max(pits))
        half, hip = _draft(own, length, is_one_piece=is_one_piece)
        _, other_hip = _draft(other, length, is_one_piece=is_one_piece)
    if hip is not None and other_hip is not None:
        hip = _with_one_hem((own, hip), (other, other_hip))
        half = hip.upper
    return half if raised is None else _as_raised(half, raised), hip, own


def _draft(
    measures: BodiceMeasures, length: float | None, *, is_one_piece: bool
) -> tuple[BodiceHalf, HipHalf | None]:
    if measures.hip is None or not is_one_piece:
        return kept_bodice(measures.given), None
    drawn = draft_to_hip(measures.given, replace(measures.hip, length=length))
    return drawn.upper, drawn


def _with_one_hem(own: tuple[BodiceMeasures, HipHalf], other: tuple[BodiceMeasures, HipHalf]) -> HipHalf:
    """This side with its hem as low as the other's: drawn on to there below its own hip."""
    lowest = min(own[1].back.hem_level, other[1].back.hem_level)
    mine, beside = (_down_to(lowest, *side) for side in (own, other))
    return with_shared_hems(mine, beside)


def _down_to(level: float, measures: BodiceMeasures, drawn: HipHalf) -> HipHalf:
    """The side with its hem at this height at the center back, mm over the waist; left where it is there but
    for what no pencil line shows: a side seam drawn on by so little would end in a part too short to cut."""
    if measures.hip is None or drawn.back.hem_level - level < TOLERANCES.closure:
        return drawn
    return draft_to_hip(measures.given, replace(measures.hip, length=-level))


def _as_raised(half: BodiceHalf, raised: float) -> BodiceHalf:
    """The half with its neck pit told as raised by mm against what was measured."""
    levers = (
        replace(lever, pulled=raised) if lever.name == "center_front" else lever for lever in half.levers
    )
    return replace(half, contour=raised, levers=tuple(levers))
