"""Set how a hem is finished: how deep it is turned up, and how much is turned under.

The allowance at its ends is the reflection of the piece above the hem, so that a hem on a slanted seam lies
flat when it is turned up.
"""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Allowance, Pattern, require
from notchbook.pattern.cut import CornerStyle
from notchbook.recipe import (
    AllowanceClass,
    AmountText,
    Change,
    EdgeName,
    StepContext,
    StepDefinition,
    StepParameters,
)


class HemParameters(StepParameters):
    """The ``hems``, their ``depth`` and what is turned under, or a row of the house's table."""

    hems: Annotated[tuple[EdgeName, ...], Field(min_length=1)]
    """The hems that are set."""
    hem_class: AllowanceClass = "hem"
    """A row of the house table, such as hem_dress or hem_trousers."""
    depth: AmountText | None = None
    """How deep the hem is turned up; empty takes the depth of the house table."""
    turn_under: AmountText = "0 cm"
    """How much is turned under besides, where a depth is given."""


def run(pattern: Pattern, context: StepContext, parameters: HemParameters) -> Change:
    """Write allowance and corners down for each hem; no shape changes."""
    width = None
    if parameters.depth is not None:
        width = context.positive(parameters.depth, "depth") + context.mm(parameters.turn_under)
    corners: dict[str, CornerStyle] = {}
    for hem in parameters.hems:
        edges = [pattern.edges[member] for member in require(pattern, hem)]
        corners |= {edges[0].start: "folded", edges[-1].end: "folded"}
    allowance = Allowance(parameters.hem_class, width)
    after = pattern.with_allowances(dict.fromkeys(parameters.hems, allowance))
    return Change(after.with_corners(corners))


STEP = StepDefinition(
    operation="set_hem",
    version=1,
    kind="cut",
    title="Set hem",
    sentence="{depth} {hem_class} at {hems}, turned under by {turn_under}",
    parameters=HemParameters,
    run=run,
)
