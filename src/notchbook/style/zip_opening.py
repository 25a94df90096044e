"""An opening for a zip in a seam: a wider allowance and a notch where the zip stops."""

from notchbook.pattern import Allowance, Notch, Pattern, Place, locate, part_name, piece_name
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)


class ZipParameters(StepParameters):
    """The ``edge`` with the zip, the end from which it opens, and the ``length`` of the opening."""

    edge: EdgeName
    """The seam with the zip."""
    from_point: PointName
    """The end from which it opens."""
    length: AmountText = "18 cm"
    """How long the opening is."""


def run(pattern: Pattern, context: StepContext, parameters: ZipParameters) -> Change:
    """Write down the allowance for the zip and the notch at its stop; no shape changes."""
    length = context.positive(parameters.length, "length")
    stop = Place(parameters.edge, parameters.from_point, length)
    found = locate(pattern, stop)
    owner = piece_name(context.slug, last_word(found.piece))
    notch = Notch(part_name(owner, "zip_notch"), stop, purpose="zip stop")
    return Change(pattern.with_notches(notch).with_allowances({parameters.edge: Allowance("zip")}))


STEP = StepDefinition(
    operation="zip_opening",
    version=1,
    kind="cut",
    title="Zip opening",
    sentence="{length} at {edge}",
    parameters=ZipParameters,
    run=run,
)
