"""A roll collar in one piece: it stands up from the neck and falls over, and can be worn open or closed.

It is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Finding, Pattern, piece_name
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.collar_neck import BEGINS_BY, center_notes, collar_neck, settled
from notchbook.style.collars.curves import bent_edge
from notchbook.style.collars.fall import fall_bend
from notchbook.style.collars.figures import STAND_HEIGHT, UPPER_COLLAR_TURN
from notchbook.style.collars.laid_neck import LaidNeck, laid_if_it_lies, parallel_length
from notchbook.style.collars.notes import cover_notes, outer_edge_notes, unusual_notes
from notchbook.style.collars.outline import Front, FrontShape, collar_lines
from notchbook.style.collars.passing import head_notes
from notchbook.style.collars.stand import STRAIGHT
from notchbook.style.collars.two_layers import LayeredParameters, Layers, turn_within, with_two_layers


class RollCollarParameters(LayeredParameters):
    """The neck, how high the collar stands, how far it falls over, and its points."""

    stand: AmountText = "30 mm"
    """How high it stands at the center back."""
    fall: AmountText = "42 mm"
    """How far it falls over at the center back: the stand and 10 mm more at least."""
    drop: AmountText | None = None
    """How far the front of its neck edge lies below its back, drawn flat; empty: as far as its outer edge
    needs to lie on the garment."""
    front: FrontShape = "pointed"
    """With a point, or round."""
    point: AmountText = "75 mm"
    """How long the front edge is, from the neck to the point."""
    lean: AmountText = "15 mm"
    """How far the point reaches forward of a square one; below zero it is cut away."""


def run(pattern: Pattern, context: StepContext, parameters: RollCollarParameters) -> Change:
    """Draw the collar from the length of the neck, cut both layers and look at what it covers."""
    stand = context.positive(parameters.stand, "stand", "both")
    fall = context.positive(parameters.fall, "fall", "both")
    width = stand + fall
    turn = turn_within(context, parameters.turn, width)
    neck, beginning = collar_neck(pattern, context, parameters)
    straight, laid = STRAIGHT * neck.back, laid_if_it_lies(neck)
    drop = None if parameters.drop is None else context.mm(parameters.drop, "both")
    bend = fall_bend(neck.length, straight, width, (laid, fall - stand), drop)
    edge = bent_edge(neck.length, straight, bend)
    front = Front(parameters.front, context.positive(parameters.point, "point"), context.mm(parameters.lean))
    layers = Layers(
        *collar_lines(edge, width, front, turn),
        "collar",
        "Collar",
        roll=_roll(edge, stand),
    )
    after = with_two_layers(neck, context.slug, layers, parameters)
    notes = (
        *center_notes(piece_name(context.slug, "collar"), pattern, parameters, beginning),
        *_notes(context.slug, laid, (stand, fall), parallel_length(edge, width)),
        *head_notes(context, neck),
        *unusual_notes(
            piece_name(context.slug, "collar"),
            {"stand": (stand, STAND_HEIGHT), "turn": (turn, UPPER_COLLAR_TURN)},
        ),
    )
    is_bias = parameters.undercollar == "bias"
    grains = (piece_name(context.slug, "undercollar"),) if is_bias else ()
    return Change(after, splits=neck.splits, notes=notes, grains=grains)


def _roll(edge: Path, stand: float) -> Path:
    """Where the collar folds over: as high as it stands behind, running out at the front of the neck."""
    begin = Point(0.0, stand)
    ahead = (edge.end - begin).direction()
    return Path.of(curve_between(begin, 0.0, edge.end, 2.0 * ahead))


def _notes(slug: str, laid: LaidNeck | None, sizes: tuple[float, float], outer: float) -> tuple[Finding, ...]:
    stand, fall = sizes
    piece = piece_name(slug, "collar")
    return (
        *cover_notes(slug, piece, stand, fall),
        *outer_edge_notes(slug, piece, laid, outer, fall - stand),
    )


def settle(pattern: Pattern, context: StepContext, parameters: RollCollarParameters) -> RollCollarParameters:
    """Where the center lies and how the collar begins, looked up on this body."""
    return settled(pattern, context, parameters)


STEP = StepDefinition(
    operation="roll_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Roll collar",
    sentence="stands {stand}, falls {fall}, {front}, on {neck:{edge}}",
    parameters=RollCollarParameters,
    run=run,
    settle_on=settle,
    settles={"begins": BEGINS_BY},
)
"""The step."""
