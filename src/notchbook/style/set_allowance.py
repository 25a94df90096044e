"""Set the seam allowance of edges: by a class of the house's table, or by a width of its own."""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Allowance, Pattern, require
from notchbook.recipe import (
    AllowanceClass,
    AmountText,
    Change,
    EdgeName,
    StepContext,
    StepDefinition,
    StepParameters,
)


class AllowanceParameters(StepParameters):
    """The ``edges``, the ``allowance_class`` of the house's table, and a ``width`` where it differs."""

    edges: Annotated[tuple[EdgeName, ...], Field(min_length=1)]
    """The edges that get this allowance."""
    allowance_class: AllowanceClass = "plain"
    """A row of the house table, such as plain, side, waist, facing_edge."""
    width: AmountText | None = None
    """A width of its own; empty takes the one of the house table."""


def run(pattern: Pattern, context: StepContext, parameters: AllowanceParameters) -> Change:
    """Write the allowance down for each edge or group; no shape changes."""
    for edge in parameters.edges:
        require(pattern, edge)
    width = None if parameters.width is None else context.mm(parameters.width)
    allowance = Allowance(parameters.allowance_class, width)
    return Change(pattern.with_allowances(dict.fromkeys(parameters.edges, allowance)))


STEP = StepDefinition(
    operation="set_allowance",
    version=1,
    kind="cut",
    title="Set allowance",
    sentence="{allowance_class} {width} at {edges}",
    parameters=AllowanceParameters,
    run=run,
)
