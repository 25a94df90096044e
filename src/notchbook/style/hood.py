"""A hood of two or three panels, sewn to the neck: as high and as deep as the head asks.

It is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from typing import Annotated, Literal

from notchbook.body.usual_head import USUAL_CHILD_HEAD, USUAL_HEAD
from notchbook.pattern import Pattern, part_name, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.collar_neck import (
    BEGINS_BY,
    CollarParameters,
    center_notes,
    collar_neck,
    settled,
)
from notchbook.style.collars.figures import HOOD_DEPTH, HOOD_HEIGHT
from notchbook.style.collars.hood_lines import hood_lines, side_panel
from notchbook.style.collars.hood_notes import cord_notes, low_notes, of_child
from notchbook.style.collars.hood_pieces import face_hemmed, with_three_panels, with_two_panels
from notchbook.style.collars.labels import called
from notchbook.style.collars.passing import head_notes


class HoodParameters(CollarParameters):
    """The neck, how high and deep the hood is, and of how many panels it is made."""

    height: AmountText | None = None
    """How high the face edge is, from the neck to the crown; empty: 0.6 of the head girth."""
    depth: AmountText | None = None
    """How deep it is, from the face edge to the back of the head; empty: 0.44 of the head girth."""
    panels: Annotated[Literal["two", "three"], called("panels")] = "two"
    """Two, with a seam over the head; or three, with a strip over the head between two sides."""
    middle: AmountText = "90 mm"
    """How wide the middle panel is, of three."""
    drawstring: bool = False
    """Whether a cord runs in the hem round the face. Never in a young child's hood."""


def run(pattern: Pattern, context: StepContext, parameters: HoodParameters) -> Change:
    """Draw the panels, sew them to each other and to the neck, and look at the head and at cords."""
    neck, beginning = collar_neck(pattern, context, parameters)
    head = _head(context)
    height = _amount(context, parameters.height, "height", HOOD_HEIGHT.value * head)
    depth = _amount(context, parameters.depth, "depth", HOOD_DEPTH.value * head)
    slug = context.slug
    if parameters.panels == "two":
        after = with_two_panels(neck, slug, hood_lines(neck.length, height, depth))
        pieces: tuple[str, ...] = (piece_name(slug, "hood"),)
    else:
        middle = context.positive(parameters.middle, "middle", "both")
        after = with_three_panels(neck, slug, side_panel(neck.length, height, depth, middle), middle)
        pieces = (piece_name(slug, "hood"), piece_name(slug, "hood_middle"))
    after = after.with_operations(face_hemmed(slug, pieces, has_cord=parameters.drawstring))
    notes = (
        *center_notes(piece_name(slug, "hood"), pattern, parameters, beginning),
        *head_notes(context, neck),
        *low_notes(piece_name(slug, "hood"), height, head),
        *cord_notes(piece_name(slug, "hood"), context, has_cord=parameters.drawstring),
    )
    waves = {part_name(piece_name(slug, "hood"), "head_seam"): 1}
    return Change(after, splits=neck.splits, waves=waves, notes=notes)


def _head(context: StepContext) -> float:
    """The girth of the head, mm; as usual where it was not measured."""
    found = context.find("head_girth", "both")
    if found is not None:
        return found
    return USUAL_CHILD_HEAD if of_child(context) else USUAL_HEAD


def _amount(context: StepContext, asked: str | None, field: str, usual: float) -> float:
    return usual if asked is None else context.positive(asked, field, "both")


def settle(pattern: Pattern, context: StepContext, parameters: HoodParameters) -> HoodParameters:
    """Where the center lies and how the hood begins, looked up on this body."""
    return settled(pattern, context, parameters)


STEP = StepDefinition(
    operation="hood",
    version=1,
    kind="style",
    phase="derived",
    title="Hood",
    sentence="of {panels} panels on {neck:{edge}}, {height} high, {depth} deep",
    parameters=HoodParameters,
    run=run,
    settle_on=settle,
    settles={"begins": BEGINS_BY},
)
"""The step."""
