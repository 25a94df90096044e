"""A flat collar: drawn on front and back laid together at the shoulders, their tips lapped.

The more the shoulder tips lap, the straighter the neck edge, the shorter the outer edge, the higher the
collar stands. It is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from typing import Annotated, Literal

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.collar_neck import BEGINS_BY, center_notes, collar_neck, settled
from notchbook.style.collars.figures import FLAT_OVERLAP, UPPER_COLLAR_TURN
from notchbook.style.collars.labels import called
from notchbook.style.collars.laid_neck import laid_neck, overlapped, parallel_length
from notchbook.style.collars.notes import resulting_stand, stand_note, unusual_notes
from notchbook.style.collars.outline import Front, FrontShape, collar_lines
from notchbook.style.collars.passing import head_notes
from notchbook.style.collars.two_layers import LayeredParameters, Layers, turn_within, with_two_layers


class FlatCollarParameters(LayeredParameters):
    """The neck, how wide the collar is, and how much the shoulder tips lap."""

    width: AmountText = "65 mm"
    """How wide the collar is at the center back, from the neck edge."""
    overlap: Annotated[AmountText, called("lap of the shoulder tips")] = FLAT_OVERLAP.amount
    """How much the shoulder tips lap: 10 to 15 mm lies flat, 70 to 80 mm stands high."""
    front: Annotated[FrontShape, called("front shape")] = "round"
    """Round, or with a point."""
    point: AmountText | None = None
    """How long the front edge is, from the neck to the point; empty for the width of the collar."""
    lean: AmountText = "0 mm"
    """How far the point reaches forward of a square one; below zero it is cut away."""
    opens: Annotated[Literal["front", "back"], called("garment opens")] = "front"
    """In front: one collar, on the fold at the center back. At the back: two halves."""


def run(pattern: Pattern, context: StepContext, parameters: FlatCollarParameters) -> Change:
    """Draw the collar on the laid neck, cut both layers and tell how it stands."""
    width = context.positive(parameters.width, "width", "both")
    overlap = context.mm(parameters.overlap)
    turn = turn_within(context, parameters.turn, width)
    neck, beginning = collar_neck(pattern, context, parameters)
    laid = laid_neck(neck)
    if not 0.0 <= overlap <= laid.shoulder:
        raise StepRefused("collar-overlap-long", overlap=overlap, shoulder=laid.shoulder)
    point = width if parameters.point is None else context.positive(parameters.point, "point")
    front = Front(parameters.front, point, context.mm(parameters.lean))
    edge = overlapped(laid, overlap)
    layers = Layers(
        *collar_lines(edge, width, front, turn),
        "collar",
        "Collar",
        encloses=False,
        parted=parameters.opens == "back",
    )
    after = with_two_layers(neck, context.slug, layers, parameters)
    stand = resulting_stand(laid, parallel_length(edge, width), width)
    piece = piece_name(context.slug, "collar")
    asked = {"overlap": (overlap, FLAT_OVERLAP), "turn": (turn, UPPER_COLLAR_TURN)}
    notes = (
        stand_note(piece, stand, width),
        *center_notes(piece, pattern, parameters, beginning),
        *head_notes(context, neck),
        *unusual_notes(piece, asked),
    )
    is_bias = parameters.undercollar == "bias"
    grains = (piece_name(context.slug, "undercollar"),) if is_bias else ()
    return Change(after, splits=neck.splits, notes=notes, grains=grains)


def settle(pattern: Pattern, context: StepContext, parameters: FlatCollarParameters) -> FlatCollarParameters:
    """Where the center lies and how the collar begins, looked up on this body."""
    return settled(pattern, context, parameters)


STEP = StepDefinition(
    operation="flat_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Flat collar",
    sentence="{width} wide on {neck:{edge}}, {front}, shoulder tips lapped by {overlap}",
    parameters=FlatCollarParameters,
    run=run,
    settle_on=settle,
    settles={"begins": BEGINS_BY},
)
"""The step."""
