"""A notch in the middle of a hem, where the hem is folded in half to be marked."""

from notchbook.pattern import Notch, Pattern, Place, locate, part_name, piece_name
from notchbook.pattern.names import last_word
from notchbook.recipe import Change, EdgeName, PointName, StepContext, StepDefinition, StepParameters


class HemNotchParameters(StepParameters):
    """The ``hem`` and the end from which its middle is counted."""

    hem: EdgeName
    from_point: PointName


def run(pattern: Pattern, context: StepContext, parameters: HemNotchParameters) -> Change:
    """Write the notch down; no shape changes."""
    middle = Place(parameters.hem, parameters.from_point, 0.5, "fraction")
    owner = piece_name(context.slug, last_word(locate(pattern, middle).piece))
    notch = Notch(part_name(owner, "hem_notch"), middle, purpose="middle of hem")
    return Change(pattern.with_notches(notch))


STEP = StepDefinition(
    operation="hem_notch",
    version=1,
    kind="cut",
    title="Hem notch",
    sentence="in the middle of {hem}",
    parameters=HemNotchParameters,
    run=run,
)
