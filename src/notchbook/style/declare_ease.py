"""Declare the ease of a seam: by how much its second side is meant to be longer than its first.

No shape changes. What is declared is measured on every run; more than the cloth can take stays a finding.
"""

from dataclasses import replace

from notchbook.pattern import Pattern
from notchbook.pattern.seam import Gives
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import SeamName
from notchbook.style.truing.found import found_seam


class DeclareEaseParameters(StepParameters):
    """The ``seam``, its ``ease`` and which side ``gives``."""

    seam: SeamName
    """The seam."""
    ease: AmountText
    """How much longer the second side is meant to be than the first; with a minus shorter."""
    gives: Gives = "longer"
    """Whether the longer side is eased in, or the shorter one stretched onto it."""


def run(pattern: Pattern, context: StepContext, parameters: DeclareEaseParameters) -> Change:
    """Write the ease on the seam; where it was to lie between two notches it still does."""
    seam = found_seam(pattern, parameters.seam)
    ease = context.mm(parameters.ease)
    return Change(pattern.with_seams(replace(seam, ease=ease, gives=parameters.gives)))


STEP = StepDefinition(
    operation="declare_ease",
    version=1,
    kind="style",
    title="Declare ease",
    sentence="{ease} in {seam}",
    parameters=DeclareEaseParameters,
    run=run,
)
