"""A cuff, made after the last shaping step to the hem of its sleeve as sewn, so that it always fits.

Straight, it is one strip folded along its free edge; shaped, it follows the forearm and has an outer and an
inner layer. Where the sleeve has a placket the cuff begins at its upper edge, goes round the front and laps
under; at a tower it reaches to the fold of the tower and to that of the strip below, so that it laps as they
do. Without a placket it is closed to a ring, and whether the hand passes is looked at.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Pattern, run_length
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.cuff_piece import CuffShape, cuff_piece
from notchbook.style.sleeves.cuff_seams import (
    cuff_notches,
    cuff_operations,
    cuff_seams,
    hand_told,
    lap_told,
    longer_told,
)
from notchbook.style.sleeves.figures import BUTTON, CUFF_DEPTH, CUFF_OVERLAP
from notchbook.style.sleeves.hems import to_band
from notchbook.style.sleeves.wrist import Wrist, wrist_of

MOST_BUTTONS = 6


class CuffParameters(StepParameters):
    """The ``sleeve`` and the shape of its cuff."""

    sleeve: Word = "sleeve"
    """The sleeve that the cuff is sewn to."""
    shape: Literal["straight", "shaped"] = "straight"
    """One straight strip, folded; or two layers cut in the round of the forearm."""
    depth: AmountText = CUFF_DEPTH.amount
    """Finished depth."""
    narrower: AmountText = "15 mm"
    """By how much the free edge of a shaped cuff is shorter than the edge at the sleeve."""
    overlap: AmountText = CUFF_OVERLAP.amount
    """How far it laps under at a bound placket; at a tower it laps as the tower does."""
    buttons: Annotated[int, Field(ge=0, le=MOST_BUTTONS)] = 1
    """How many buttons close it at a placket, one above the other."""
    button: AmountText = BUTTON.amount
    """Diameter of a button."""


def run(pattern: Pattern, context: StepContext, parameters: CuffParameters) -> Change:
    """Cut the cuff to the hem, sew it on, mark its button."""
    wrist = wrist_of(pattern, parameters.sleeve)
    depth = context.positive(parameters.depth, "depth")
    length = run_length(pattern, wrist.uses)
    over, under = _laps(context, parameters, wrist)
    narrower = context.positive(parameters.narrower, "narrower") if parameters.shape == "shaped" else 0.0
    if length <= 2.0 * depth or narrower >= length / 2.0:
        raise StepRefused("cuff-too-small", length=length, depth=depth)
    shape = CuffShape(length, depth, narrower, over, under)
    if narrower * shape.whole >= depth * length:
        raise StepRefused("cuff-bends", depth=depth, narrower=narrower, whole=shape.whole)
    buttons = parameters.buttons if wrist.slit > 0.0 else 0
    button = context.positive(parameters.button, "button")
    piece = cuff_piece(context.slug, shape, buttons, button)
    after = pattern.with_pieces(piece)
    for edge in wrist.edges:
        after = to_band(after, edge)
    after = after.with_seams(*cuff_seams(context.slug, piece.name, wrist, is_ring=wrist.slit == 0.0))
    after = after.with_notches(*cuff_notches(pattern, context.slug, piece.name, wrist))
    after = after.with_allowances(dict.fromkeys([edge.name for edge in piece.outline], Allowance("cuff")))
    after = after.with_materials({"fusible": "fusible"})
    after = after.with_operations(*cuff_operations(context.slug, piece, wrist, buttons))
    amounts = [("depth", depth, CUFF_DEPTH)]
    if buttons:
        amounts.append(("button", button, BUTTON))
    if wrist.slit > 0.0 and wrist.tower is None:
        amounts.append(("overlap", shape.lap, CUFF_OVERLAP))
    notes = (
        *(told for one in amounts for told in told_outside(STEP.operation, piece.name, *one)),
        *hand_told(STEP.operation, context, piece.name, wrist, length),
        *lap_told(STEP.operation, piece.name, wrist),
        longer_told(STEP.operation, piece.name, depth),
    )
    return Change(after, notes=notes)


def _laps(context: StepContext, parameters: CuffParameters, wrist: Wrist) -> tuple[float, float]:
    """How far the cuff reaches beyond the slit at its upper and at its lower end, mm."""
    if wrist.tower is not None:
        return wrist.tower
    return 0.0, context.positive(parameters.overlap, "overlap") if wrist.slit > 0.0 else 0.0


STEP = StepDefinition(
    operation="cuff",
    version=1,
    kind="style",
    phase="derived",
    title="Cuff",
    sentence="{shape}, {depth} deep, at {sleeve}, overlap {overlap}",
    parameters=CuffParameters,
    run=run,
)
