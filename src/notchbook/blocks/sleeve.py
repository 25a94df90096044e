"""The set-in sleeve: drafted into the armhole of a bodice as it stands finished in the pattern.

Both sides of the cap are as long as their side of the armhole with its ease; the ease lies between the
balance notches and 20 mm before the shoulder seam; the lower cap is drawn as the lower armhole is. The
numbers and their sources are in ``set_in``, the piece in ``sleeve_pieces``.
"""

from dataclasses import replace

from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.full_arm import with_room
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.blocks.sleeve_pieces.cures import cures_of
from notchbook.blocks.sleeve_pieces.draft_notes import Drafted, draft_notes
from notchbook.blocks.sleeve_pieces.eases import usual_eases
from notchbook.blocks.sleeve_pieces.fabrics import fabric_rows
from notchbook.blocks.sleeve_pieces.joining import sleeve_cut_data, sleeve_seams
from notchbook.blocks.sleeve_pieces.outline import draw_sleeve, sleeve_groups
from notchbook.blocks.sleeve_pieces.parameters import SleeveParameters
from notchbook.blocks.sleeve_pieces.promises import promises
from notchbook.blocks.sleeve_pieces.sewn_armhole import sewn_armhole
from notchbook.blocks.sleeve_pieces.sleeve_measures import (
    NEEDS,
    arm_read,
    cap_ease,
    most_given_way,
    needs_for,
    sleeve_given,
)
from notchbook.errors import DraftRefused
from notchbook.pattern import Pattern, frozen_map
from notchbook.recipe import Change, StepContext, StepDefinition

REFUSES = (
    "sleeve-fabric-not-named",
    "sleeve-no-bodice",
    "sleeve-no-balance-notch",
    "sleeve-arm-too-full",
    "sleeve-arm-beyond-armhole",
    "sleeve-arm-too-thin",
    "sleeve-armhole-uneven",
    "sleeve-cap-not-reached",
    "sleeve-too-short",
    "sleeve-elbow-out-of-reach",
)
"""The codes with which the sleeve refuses."""


def run(pattern: Pattern, context: StepContext, parameters: SleeveParameters) -> Change:
    """Draft the sleeve into the pattern."""
    cap_ease(context, parameters)  # what must be said is asked for before anything else
    armhole = sewn_armhole(pattern, parameters.bodice)
    arm = arm_read(context, parameters)
    asked = sleeve_given(context, parameters, armhole.given, arm)
    given = with_room(asked, most_given_way(context, parameters))
    half = _half(context, parameters, given)
    slug = context.slug
    drafted = pattern.with_pieces(draw_sleeve(slug, half))
    drafted = drafted.with_seams(*sleeve_seams(slug, armhole, given, half))
    groups = frozen_map({**pattern.groups, **sleeve_groups(slug, context.step, half)})
    drafted = sleeve_cut_data(replace(drafted, groups=groups), slug, given, half, armhole)
    return Change(
        pattern=drafted,
        expectations=promises(slug, given, half, arm),
        notes=draft_notes(Drafted(slug, parameters.bodice, given, half, arm), _fabric_range(parameters)),
    )


def _fabric_range(parameters: SleeveParameters) -> tuple[float, float] | None:
    """The usual cap ease of the cloth, mm; for a cap ease that was given without one, that of all cloths."""
    rows = fabric_rows()
    if parameters.cap_ease is None:
        return None
    named = rows.values() if parameters.fabric is None else (rows[parameters.fabric],)
    return min(row.least for row in named), max(row.most for row in named)


def _half(context: StepContext, parameters: SleeveParameters, given: SleeveGiven) -> SleeveHalf:
    """The numbers; a refusal that another value would heal carries its cure."""
    try:
        half = draft_sleeve(given)
    except DraftRefused as refused:
        ease = context.mm(parameters.upper_arm_ease) - given.gave_way
        cures = cures_of(refused, context.slug, parameters.bodice, ease)
        if not cures:
            raise
        raise DraftRefused(refused.code, **{**refused.facts, "cures": cures}) from refused
    if given.back_ease > 0.0 and half.elbow_line is None:
        raise DraftRefused(
            "sleeve-elbow-out-of-reach",
            elbow=given.elbow_length or 0.0,
            length=half.crown.y - half.hem_middle.y,
        )
    return half


STEP = StepDefinition(
    operation="sleeve",
    version=2,
    kind="block",
    title="Draft sleeve",
    sentence="set into {bodice}, {length}, upper arm ease {upper_arm_ease}",
    parameters=SleeveParameters,
    run=run,
    upcasters={1: dict},
    needs=NEEDS,
    needs_for=needs_for,
    drafted_with=("bodice",),
    eases=usual_eases,
    refuses=REFUSES,
)
