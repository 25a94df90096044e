"""A shirt collar: a stand with an overlap for its button, and a fall that covers the neck seam.

The fall is bent the other way than the stand, so that its outer edge is long enough to lie on the garment. It
is derived: it is drawn anew after the last shaping step, so that it always fits its neck.
"""

from notchbook.pattern import (
    EdgeUse,
    Finding,
    Notch,
    Operation,
    Pattern,
    Place,
    Seam,
    part_name,
    piece_name,
)
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition
from notchbook.style.collars.collar_neck import BEGINS_BY, center_notes, collar_neck, overlap_of, settled
from notchbook.style.collars.curves import bend_for_rise, bent_edge
from notchbook.style.collars.fall import fall_bend
from notchbook.style.collars.figures import SHIRT_STAND, STAND_RISE, UPPER_COLLAR_TURN
from notchbook.style.collars.laid_neck import LaidNeck, laid_if_it_lies, parallel_length
from notchbook.style.collars.neck import Neck
from notchbook.style.collars.notes import cover_notes, neck_tight_notes, outer_edge_notes, unusual_notes
from notchbook.style.collars.outline import Front, collar_lines
from notchbook.style.collars.passing import head_notes
from notchbook.style.collars.pieces import Layer, center_seam, collar_sides, layer_piece
from notchbook.style.collars.sewing import outer_seam
from notchbook.style.collars.stand import STRAIGHT, StandGiven, StandLines, stand_lines, upper_corner
from notchbook.style.collars.stand_button import button_of, buttoned
from notchbook.style.collars.two_layers import LayeredParameters, Layers, outer_run, turn_within
from notchbook.style.collars.two_stands import StandMaking, StandNames, with_ends_sewn, with_stand


class ShirtCollarParameters(LayeredParameters):
    """The neck, the stand with its overlap, and the fall with its points."""

    stand: AmountText = SHIRT_STAND.amount
    """How high the stand is."""
    overlap: AmountText = "15 mm"
    """How far the stand goes on beyond the center front, for its button."""
    button: AmountText = "11 mm"
    """Diameter of that button; the hole is 3 mm longer."""
    rise: AmountText = STAND_RISE.amount
    """How much higher the front of the stand lies than its back, drawn flat."""
    fall: AmountText = "40 mm"
    """How wide the fall is at the center back: the stand and 8 to 10 mm more, to cover the neck seam."""
    drop: AmountText | None = None
    """How far the front of the fall's inner edge lies below its back, drawn flat; empty: as far as its outer
    edge needs to lie on the garment."""
    point: AmountText = "70 mm"
    """How long the front edge of the fall is, from the stand to the point."""
    lean: AmountText = "15 mm"
    """How far the point reaches forward of a square one: more brings the points together, less spreads
    them, below zero is cut away."""


def run(pattern: Pattern, context: StepContext, parameters: ShirtCollarParameters) -> Change:
    """Draw stand and fall, cut both layers of each and look at what the fall covers."""
    height = context.positive(parameters.stand, "stand", "both")
    fall = context.positive(parameters.fall, "fall", "both")
    turn = turn_within(context, parameters.turn, fall)
    neck, beginning = collar_neck(pattern, context, parameters, overlap_of(context, parameters.overlap))
    straight = STRAIGHT * neck.back
    rise = context.mm(parameters.rise, "both")
    rising = bend_for_rise(neck.length, straight, rise)
    lines = stand_lines(
        StandGiven(neck.length, straight, height, rising, "round", beginning.beyond, beginning.overlap)
    )
    names = StandNames("stand", "Collar stand", "inner_stand", "Inner collar stand", is_closed=False)
    button = button_of(context.positive(parameters.button, "button"))
    making = StandMaking(beginning.sewn, button, parameters.interfaced)
    after = with_stand(neck, context.slug, lines, names, making)
    laid = laid_if_it_lies(neck, beginning.sewn)
    layers = _fall_layers(context, parameters, (neck, laid), lines, (height, fall, turn))
    after = _with_fall(after, context.slug, layers, lines, parameters)
    after = with_ends_sewn(after, context.slug, lines, names)
    asked = {
        "stand": (height, SHIRT_STAND),
        "rise": (rise, STAND_RISE),
        "turn": (turn, UPPER_COLLAR_TURN),
    }
    return Change(
        after.with_operations(*_operations(context.slug), *buttoned(context.slug, lines)),
        splits=neck.splits,
        notes=(
            *center_notes(piece_name(context.slug, "stand"), pattern, parameters, beginning),
            *_notes(context, neck, lines, (layers, laid), (height, fall)),
            *unusual_notes(piece_name(context.slug, "stand"), asked),
        ),
        grains=(piece_name(context.slug, "undercollar"),) if parameters.undercollar == "bias" else (),
    )


