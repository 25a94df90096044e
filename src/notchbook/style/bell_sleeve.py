"""A bell sleeve: hinged at its cap and flared at its hem, which hangs free.

The cap keeps its length and lies lower, which is told.
"""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Allowance, Pattern, sewn_length
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style.sleeves.found import sleeve_found
from notchbook.style.sleeves.hems import hem_class
from notchbook.style.sleeves.opened import opened_sleeve
from notchbook.style.sleeves.parameters import MOST_SLASHES
from notchbook.style.sleeves.slashes import cap_places, to_hem
from notchbook.style.sleeves.told import height_told


class BellParameters(StepParameters):
    """The ``sleeve`` and by how much its hem is wider."""

    sleeve: Word = "sleeve"
    """The sleeve that is flared."""
    flare: AmountText = "16 cm"
    """By how much the hem is wider, shared evenly over it."""
    slashes: Annotated[int, Field(ge=2, le=MOST_SLASHES)] = 4
    """At how many slashes each half is spread."""


def run(pattern: Pattern, context: StepContext, parameters: BellParameters) -> Change:
    """Spread the sleeve at its hem, hinged at its cap between the notches."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    flare = context.positive(parameters.flare, "flare")
    places = cap_places(sleeve, parameters.slashes)
    each = flare / len(places)
    lines = to_hem(pattern, sleeve, places, [(0.0, each)] * len(places))
    opened = opened_sleeve(pattern, sleeve, lines)
    hem = sleeve.name("hem")
    after = opened.pattern.with_allowances({hem: Allowance(hem_class(opened.piece.edge(hem).path))})
    grown = sewn_length(after, hem) - sewn_length(pattern, hem)
    return Change(
        after,
        asked={**opened.wider, hem: grown},
        waves={hem: 2},
        notes=tuple(height_told(STEP.operation, opened)),
    )


STEP = StepDefinition(
    operation="bell_sleeve",
    version=1,
    kind="style",
    title="Bell sleeve",
    sentence="{sleeve} {flare} wider at its hem",
    parameters=BellParameters,
    run=run,
)
