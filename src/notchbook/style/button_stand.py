"""A button stand: what is cut on beyond the center, its facing, the buttons and the buttonholes.

The center stays as a line of the piece. Both fronts are cut alike; the order of work says which gets the
holes. It is derived: it follows the finished center, so that it can never go stale.
"""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError
from notchbook.pattern import Finding, Pattern, piece_name
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.closures.button_places import (
    ButtonRoom,
    button_places,
    number_apart,
    number_from_level,
    usual_above_level,
    usual_number,
)
from notchbook.style.closures.buttons_laid import ButtonSize, Holes, with_buttons
from notchbook.style.closures.figures import FACING_CUT_ON, LAST_ABOVE_HEM, SPACING, STAND_OF_BUTTON
from notchbook.style.closures.stand_made import StandMaking, stand_size, with_stand
from notchbook.style.closures.stand_notes import stand_notes
from notchbook.style.closures.stand_outline import StandSize
from notchbook.style.closures.stand_room import button_room, edge_below
from notchbook.style.closures.straight_center import StraightCenter, straight_center
from notchbook.style.closures.within_trade import told_outside, told_unusual


class StandCenter(StepParameters):
    """A straight center of one piece, and its upper end."""

    center: EdgeName
    """The center front or center back, straight, on the fold or sewn left to right."""
    top: PointName
    """Its upper end."""


class ButtonStandParameters(StepParameters):
    """The ``centers`` that open, from the top down, the stand beyond them, and its buttons.

    How many buttons there are is written down when the step is added; where they lie follows the size.
    """

    centers: Annotated[tuple[StandCenter, ...], Field(min_length=1)]
    """The center, piece after piece from the top down: a bodice, then its skirt."""
    button: AmountText = "15 mm"
    """Diameter of the button."""
    thickness: AmountText = "3 mm"
    """How thick the button is; a hole is as long as diameter and thickness."""
    width: AmountText | None = None
    """How far the stand reaches beyond the center; empty: as wide as the button."""
    facing: Literal["cut_on", "separate", "none"] = "cut_on"
    """Cut on and folded back; a piece of its own, sewn to the edge; or none, to be finished otherwise."""
    facing_width: AmountText = FACING_CUT_ON.amount
    """How wide the facing is, from the edge of the stand."""
    number: Annotated[int, Field(ge=1, le=40)] | None = None
    """How many buttons; empty: counted when the step is added, about 9 cm apart."""
    spacing: AmountText | None = None
    """The same spacing in every size; empty: shared out evenly, so that it grows with the size."""
    level: PointName | None = None
    """A point at whose level one button lies, such as the bust point."""
    above_level: Annotated[int, Field(ge=1, le=40)] | None = None
    """How many buttons lie above that level; empty: counted when the step is added."""
    first: AmountText | None = None
    """How far below the top the first lies; empty: half the button and 6 mm."""
    last: AmountText | None = None
    """How far above the lower end the last lies at least; empty: 10 cm over a hem, else as the first."""
    holes: Holes = "across"
    """Buttonholes across the center, or along it."""
    over: Literal["right", "left"] = "right"
    """Which of the wearer's sides lies on top and has the holes: right for women, left for men."""


def run(pattern: Pattern, context: StepContext, parameters: ButtonStandParameters) -> Change:
    """Cut the stand on, and lay out buttons and holes down the center."""
    button = _button(context, parameters)
    size = stand_size(
        button,
        _width(context, parameters, button),
        context.positive(parameters.facing_width, "facing_width") if parameters.facing != "none" else 0.0,
        is_cut_on=parameters.facing == "cut_on",
    )
    centers = _centers(pattern, parameters)
    owners = [piece_name(context.slug, last_word(center.piece.name)) for center in centers]
    room = _room(pattern, context, parameters, centers, button)
    spacing = None if parameters.spacing is None else context.positive(parameters.spacing, "spacing")
    if parameters.number is None:
        raise InputError("buttons-uncounted")
    laid = button_places(room, parameters.number, spacing, parameters.above_level)
    making = StandMaking(context.slug, tuple(owners), size, parameters.over, parameters.number)
    change = with_stand(pattern, centers, making)
    parts = list(zip(centers, owners, strict=True))
    after = with_buttons(change.pattern, parts, laid.places, button)
    notes = (
        *stand_notes(centers, laid, room, button),
        *_unusual(context, parameters, centers, (button, size)),
    )
    return Change(after, removals=change.removals, waves=change.waves, notes=notes)


