"""Draw a dart with two points inside a piece, widest at the waist, along the grain.

It takes up width where the piece is narrow and nothing at its two ends. The seams round the piece do not
change: only what is measured across it does.
"""

from notchbook.errors import InputError
from notchbook.geometry import Point
from notchbook.pattern import InnerDart, Located, Pattern, Piece, locate, part_name, piece_name, spoken
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
    Word,
)
from notchbook.style.darts.double_ended import DoubleShape, require_inside, with_double
from notchbook.style.darts.ends import edge_word

_FROM_SIDE = ("side_seam", "armhole")
"""Edges toward the wearer's side: a dart placed from one of them has its side leg there."""


class DoubleEndedDartParameters(StepParameters):
    """Where the middle of the dart lies, how wide it is there, and how far it reaches up and down."""

    at: PlaceParameters
    """A place on an edge, at the level where the dart is widest, such as the waist on the center."""
    inside: AmountText
    """How far inside that edge, square to it, the middle of the dart lies."""
    width: AmountText = "25 mm"
    """How much it takes up at its widest."""
    above: AmountText = "140 mm"
    """How far it reaches up from there, along the grain."""
    below: AmountText = "120 mm"
    """How far it reaches down from there."""
    word: Word = "waist_dart"
    """What the dart is called in names."""


def run(pattern: Pattern, context: StepContext, parameters: DoubleEndedDartParameters) -> Change:
    """Draw the dart; StepRefused ``double-dart-outside``."""
    found = locate(pattern, context.place(pattern, parameters.at))
    piece = pattern.pieces[found.piece]
    owner = piece_name(context.slug, last_word(piece.name))
    name = part_name(owner, parameters.word)
    if name in pattern.index:
        raise InputError("dart-word-twice", dart=spoken(name))
    dart = InnerDart(
        name,
        center_leg=part_name(name, "center_leg"),
        side_leg=part_name(name, "side_leg"),
        upper_point=part_name(name, "upper_point"),
        lower_point=part_name(name, "lower_point"),
    )
    shape = _shape(context, parameters, piece, found)
    require_inside(piece, name, shape)
    return Change(pattern.with_pieces(with_double(piece, dart, shape)))


def _shape(
    context: StepContext, parameters: DoubleEndedDartParameters, piece: Piece, found: Located
) -> DoubleShape:
    inward = found.edge.path.tangent_at(found.distance).perpendicular()
    middle = found.position + inward * context.positive(parameters.inside, "inside")
    up = Point(1.0, 0.0).rotated(piece.grain.degrees)
    across = up.perpendicular()
    away = across if across.dot(inward) > 0.0 else -across
    half = context.positive(parameters.width, "width") / 2.0
    near, far = middle - away * half, middle + away * half
    if edge_word(found.edge.name) in _FROM_SIDE:
        near, far = far, near
    return DoubleShape(
        upper=middle + up * context.positive(parameters.above, "above"),
        lower=middle - up * context.positive(parameters.below, "below"),
        center=near,
        side=far,
    )


STEP = StepDefinition(
    operation="double_ended_dart",
    version=1,
    kind="style",
    title="Double-ended dart",
    sentence="{width} wide, {inside} inside {at}",
    parameters=DoubleEndedDartParameters,
    run=run,
)
