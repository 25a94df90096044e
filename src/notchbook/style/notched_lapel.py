"""A notched lapel with its collar: the lapel cut on, turned back at the roll line, the collar on the gorge.

It makes the undercollar (on the bias, with a seam at the center back), the upper collar and the facing, both
larger by the turn of the cloth. It is derived: it follows the finished front, so that it can never go stale.
"""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Pattern, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.labels import called
from notchbook.style.collars.laid_neck import LaidNeck, laid_if_it_lies
from notchbook.style.collars.lapel_given import lapel_front
from notchbook.style.collars.lapel_lines import LapelSize
from notchbook.style.collars.lapel_made import LapelMaking, with_notched_lapel
from notchbook.style.collars.lapel_notes import lapel_notes
from notchbook.style.collars.lapel_parameters import (
    LapelParameters,
    facing_size,
    operations,
    turn_of_lapel,
)
from notchbook.style.collars.neck import Neck, neck_of
from notchbook.style.collars.pieces import Grained
from notchbook.style.collars.swing import swing_of

_CLOSED = ("front_edge", "outer", "facing_gorge")
"""The seams between the layers of lapel and collar."""


class NotchedLapelParameters(LapelParameters):
    """The neck and front edge, how the lapel turns, and the shape of lapel, notch and collar."""

    gorge: AmountText = "50 mm"
    """How far below the shoulder the collar seam turns out to the lapel."""
    slope: Annotated[Annotated[float, Field(ge=-30.0, le=40.0)], called("slope of the gorge")] = 10.0
    """Degrees by which the gorge falls from a line square to the roll line."""
    top: AmountText = "38 mm"
    """How long the free upper edge of the lapel is, from its tip to the collar."""
    end: AmountText = "36 mm"
    """How long the front edge of the collar is, from the lapel to its point."""
    notch: Annotated[Annotated[float, Field(ge=30.0, le=120.0)], called("angle of the notch")] = 75.0
    """Degrees between lapel and collar."""
    undercollar: Annotated[Grained, called("grain of the undercollar")] = "bias"
    """On the bias with a seam at the center back, so that it rolls; or straight, on the fold."""


def run(pattern: Pattern, context: StepContext, parameters: NotchedLapelParameters) -> Change:
    """Cut the lapel on, draw collar and facing, sew them together."""
    neck = neck_of(pattern, parameters.neck, parameters.shoulder)
    front = lapel_front(pattern, neck, parameters.edge, context.positive(parameters.breaks, "breaks", "both"))
    laid = laid_if_it_lies(neck)
    size = _size(context, parameters, neck, laid)
    making = LapelMaking(
        context.slug,
        turn_of_lapel(context, parameters),
        facing_size(context, parameters),
        parameters.interfaced,
        parameters.undercollar == "bias",
    )
    cut = with_notched_lapel(neck, front, size, making)
    under = piece_name(context.slug, "undercollar")
    turned = piece_name(context.slug, "facing"), piece_name(context.slug, "collar")
    return Change(
        cut.pattern.with_operations(*operations(context.slug, turned, "upper collar", _CLOSED)),
        splits=cut.splits,
        removals=cut.removals,
        notes=lapel_notes((context.slug, turned[1]), front, size, laid, making.turn),
        grains=(under,) if making.is_bias else (),
    )


def _size(
    context: StepContext, parameters: NotchedLapelParameters, neck: Neck, laid: LaidNeck | None
) -> LapelSize:
    stand = context.positive(parameters.stand, "stand", "both")
    fall = context.positive(parameters.fall, "fall", "both")
    asked = None if parameters.swing is None else context.mm(parameters.swing, "both")
    return LapelSize(
        stand,
        fall,
        context.positive(parameters.lapel, "lapel"),
        context.positive(parameters.gorge, "gorge"),
        parameters.slope,
        context.positive(parameters.top, "top"),
        context.positive(parameters.end, "end"),
        parameters.notch,
        neck.back,
        swing_of(neck.back, stand + fall, (laid, fall - stand), asked),
    )


STEP = StepDefinition(
    operation="notched_lapel",
    version=1,
    kind="style",
    phase="derived",
    title="Notched lapel",
    sentence="breaks {breaks} below the neck on {edge}, lapel {lapel}, stand {stand}, fall {fall}",
    parameters=NotchedLapelParameters,
    run=run,
)
"""The step."""