def _unusual(
    context: StepContext,
    parameters: ButtonStandParameters,
    centers: list[StraightCenter],
    sizes: tuple[ButtonSize, StandSize],
) -> Iterator[Finding]:
    """What lies outside of what is usual: button, stand, facing, and the last button above a hem."""
    button, stand = sizes
    amounts = {"button": button.diameter, "thickness": button.thickness, "width": stand.width}
    yield from told_unusual(centers[0].piece.name, "button_stand", amounts)
    if parameters.facing != "none":
        width = context.positive(parameters.facing_width, "facing_width")
        yield from told_outside(centers[0].piece.name, "facing_width", width, FACING_CUT_ON)
    if parameters.last is not None and edge_below(centers[-1]).kind == "hem":
        last = context.positive(parameters.last, "last")
        yield from told_outside(centers[-1].piece.name, "last", last, LAST_ABOVE_HEM)


def settle(
    pattern: Pattern, context: StepContext, parameters: ButtonStandParameters
) -> ButtonStandParameters:
    """How many buttons there are, and how many of them above the level, counted on this body."""
    button = _button(context, parameters)
    room = _room(pattern, context, parameters, _centers(pattern, parameters), button)
    apart = SPACING.value if parameters.spacing is None else context.positive(parameters.spacing, "spacing")
    above, number = parameters.above_level, parameters.number
    if parameters.spacing is not None:
        number = number_apart(room, apart) if number is None else number
        return parameters.model_copy(update={"number": number})
    above = usual_above_level(room, apart) if above is None else above
    if number is None:
        number = usual_number(room, apart) if above is None else number_from_level(room, above)
    return parameters.model_copy(update={"number": number, "above_level": above})


def _button(context: StepContext, parameters: ButtonStandParameters) -> ButtonSize:
    diameter = context.positive(parameters.button, "button")
    return ButtonSize(diameter, context.positive(parameters.thickness, "thickness"), parameters.holes)


def _width(context: StepContext, parameters: ButtonStandParameters, button: ButtonSize) -> float:
    if parameters.width is None:
        return STAND_OF_BUTTON.value * button.diameter
    return context.positive(parameters.width, "width")


def _centers(pattern: Pattern, parameters: ButtonStandParameters) -> list[StraightCenter]:
    return [straight_center(pattern, one.center, one.top) for one in parameters.centers]


def _room(
    pattern: Pattern,
    context: StepContext,
    parameters: ButtonStandParameters,
    centers: list[StraightCenter],
    button: ButtonSize,
) -> ButtonRoom:
    first, last = (
        None if given is None else context.positive(given, field)
        for given, field in ((parameters.first, "first"), (parameters.last, "last"))
    )
    width = _width(context, parameters, button)
    return button_room(pattern, centers, (first, last), parameters.level, (button.diameter, width))


COUNTED_BY = ("centers", "spacing", "level", "first", "last")
"""The fields by which the buttons are counted when the step is added."""

STEP = StepDefinition(
    operation="button_stand",
    version=1,
    kind="style",
    phase="derived",
    title="Button stand",
    sentence="{number} buttons of {button} at {centers:{center}}, {over} over, facing {facing}",
    parameters=ButtonStandParameters,
    run=run,
    settle_on=settle,
    settles={"number": (*COUNTED_BY, "above_level"), "above_level": (*COUNTED_BY, "number")},
)
