"""Leggings of stretch cloth: each leg one piece with its inseam alone, or with a side seam too.

Widths and lengths follow the stretch of the cloth as it was tested. The reductions and their sources are in
``stretch_fabric``, the numbers in ``stretch``, the pieces in ``stretch_pieces``.
"""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch import LeggingsGiven, LeggingsLeg, draft_leggings
from notchbook.blocks.stretch_fabric.cloth import cloth_of
from notchbook.blocks.stretch_fabric.usual_eases import usual_eases_of
from notchbook.blocks.stretch_pieces.crotch_notes import crotch_notes
from notchbook.blocks.stretch_pieces.elastics import waist_elastic
from notchbook.blocks.stretch_pieces.leg_joining import leg_cut_data, leg_seams
from notchbook.blocks.stretch_pieces.leg_notes import leggings_notes
from notchbook.blocks.stretch_pieces.leg_pieces import leg_pieces
from notchbook.blocks.stretch_pieces.leg_promises import DraftedLeg, leggings_promises
from notchbook.blocks.stretch_pieces.leggings_measures import NEEDS, leggings_needs, leggings_read
from notchbook.blocks.stretch_pieces.parameters import LeggingsParameters
from notchbook.blocks.stretch_pieces.refuses import LEGGINGS_REFUSES
from notchbook.body import MeasureSet
from notchbook.errors import DraftRefused
from notchbook.pattern import STRETCH_FABRIC, Cure, Pattern
from notchbook.recipe import Change, MeasureNeeds, StepContext, StepDefinition, UsualEase


def needs_for(_: LeggingsParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body."""
    return leggings_needs(measures)


def usual_eases() -> tuple[UsualEase, ...]:
    """The reductions of leggings."""
    return usual_eases_of("leggings")


def run(pattern: Pattern, context: StepContext, parameters: LeggingsParameters) -> Change:
    """Draft the block into the pattern."""
    cloth = cloth_of(parameters)
    read = leggings_read(context, parameters, cloth, context.side)
    leg = _leg(context, read.given)
    names = PanelNames(context.slug)
    has_side_seam = parameters.side_seam
    pieces = leg_pieces(names, leg, has_side_seam=has_side_seam)
    drafted = DraftedLeg(names, read.given, read.taken, leg, pieces, read.ends_at_ankle)
    after = pattern.with_materials({"self": STRETCH_FABRIC}).with_pieces(*pieces.values())
    after = after.with_seams(*leg_seams(names, has_side_seam=has_side_seam))
    after = after.with_elastics(
        waist_elastic(names, drafted.edges("waist"), drafted.taken["waist_girth"].body)
    )
    return Change(
        pattern=leg_cut_data(after, names, leg, has_side_seam=has_side_seam),
        expectations=leggings_promises(drafted),
        notes=(
            *crotch_notes(context, next(iter(pieces.values())).name, "leggings"),
            *leggings_notes(drafted, cloth, context.find("heel_girth"), read),
        ),
    )


def _leg(context: StepContext, given: LeggingsGiven) -> LeggingsLeg:
    """The numbers; a waist that the centers alone do not reach may be reached with a side seam."""
    try:
        return draft_leggings(given)
    except DraftRefused as refused:
        if refused.code != "leggings-waist-unreachable" or given.side_seam:
            raise
        cure = Cure(context.slug, "side_seam", True, "draft with a side seam")
        raise DraftRefused(refused.code, **{**refused.facts, "cures": (cure,)}) from refused


STEP = StepDefinition(
    operation="leggings",
    version=3,
    kind="block",
    title="Draft leggings",
    sentence="cloth {across} across, {along} along",
    parameters=LeggingsParameters,
    run=run,
    needs=NEEDS,
    needs_for=needs_for,
    eases=usual_eases,
    upcasters={1: dict, 2: dict},
    refuses=LEGGINGS_REFUSES,
)
