"""The bodice block: front and back from the neck to the waist or the hip, with or without bust shaping.

Drafted from direct measures; what the hand does by trial (neck, bust dart, waist darts, armhole, place of
the side seam) is solved, so that every girth and length comes out. The numbers and their sources are in
``upper``, the pieces in ``bodice_pieces``.
"""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.bodice_measures import NEEDS, needs_for
from notchbook.blocks.bodice_pieces.drafting import (
    TOP_HEM,
    UPPER_REFUSES,
    LowerEnd,
    draft_upper,
    settle_upper,
    upper_change,
)
from notchbook.blocks.bodice_pieces.eases import usual_eases
from notchbook.blocks.bodice_pieces.parameters import BodiceParameters
from notchbook.blocks.bodice_pieces.upcasting import with_shoulder_as_measured
from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext, StepDefinition


def settle(context: StepContext, parameters: BodiceParameters) -> BodiceParameters:
    """Write down every choice that was left to auto, on the base measures."""
    return settle_upper(context, parameters)


def run(pattern: Pattern, context: StepContext, parameters: BodiceParameters) -> Change:
    """Draft the block into the pattern."""
    end = LowerEnd(allowance_class="waist" if parameters.has_waist_seam else TOP_HEM)
    drafted = draft_upper(context, parameters, PanelNames(context.slug), end)
    return upper_change(pattern, context, parameters, drafted, end)


STEP = StepDefinition(
    operation="bodice",
    version=3,
    kind="block",
    title="Draft bodice",
    sentence="{silhouette}, bust dart {bust_dart}, to the {length}",
    parameters=BodiceParameters,
    run=run,
    upcasters={1: dict, 2: with_shoulder_as_measured},
    needs=NEEDS,
    settle=settle,
    needs_for=needs_for,
    eases=usual_eases,
    refuses=UPPER_REFUSES,
)
