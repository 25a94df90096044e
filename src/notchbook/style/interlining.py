"""Interlining: the shape of a piece in a layer for warmth or body, caught in its seams.

It is derived: it is made anew after the last shaping step, so that it can never go stale.
"""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Pattern
from notchbook.recipe import AmountText, Change, PieceName, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style.traced.layer import layered


class InterliningParameters(StepParameters):
    """The ``pieces`` that are interlined, and by how much the interlining is smaller."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """The pieces behind which it lies."""
    trimmed: AmountText = "0 cm"
    """How far inside the sew line it ends all round, the fold left out."""
    allowances: bool = True
    """Whether it keeps the allowances of the piece, to be caught in the seams."""
    material: Word = "interlining"
    """The material that it is cut in."""


def run(pattern: Pattern, context: StepContext, parameters: InterliningParameters) -> Change:
    """Copy the pieces in the material, trimmed."""
    trims = max(0.0, context.mm(parameters.trimmed)), parameters.allowances
    return Change(layered(pattern, context, parameters.pieces, ("interlining", parameters.material), trims))


STEP = StepDefinition(
    operation="interlining",
    version=1,
    kind="style",
    phase="derived",
    title="Interlining",
    sentence="{pieces}, trimmed by {trimmed}",
    parameters=InterliningParameters,
    run=run,
)
