"""The trousers block: front and back of a leg from the waist, or below it, to the hem.

Drafted from direct measures; what the hand does by trial (crotch extensions, slant of the back, depth of the
fork, darts, place of the side seam) is solved, so that waist, hip, crotch seam and side come out. The numbers
and their sources are in ``legs``, the pieces in ``trouser_pieces``.
"""

from dataclasses import replace
from typing import Any

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.trouser_pieces.draft_notes import draft_notes
from notchbook.blocks.trouser_pieces.drafting import draft_leg, settle_trousers
from notchbook.blocks.trouser_pieces.eases import usual_eases
from notchbook.blocks.trouser_pieces.joining import cut_data, trouser_seams
from notchbook.blocks.trouser_pieces.outline import draw_panel
from notchbook.blocks.trouser_pieces.parameters import TrousersParameters
from notchbook.blocks.trouser_pieces.promises import promises
from notchbook.blocks.trouser_pieces.trouser_measures import NEEDS, needs_for
from notchbook.pattern import Pattern, frozen_map
from notchbook.recipe import Change, StepContext, StepDefinition
from notchbook.units import TOLERANCES

REFUSES = (
    "trousers-crotch-short",
    "trousers-crotch-long",
    "trousers-crotch-unsettled",
    "trousers-hip-below-crotch",
    "trousers-waist-unreachable",
    "trousers-thigh-against-hip",
    "trousers-belly-unreachable",
    "trousers-crotch-flat",
    "trousers-knee-above-crotch",
    "trousers-hem-above-crotch",
    "trousers-inseam-unreachable",
    "trousers-side-short",
    "trousers-waist-drop",
    "trousers-sides-apart",
)
"""The codes with which the trousers refuse a body."""


def run(pattern: Pattern, context: StepContext, parameters: TrousersParameters) -> Change:
    """Draft the block into the pattern."""
    names = PanelNames(context.slug)
    drafted = draft_leg(context, parameters, names)
    least_mouth = 0.0 if parameters.narrow_darts == "sewn" else TOLERANCES.sew_length
    front = draw_panel(names, "front", drafted.half.front, least_mouth)
    back = draw_panel(names, "back", drafted.half.back, least_mouth)
    made = pattern.with_pieces(front.piece, back.piece)
    made = made.with_seams(*trouser_seams(names, drafted.half, drafted.given.inseam_stretch))
    made = cut_data(made, drafted)
    groups = frozen_map({**pattern.groups, **front.groups(context.step), **back.groups(context.step)})
    return Change(
        pattern=replace(made, groups=groups),
        expectations=promises(drafted),
        notes=tuple(draft_notes(drafted, context.measures.population)),
    )


def _as_drawn_before(parameters: dict[str, Any]) -> dict[str, Any]:
    """Trousers up to the fourth version sewed darts of any width; their inseam lay where the tape parted, or
    as near as it went."""
    return {**parameters, "narrow_darts": "sewn", "inseam_forward": "0 mm", "crotch_parts": "as_far"}


STEP = StepDefinition(
    operation="trousers",
    version=5,
    kind="block",
    title="Draft trousers",
    sentence="{silhouette}, {length} length",
    parameters=TrousersParameters,
    run=run,
    needs=NEEDS,
    settle=settle_trousers,
    needs_for=needs_for,
    eases=usual_eases,
    upcasters={1: dict, 2: dict, 3: dict, 4: _as_drawn_before},
    refuses=REFUSES,
)
