"""The dress block: bodice and skirt joined by a seam at the waist, or in one piece from shoulder to hem.

With a waist seam the skirt takes its waist from the bodice, panel by panel and dart under dart; without one
the dress is a torso down to its hem.
"""

from dataclasses import replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.drafting import (
    UPPER_REFUSES,
    LowerEnd,
    draft_upper,
    settle_upper,
    upper_change,
)
from notchbook.blocks.bodice_pieces.eases import usual_eases
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.blocks.bodice_pieces.upcasting import with_shoulder_as_measured
from notchbook.blocks.joined.hem_promise import hem_promise
from notchbook.blocks.joined.lengths import HemLength, hem_length
from notchbook.blocks.joined.needs import NEEDS, needs_for
from notchbook.blocks.joined.notes import length_notes, waist_notes
from notchbook.blocks.joined.one_piece import one_piece_change
from notchbook.blocks.joined.parameters import DressParameters
from notchbook.blocks.joined.settling import with_skirt_darts
from notchbook.blocks.joined.skirt_pieces import skirt_promises, waist_parts, with_skirt
from notchbook.blocks.joined.skirt_to_waist import SkirtGiven, draft_skirt, draft_with_shared_centers
from notchbook.blocks.skirts.halves import Half
from notchbook.errors import DraftRefused
from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext, StepDefinition

REFUSES = (
    *UPPER_REFUSES,
    "dress-skirt-unreachable",
    "skirt-darts-too-wide",
    "skirt-side-short",
    "hem-above-hip",
    "bust-dart-needs-a-waist-seam",
)
"""The codes with which the dress refuses."""


def settle(context: StepContext, parameters: DressParameters) -> DressParameters:
    """Write down every choice that was left to auto, on the base measures."""
    settled = settle_upper(context, parameters)
    if not parameters.has_waist_seam:
        return settled
    return with_skirt_darts(context, parameters, settled)


def run(pattern: Pattern, context: StepContext, parameters: DressParameters) -> Change:
    """Draft the block into the pattern."""
    hem = hem_length(context, parameters.length, parameters.own_length)
    if parameters.has_waist_seam:
        return _with_waist_seam(pattern, context, parameters, hem)
    return one_piece_change(pattern, context, parameters, hem)


def _with_waist_seam(
    pattern: Pattern, context: StepContext, parameters: DressParameters, hem: HemLength
) -> Change:
    end, names = LowerEnd(allowance_class=""), PanelNames(context.slug, "bodice")
    upper = draft_upper(context, parameters, names, end)
    half, lift = _skirt(context, parameters, upper)
    level = half.back.height - hem.length
    if level >= 0.0:
        raise DraftRefused("hem-above-hip", length=hem.length, hip_depth=half.back.height)
    change = upper_change(pattern, context, parameters, upper, end)
    below = PanelNames(context.slug, "skirt")
    return replace(
        change,
        pattern=with_skirt(change.pattern, context.step, upper, half, level, lift),
        expectations=(
            *change.expectations,
            *skirt_promises(upper, half),
            hem_promise(below, hem.length),
        ),
        notes=(*change.notes, *waist_notes(upper, half), *length_notes(below, hem)),
    )


def _skirt(context: StepContext, parameters: DressParameters, upper: Drafted) -> tuple[Half, float]:
    """The skirt of this side, and how far it is lifted, mm; where the two sides differ, both get the same
    waist at the centers."""
    own = _given(upper)
    if context.sides_are_alike():
        return draft_skirt(own), 0.0
    beside = replace(context, side="left" if context.side == "right" else "right")
    other = _given(draft_upper(beside, parameters, upper.names, LowerEnd(allowance_class="")))
    half, centers = draft_with_shared_centers(own, other)
    return half, centers.lift(context.side)


def _given(upper: Drafted) -> SkirtGiven:
    hip = upper.measures.hip
    assert hip is not None  # a dress reaches the hip
    return SkirtGiven(hip.hip, hip.hip_depth, waist_parts(upper.front), waist_parts(upper.back))


STEP = StepDefinition(
    operation="dress",
    version=3,
    kind="block",
    title="Draft dress",
    sentence="{silhouette}, bust dart {bust_dart}, to the {length}, at the waist: {waist_seam}",
    parameters=DressParameters,
    run=run,
    upcasters={1: dict, 2: with_shoulder_as_measured},
    needs=NEEDS,
    settle=settle,
    needs_for=needs_for,
    eases=usual_eases,
    refuses=REFUSES,
    stands_for=("bodice",),
)
