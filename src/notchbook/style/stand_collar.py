"""A stand collar: a band along the neck, its upper edge shorter because its front rises.

It is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from typing import Annotated, Literal

from notchbook.errors import StepRefused
from notchbook.pattern import Operation, Pattern, part_name, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.curves import turn_for_rise
from notchbook.style.collars.figures import STAND_RISE
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck import CollarParameters, Neck, extension_of, neck_of
from notchbook.style.collars.notes import neck_tight_notes
from notchbook.style.collars.overlaps import Overlaps, overlaps_of
from notchbook.style.collars.passing import head_notes
from notchbook.style.collars.stand import STRAIGHT, StandFront, StandGiven, stand_lines
from notchbook.style.collars.stand_button import button_of
from notchbook.style.collars.two_stands import StandMaking, StandNames, with_stand


class StandCollarParameters(CollarParameters):
    """The neck, how high the collar stands, how far its front rises, and how its front ends."""

    height: AmountText = "35 mm"
    """How high it stands."""
    rise: AmountText = STAND_RISE.amount
    """How much higher its front lies than its back, drawn flat: more leans it closer to the neck."""
    front: Annotated[StandFront, called("front end")] = "round"
    """Round, or square."""
    overlap: AmountText = "0 mm"
    """How far it goes on beyond the center, for a button; on the extension it is sewn to the garment."""
    button: AmountText = "11 mm"
    """Diameter of its button; the hole is 3 mm longer. Without an overlap there is none."""
    opens: Annotated[Literal["front", "back"], called("garment opens")] = "front"
    """In front: on the fold at the center back. At the back: on the fold at the center front."""
    interfaced: bool = True
    """Whether the outer layer is cut in fusible too."""


def run(pattern: Pattern, context: StepContext, parameters: StandCollarParameters) -> Change:
    """Draw the stand, cut both layers, sew it to the neck and hold its upper edge against the neck."""
    height = context.positive(parameters.height, "height", "both")
    overlaps = overlaps_of(context, extension_of(context, parameters), parameters.overlap)
    if parameters.opens == "back" and overlaps.is_on_garment:
        raise StepRefused("collar-extension-back")
    neck = neck_of(pattern, parameters.neck, overlaps.left_free)
    lines = stand_lines(_given(context, parameters, neck, overlaps, height))
    center = "center_back" if parameters.opens == "front" else "center_front"
    names = StandNames("stand", "Stand collar", "inner_stand", "Inner stand collar", center)
    button = button_of(context.positive(parameters.button, "button"))
    making = StandMaking(overlaps.sewn, button, parameters.interfaced)
    after = with_stand(neck, context.slug, lines, names, making)
    piece = piece_name(context.slug, "stand")
    turned = Operation(
        part_name(context.slug, "turned"),
        "neck",
        "Turn the stand collar over the neck seam, fold its inner edge in and stitch it down.",
        at=(piece, piece_name(context.slug, "inner_stand")),
        after=(part_name(context.slug, "neck"),),
    )
    notes = (*neck_tight_notes(piece, context, lines.top), *head_notes(context, neck))
    return Change(after.with_operations(turned), splits=neck.splits, notes=notes)


def _given(
    context: StepContext,
    parameters: StandCollarParameters,
    neck: Neck,
    overlaps: Overlaps,
    height: float,
) -> StandGiven:
    straight = STRAIGHT * neck.back if parameters.opens == "front" else 0.0
    turn = turn_for_rise(neck.length, straight, context.mm(parameters.rise, "both"))
    return StandGiven(neck.length, straight, height, turn, parameters.front, overlaps.beyond, overlaps.whole)


STEP = StepDefinition(
    operation="stand_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Stand collar",
    sentence="{height} high on {neck:{edge}}, its front rising {rise}, {front}",
    parameters=StandCollarParameters,
    run=run,
)
"""The step."""
