"""A stand collar: a band along the neck, its upper edge shorter because its front rises.

It is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from typing import Annotated, Literal

from notchbook.errors import StepRefused
from notchbook.pattern import Operation, Pattern, part_name, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.beginning import Beginning
from notchbook.style.collars.collar_neck import (
    BEGINS_BY,
    CollarParameters,
    center_notes,
    collar_neck,
    overlap_of,
    settled,
)
from notchbook.style.collars.curves import bend_for_rise
from notchbook.style.collars.figures import STAND_HEIGHT, STAND_RISE
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.notes import neck_tight_notes, unusual_notes
from notchbook.style.collars.passing import head_notes
from notchbook.style.collars.stand import STRAIGHT, StandFront, StandGiven, stand_lines
from notchbook.style.collars.stand_button import button_of, buttoned
from notchbook.style.collars.two_stands import StandMaking, StandNames, with_stand


class StandCollarParameters(CollarParameters):
    """The neck, how high the collar stands, how far its front rises, and how its front ends."""

    height: AmountText = STAND_HEIGHT.amount
    """How high it stands."""
    rise: AmountText = STAND_RISE.amount
    """How much higher its front lies than its back, drawn flat: more leans it closer to the neck."""
    front: Annotated[StandFront, called("front end")] = "round"
    """Round, or square."""
    overlap: AmountText = "0 mm"
    """How far it goes on beyond the center, for a button; on the button stand it is sewn to the garment."""
    button: AmountText = "11 mm"
    """Diameter of its button; the hole is 3 mm longer. Without an overlap there is none."""
    opens: Annotated[Literal["front", "back"], called("garment opens")] = "front"
    """In front: on the fold at the center back. At the back: on the fold at the center front."""
    interfaced: bool = True
    """Whether the outer layer is cut in fusible too."""


def run(pattern: Pattern, context: StepContext, parameters: StandCollarParameters) -> Change:
    """Draw the stand, cut both layers, sew it to the neck and hold its upper edge against the neck."""
    height = context.positive(parameters.height, "height", "both")
    neck, beginning = collar_neck(pattern, context, parameters, overlap_of(context, parameters.overlap))
    if parameters.opens == "back" and beginning.extension > 0.0:
        raise StepRefused("collar-extension-back")
    rise = context.mm(parameters.rise, "both")
    lines = stand_lines(_given(parameters, neck, beginning, height, rise))
    center = "center_back" if parameters.opens == "front" else "center_front"
    names = StandNames("stand", "Stand collar", "inner_stand", "Inner stand collar", center)
    button = button_of(context.positive(parameters.button, "button"))
    making = StandMaking(beginning.sewn, button, parameters.interfaced)
    after = with_stand(neck, context.slug, lines, names, making)
    piece = piece_name(context.slug, "stand")
    turned = Operation(
        part_name(context.slug, "turned"),
        "neck",
        "Turn the stand collar over the neck seam, fold its inner edge in and stitch it down.",
        at=(piece, piece_name(context.slug, "inner_stand")),
        after=(part_name(context.slug, "neck"),),
    )
    notes = (
        *center_notes(piece, pattern, parameters, beginning),
        *neck_tight_notes(piece, context, lines.top),
        *head_notes(context, neck),
        *unusual_notes(piece, {"height": (height, STAND_HEIGHT), "rise": (rise, STAND_RISE)}),
    )
    after = after.with_operations(turned, *buttoned(context.slug, lines))
    return Change(after, splits=neck.splits, notes=notes)


def _given(
    parameters: StandCollarParameters, neck: Neck, beginning: Beginning, height: float, rise: float
) -> StandGiven:
    straight = STRAIGHT * neck.back if parameters.opens == "front" else 0.0
    bend = bend_for_rise(neck.length, straight, rise)
    return StandGiven(
        neck.length, straight, height, bend, parameters.front, beginning.beyond, beginning.overlap
    )


def settle(
    pattern: Pattern, context: StepContext, parameters: StandCollarParameters
) -> StandCollarParameters:
    """Where the center lies and how the stand begins, looked up on this body."""
    return settled(pattern, context, parameters, overlap_of(context, parameters.overlap))


STEP = StepDefinition(
    operation="stand_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Stand collar",
    sentence="{height} high on {neck:{edge}}, its front rising {rise}, {front}",
    parameters=StandCollarParameters,
    run=run,
    settle_on=settle,
    settles={"begins": (*BEGINS_BY, "overlap")},
)
"""The step."""
