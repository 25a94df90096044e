"""A shawl collar: lapel and collar in one, cut on the front and turned back at the roll line.

The facing and the upper collar are one piece too, larger by the turn of the cloth. It is derived: it follows
the finished front, so that it can never go stale.
"""

from notchbook.pattern import Operation, Pattern, part_name, piece_name
from notchbook.recipe import Change, StepContext, StepDefinition
from notchbook.style.collars.laid_neck import LaidNeck, laid_if_it_lies
from notchbook.style.collars.lapel_cut import lapel_name
from notchbook.style.collars.lapel_given import lapel_front
from notchbook.style.collars.lapel_lines import LapelSize
from notchbook.style.collars.lapel_made import LapelMaking
from notchbook.style.collars.lapel_notes import lapel_notes
from notchbook.style.collars.lapel_parameters import (
    LapelParameters,
    facing_size,
    operations,
    turn_of_lapel,
)
from notchbook.style.collars.neck import Neck, neck_of
from notchbook.style.collars.shawl_made import with_shawl
from notchbook.style.collars.swing import swing_of


class ShawlCollarParameters(LapelParameters):
    """The neck and front edge, how the collar turns, and how wide it is."""


def run(pattern: Pattern, context: StepContext, parameters: ShawlCollarParameters) -> Change:
    """Cut the shawl on, draw its facing, sew them together."""
    neck = neck_of(pattern, parameters.neck, parameters.shoulder)
    front = lapel_front(pattern, neck, parameters.edge, context.positive(parameters.breaks, "breaks", "both"))
    laid = laid_if_it_lies(neck)
    size = _size(context, parameters, neck, laid)
    making = LapelMaking(
        context.slug,
        turn_of_lapel(context, parameters),
        facing_size(context, parameters),
        parameters.interfaced,
    )
    cut = with_shawl(neck, front, size, making)
    facing = piece_name(context.slug, "facing")
    return Change(
        cut.pattern.with_operations(
            _stayed(context.slug, front.piece.name, facing), *operations(context.slug, (facing,), "facing")
        ),
        splits=cut.splits,
        removals=cut.removals,
        waves=dict.fromkeys((lapel_name(front), part_name(facing, "lapel")), 1),
        notes=lapel_notes((context.slug, facing), front, size, laid, making.turn),
        grains=(front.piece.name, facing),
    )


def _stayed(slug: str, front: str, facing: str) -> Operation:
    """The inner corners that are clipped into, strengthened before (common practice, no source)."""
    text = (
        "Stay the inner corners of front and facing where collar and shoulder meet, and clip into them when "
        "the shoulder is sewn."
    )
    return Operation(part_name(slug, "corner_stayed"), "prepare", text, (front, facing))


def _size(
    context: StepContext, parameters: ShawlCollarParameters, neck: Neck, laid: LaidNeck | None
) -> LapelSize:
    """The sizes of a shawl: it has no gorge and no notch."""
    stand = context.positive(parameters.stand, "stand", "both")
    fall = context.positive(parameters.fall, "fall", "both")
    asked = None if parameters.swing is None else context.mm(parameters.swing, "both")
    swing = swing_of(neck.back, stand + fall, (laid, fall - stand), asked)
    lapel = context.positive(parameters.lapel, "lapel")
    return LapelSize(stand, fall, lapel, 0.0, 0.0, 0.0, 0.0, 0.0, neck.back, swing)


STEP = StepDefinition(
    operation="shawl_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Shawl collar",
    sentence="breaks {breaks} below the neck on {edge}, {lapel} wide, stand {stand}, fall {fall}",
    parameters=ShawlCollarParameters,
    run=run,
)
"""The step."""
