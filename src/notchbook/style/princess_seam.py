"""Princess seam: darts become one seam from shoulder or armhole through to waist or hem.

The seam runs over the bust point: the dart below it is taken in by its legs, another dart, such as the one
at the side, is closed into the seam. Center panel and side panel each get a fair edge; the side panel is
longer by the ease, which lies between two notches 5 cm above and below the bust point. On a back the seam
runs from a place or the shoulder dart to the waist dart, point to point.
"""

from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext, StepDefinition
from notchbook.style.lines.princess_given import given_princess
from notchbook.style.lines.princess_panels import princess_change, princess_shapes
from notchbook.style.lines.princess_parameters import PrincessParameters


def run(pattern: Pattern, context: StepContext, parameters: PrincessParameters) -> Change:
    """Cut the seam, close the darts, draw both edges fair."""
    given = given_princess(pattern, context, parameters)
    shapes = princess_shapes(given, context.mm(parameters.ease))
    return princess_change(pattern, context, given, shapes)


STEP = StepDefinition(
    operation="princess_seam",
    version=2,
    kind="style",
    title="Princess seam",
    sentence=(
        "from {start} {upper_dart} to {end} {waist_dart}, through {inner_dart}, closing "
        "{closed_dart}, {ease} ease over the bust"
    ),
    parameters=PrincessParameters,
    run=run,
    upcasters={1: dict},
)
