"""A cuff, made after the last shaping step to the hem of its sleeve as sewn, so that it always fits.

Straight, it is one strip folded along its free edge; shaped, it follows the forearm and has an outer and an
inner layer. Where the sleeve has a placket the cuff begins at its upper edge, goes round the front and laps
under; else it is closed to a ring, and whether the hand passes is looked at.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Allowance, Pattern, run_length
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style.sleeves.cuff_piece import CuffShape, cuff_piece
from notchbook.style.sleeves.cuff_seams import (
    cuff_notches,
    cuff_operations,
    cuff_seams,
    hand_told,
    longer_told,
)
from notchbook.style.sleeves.figures import BUTTON, CUFF_DEPTH, CUFF_OVERLAP
from notchbook.style.sleeves.hems import to_band
from notchbook.style.sleeves.wrist import wrist_of

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
    """How far it laps under at a placket."""
    buttons: Annotated[int, Field(ge=0, le=MOST_BUTTONS)] = 1
    """How many buttons close it at a placket, one above the other."""
    button: AmountText = BUTTON.amount
    """Diameter of a button."""


def run(pattern: Pattern, context: StepContext, parameters: CuffParameters) -> Change:
    """Cut the cuff to the hem, sew it on, mark its button."""
    wrist = wrist_of(pattern, parameters.sleeve)
    depth = context.positive(parameters.depth, "depth")
    length = run_length(pattern, wrist.uses)
    overlap = context.positive(parameters.overlap, "overlap") if wrist.slit > 0.0 else 0.0
    narrower = context.positive(parameters.narrower, "narrower") if parameters.shape == "shaped" else 0.0
    if length <= 2.0 * depth or narrower >= length / 2.0:
        raise StepRefused("cuff-too-small", length=length, depth=depth)
    shape = CuffShape(length, overlap, depth, narrower)
    buttons = parameters.buttons if wrist.slit > 0.0 else 0
    piece = cuff_piece(context.slug, shape, buttons, context.positive(parameters.button, "button"))
    after = pattern.with_pieces(piece)
    for edge in wrist.edges:
        after = to_band(after, edge)
    after = after.with_seams(*cuff_seams(context.slug, piece.name, wrist, is_ring=wrist.slit == 0.0))
    after = after.with_notches(*cuff_notches(pattern, context.slug, piece.name, wrist))
    after = after.with_allowances(dict.fromkeys([edge.name for edge in piece.outline], Allowance("cuff")))
    after = after.with_materials({"fusible": "fusible"})
    after = after.with_operations(*cuff_operations(context.slug, piece, wrist, buttons))
    notes = (
        *hand_told(STEP.operation, context, piece.name, wrist, length),
        longer_told(STEP.operation, piece.name, depth),
    )
    return Change(after, notes=notes)


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
