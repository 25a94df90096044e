"""The torso block: bodice and hip in one piece per panel, with darts that have two points.

The same numbers as a bodice to the hip; it may be longer, and is then a shift. How the waist is shared
between darts and sides is chosen so that the side runs fair from chest to hip.
"""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.drafting import (
    UPPER_REFUSES,
    LowerEnd,
    draft_upper,
    settle_upper,
    upper_change,
)
from notchbook.blocks.bodice_pieces.eases import usual_eases
from notchbook.blocks.bodice_pieces.upcasting import with_shoulder_as_measured
from notchbook.blocks.joined.lengths import HemLength, hem_length
from notchbook.blocks.joined.needs import NEEDS, needs_for
from notchbook.blocks.joined.one_piece import one_piece_change
from notchbook.blocks.joined.parameters import TorsoParameters
from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext, StepDefinition

REFUSES = (*UPPER_REFUSES, "skirt-side-short", "hem-above-hip", "bust-dart-needs-a-waist-seam")
"""The codes with which the torso refuses."""


def settle(context: StepContext, parameters: TorsoParameters) -> TorsoParameters:
    """Write down every choice that was left to auto, on the base measures."""
    return settle_upper(context, parameters)


def run(pattern: Pattern, context: StepContext, parameters: TorsoParameters) -> Change:
    """Draft the block into the pattern."""
    hem = _hem(context, parameters)
    if hem is not None:
        return one_piece_change(pattern, context, parameters, hem)
    end = LowerEnd()
    drafted = draft_upper(context, parameters, PanelNames(context.slug), end)
    return upper_change(pattern, context, parameters, drafted, end)


def _hem(context: StepContext, parameters: TorsoParameters) -> HemLength | None:
    """Where the hem lies; None where it ends at the hip."""
    if parameters.length == "hip":
        if parameters.own_length is None:
            return None
        return HemLength(context.positive(parameters.own_length, "own_length", "both"))
    return hem_length(context, parameters.length, parameters.own_length)


STEP = StepDefinition(
    operation="torso",
    version=3,
    kind="block",
    title="Draft torso",
    sentence="{silhouette}, bust dart {bust_dart}, to the {length}",
    parameters=TorsoParameters,
    run=run,
    upcasters={1: dict, 2: with_shoulder_as_measured},
    needs=NEEDS,
    settle=settle,
    needs_for=needs_for,
    eases=usual_eases,
    refuses=REFUSES,
    stands_for=("bodice",),
)
