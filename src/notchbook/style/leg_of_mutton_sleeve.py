"""A leg-of-mutton sleeve: wide and high above the elbow, fitted below it.

Slashes run from the cap between the notches to the underarm seams, shut there; the innermost reach them near
the elbow, so that the lower arm stays as it was. Both seams keep their lengths and bend outward together.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import Pattern, sewn_length, spoken
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.figures import MUTTON_HEIGHT
from notchbook.style.sleeves.found import FoundSleeve, sleeve_found
from notchbook.style.sleeves.gathers import gathered_cap
from notchbook.style.sleeves.opened import opened_sleeve
from notchbook.style.sleeves.parameters import MOST_SLASHES
from notchbook.style.sleeves.slashes import cap_places, to_seams
from notchbook.style.sleeves.told import gathers_told, height_told

_ABOVE_ELBOW = 10.0
"""mm above the elbow at which the fullness has run out. Own judgment."""


class MuttonParameters(StepParameters):
    """The ``sleeve``, by how much its cap is wider and higher, and how far down the fullness reaches."""

    sleeve: Word = "sleeve"
    """The sleeve that is spread."""
    opens: AmountText = "24 cm"
    """By how much the cap is longer between its notches, before it is drawn higher."""
    cap_height: AmountText = MUTTON_HEIGHT.amount
    """By how much the cap is drawn higher."""
    reach: AmountText | None = None
    """How far below the underarm the fullness has run out; empty: just above the elbow."""
    slashes: Annotated[int, Field(ge=2, le=MOST_SLASHES)] = 4
    """At how many slashes each half is spread."""


def run(pattern: Pattern, context: StepContext, parameters: MuttonParameters) -> Change:
    """Spread the upper sleeve, raise its cap, gather it into the armhole."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    places = cap_places(sleeve, parameters.slashes)
    each = context.positive(parameters.opens, "opens") / len(places)
    depth = _depth(pattern, context, parameters, sleeve)
    lines = to_seams(pattern, sleeve, places, depth, [each] * len(places))
    opened = opened_sleeve(pattern, sleeve, lines, context.not_negative(parameters.cap_height, "cap_height"))
    taken = gathered_cap(pattern, context.slug, opened)
    notes = (
        *told_outside(STEP.operation, sleeve.piece.name, "cap_height", opened.raised, MUTTON_HEIGHT),
        *height_told(STEP.operation, opened),
        *gathers_told(STEP.operation, opened, taken, "cap"),
    )
    return Change(
        taken.pattern,
        splits=taken.splits,
        removals=taken.removals,
        asked={**opened.wider, **taken.asked},
        notes=notes,
    )


def _depth(
    pattern: Pattern, context: StepContext, parameters: MuttonParameters, sleeve: FoundSleeve
) -> float:
    """How far below the underarm the lowest slash ends, mm; StepRefused ``sleeve-reach`` beyond the seam."""
    seam = sleeve.name("front_seam")
    if parameters.reach is not None:
        depth = context.positive(parameters.reach, "reach")
    else:
        elbow = next((one for one in sleeve.piece.lines if one.name == sleeve.name("elbow_line")), None)
        if elbow is None:
            raise StepRefused("sleeve-no-elbow", sleeve=spoken(sleeve.piece.name))
        edge = sleeve.piece.edge(seam)
        depth = edge.length - edge.path.nearest(elbow.path.end).distance_along - _ABOVE_ELBOW
    whole = sewn_length(pattern, seam)
    if not 0.0 < depth < whole:
        raise StepRefused("sleeve-reach", reach=depth, seam=spoken(seam), length=whole)
    return depth


STEP = StepDefinition(
    operation="leg_of_mutton_sleeve",
    version=1,
    kind="style",
    title="Leg-of-mutton sleeve",
    sentence="{sleeve} {opens} wider at the cap, {cap_height} higher",
    parameters=MuttonParameters,
    run=run,
)
