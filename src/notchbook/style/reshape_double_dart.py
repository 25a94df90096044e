"""Make darts with two points wider or narrower, longer or shorter; where they lie stays."""

from typing import Annotated

from pydantic import Field

from notchbook.errors import InputError
from notchbook.pattern import InnerDart, Pattern, require_one
from notchbook.recipe import AmountText, Change, InnerDartName, StepContext, StepDefinition, StepParameters
from notchbook.style.darts.double_ended import DoubleShape, require_inside, with_double


class ReshapeDoubleDartParameters(StepParameters):
    """The ``darts`` and what changes; what is left empty stays."""

    darts: Annotated[tuple[InnerDartName, ...], Field(min_length=1)]
    """The darts with two points that change."""
    width: AmountText | None = None
    """How much each takes up at its widest."""
    above: AmountText | None = None
    """How far it reaches up from its mouth."""
    below: AmountText | None = None
    """How far it reaches down from its mouth."""


def run(pattern: Pattern, context: StepContext, parameters: ReshapeDoubleDartParameters) -> Change:
    """Change every dart; all or nothing. StepRefused ``double-dart-outside``."""
    width = None if parameters.width is None else context.mm(parameters.width)
    if width is not None and width < 0.0:
        raise InputError("amount-not-positive", field="width", amount=parameters.width, value=width)
    above = None if parameters.above is None else context.positive(parameters.above, "above")
    below = None if parameters.below is None else context.positive(parameters.below, "below")
    for name in parameters.darts:
        dart = _dart(pattern, require_one(pattern, name, "inner_dart"))
        piece = pattern.piece_of(dart.name)
        shape = DoubleShape.of(piece, dart).changed(width, above, below)
        require_inside(piece, dart.name, shape)
        pattern = pattern.with_pieces(with_double(piece, dart, shape))
    return Change(pattern)


def _dart(pattern: Pattern, name: str) -> InnerDart:
    return next(dart for dart in pattern.piece_of(name).inner_darts if dart.name == name)


STEP = StepDefinition(
    operation="reshape_double_dart",
    version=1,
    kind="style",
    title="Reshape double-ended dart",
    sentence="{darts}, {width} wide, {above} up, {below} down",
    parameters=ReshapeDoubleDartParameters,
    run=run,
)