def _fall_layers(
    context: StepContext,
    parameters: ShirtCollarParameters,
    drawn_on: tuple[Neck, LaidNeck | None],
    lines: StandLines,
    sizes: tuple[float, float, float],
) -> Layers:
    """The fall: its inner edge as long as the upper edge of the stand; ``sizes``: stand, fall and turn of the
    cloth, mm."""
    height, width, turn = sizes
    neck, laid = drawn_on
    edge = lines.upper.length
    straight = STRAIGHT * neck.back * edge / neck.length
    drop = None if parameters.drop is None else context.mm(parameters.drop, "both")
    bend = fall_bend(edge, straight, width, (laid, width - height), drop)
    inner = bent_edge(edge, straight, bend)
    front = Front("pointed", context.positive(parameters.point, "point"), context.mm(parameters.lean))
    return Layers(*collar_lines(inner, width, front, turn), "fall", "Collar fall")


def _with_fall(
    pattern: Pattern, slug: str, layers: Layers, lines: StandLines, parameters: ShirtCollarParameters
) -> Pattern:
    """The pattern with both layers of the fall, sewn to each other and into the stand, which is notched where
    the fall begins: there its edge runs on without a corner."""
    fusible = ("self", "fusible") if parameters.interfaced else ("self",)
    is_bias = parameters.undercollar == "bias"
    named = Layer("undercollar", "Undercollar", grain=parameters.undercollar, on_fold=not is_bias)
    under = layer_piece(slug, named, collar_sides(layers.under, on_fold=not is_bias, word="stand"))
    upper = layer_piece(
        slug,
        Layer("fall", layers.title, fusible, reflected=True),
        collar_sides(layers.upper, on_fold=True, word="stand"),
    )
    after = pattern.with_pieces(under, upper)
    after = after.with_seams(outer_seam(after, slug, (under.name, upper.name), outer_run(layers)))
    for piece, stand, word in ((under, "stand", "fall"), (upper, "inner_stand", "upper_fall")):
        own = (EdgeUse(part_name(piece.name, "stand"), part_name(piece.name, "neck_end")),)
        mate_name = piece_name(slug, stand)
        mate = (EdgeUse(part_name(mate_name, "upper"), part_name(mate_name, upper_corner(lines))),)
        after = after.with_seams(Seam(part_name(slug, word), own, mate, 0.0, "collar_edge", TURNED_SEAM))
        begins = Place(mate[0].edge, mate[0].starts_at, 0.0)
        after = after.with_notches(Notch(part_name(mate[0].edge, "fall_notch"), begins, purpose="fall"))
    return after.with_seams(center_seam(slug, under.name, "nape")) if is_bias else after


def _operations(slug: str) -> tuple[Operation, ...]:
    """What is done to the collar beside its seams."""
    fall = (piece_name(slug, "fall"), piece_name(slug, "undercollar"))
    stand = (piece_name(slug, "stand"), piece_name(slug, "inner_stand"))
    turned = Operation(
        part_name(slug, "turned"),
        "prepare",
        "Trim and turn the fall, roll its seam to the under side, press and topstitch its edges.",
        at=fall,
        after=(part_name(slug, "outer"),),
    )
    closed = Operation(
        part_name(slug, "closed"),
        "neck",
        "Turn the stand, fold the neck edge of the inner stand in and edge-stitch it over the neck seam.",
        at=stand,
        after=(part_name(slug, "neck"), part_name(slug, "stand_end")),
    )
    return turned, closed


def _notes(
    context: StepContext,
    neck: Neck,
    lines: StandLines,
    drawn: tuple[Layers, LaidNeck | None],
    sizes: tuple[float, float],
) -> tuple[Finding, ...]:
    """What the fall covers, whether its outer edge is long enough, and whether the stand closes."""
    height, width = sizes
    slug, fall = context.slug, piece_name(context.slug, "fall")
    layers, laid = drawn
    outer = parallel_length(layers.under.neck, width)
    return (
        *cover_notes(slug, fall, height, width),
        *outer_edge_notes(slug, fall, laid, outer, width - height),
        *neck_tight_notes(piece_name(slug, "stand"), context, lines.top),
        *head_notes(context, neck),
    )


def settle(
    pattern: Pattern, context: StepContext, parameters: ShirtCollarParameters
) -> ShirtCollarParameters:
    """Where the center lies and how the stand begins, looked up on this body."""
    return settled(pattern, context, parameters, overlap_of(context, parameters.overlap))


STEP = StepDefinition(
    operation="shirt_collar",
    version=1,
    kind="style",
    phase="derived",
    title="Shirt collar",
    sentence="stand {stand}, fall {fall}, point {point} on {neck:{edge}}, overlap {overlap}",
    parameters=ShirtCollarParameters,
    run=run,
    settle_on=settle,
    settles={"begins": (*BEGINS_BY, "overlap")},
)
"""The step."""
