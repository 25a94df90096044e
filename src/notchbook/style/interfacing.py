"""Interfacing: the shape of a piece or a facing in fusible, without allowances or trimmed by so much.

It is derived: it is made anew after the last shaping step, so that it can never go stale.
"""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Pattern
from notchbook.recipe import AmountText, Change, PieceName, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style.traced.layer import layered


class InterfacingParameters(StepParameters):
    """The ``pieces`` that are interfaced, and by how much the interfacing is smaller."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """The pieces or facings behind which it lies."""
    trimmed: AmountText = "0 cm"
    """How far inside the sew line it ends all round, the fold left out."""
    allowances: bool = False
    """Whether it keeps the allowances of the piece, to be caught in the seams."""
    material: Word = "fusible"
    """The material that it is cut in."""


def run(pattern: Pattern, context: StepContext, parameters: InterfacingParameters) -> Change:
    """Copy the pieces in the material, trimmed."""
    trims = max(0.0, context.mm(parameters.trimmed)), parameters.allowances
    return Change(layered(pattern, context, parameters.pieces, ("interfacing", parameters.material), trims))


STEP = StepDefinition(
    operation="interfacing",
    version=1,
    kind="style",
    phase="derived",
    title="Interfacing",
    sentence="{pieces}, trimmed by {trimmed}",
    parameters=InterfacingParameters,
    run=run,
)
