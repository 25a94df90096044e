"""The bodysuit: of stretch cloth in one piece from neck to crotch, as a swimsuit or for dance.

Widths and lengths follow the stretch of the cloth as it was tested both ways. The reductions and their
sources are in ``stretch_fabric``, the numbers in ``stretch``, the pieces in ``stretch_pieces``.
"""

from functools import cache

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch import BodysuitGiven, BodysuitHalf, draft_bodysuit
from notchbook.blocks.stretch_fabric.cloth import cloth_of
from notchbook.blocks.stretch_fabric.usual_eases import usual_eases_of
from notchbook.blocks.stretch_pieces.bodysuit_measures import NEEDS, bodysuit_needs, bodysuit_read
from notchbook.blocks.stretch_pieces.crotch_notes import crotch_notes
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.elastics import suit_elastics
from notchbook.blocks.stretch_pieces.joining import crotch_seams, upper_cut_data, upper_seams
from notchbook.blocks.stretch_pieces.parameters import BodysuitParameters
from notchbook.blocks.stretch_pieces.promises import Drafted, bodysuit_promises
from notchbook.blocks.stretch_pieces.refuses import BODYSUIT_REFUSES
from notchbook.blocks.stretch_pieces.short_sleeve import with_underarm_seam
from notchbook.blocks.stretch_pieces.two_sides import draft_to_meet
from notchbook.blocks.stretch_pieces.upper_notes import bodysuit_notes, upper_notes
from notchbook.blocks.stretch_pieces.upper_passages import upper_passages
from notchbook.blocks.stretch_pieces.upper_pieces import (
    bodysuit_piece,
    lining_height,
    lining_piece,
    sleeve_piece,
)
from notchbook.body import MeasureSet, Side
from notchbook.pattern import STRETCH_FABRIC, STRETCH_LINING, Allowance, Pattern, Piece
from notchbook.recipe import Change, MeasureNeeds, StepContext, StepDefinition, UsualEase


def needs_for(parameters: BodysuitParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body with these parameters."""
    return bodysuit_needs(parameters, measures)


def usual_eases() -> tuple[UsualEase, ...]:
    """The reductions of swimwear and of dance wear."""
    return usual_eases_of("swimsuit", "dance")


def run(pattern: Pattern, context: StepContext, parameters: BodysuitParameters) -> Change:
    """Draft the block into the pattern."""
    cloth = cloth_of(parameters, needs_along=True)
    draw = cache(draft_bodysuit)
    read = bodysuit_read(context, parameters, cloth, context.side)
    given = with_underarm_seam(read.given, parameters, draw)
    loop = context.find("trunk_loop")
    other: Side = "left" if context.side == "right" else "right"

    def read_other() -> BodysuitGiven:
        return bodysuit_read(context, parameters, cloth, other).given

    half = draft_to_meet(context, given, read_other, draw)
    halves: tuple[BodysuitHalf, ...] = (half,)
    if not context.sides_are_alike():
        halves += (draft_to_meet(context, read_other(), lambda: given, draw),)
    names = PanelNames(context.slug)
    pieces = _pieces(names, half, _lining_height(given, halves))
    drafted = Drafted(names, given.torso, read.torso.taken, half, pieces)
    passages = upper_passages(drafted, context, parameters)
    return Change(
        pattern=_joined(pattern, names, half, pieces),
        expectations=bodysuit_promises(drafted, given),
        notes=(
            *upper_notes(drafted, cloth, passages, read.torso),
            *crotch_notes(context, names.piece("front"), "suit"),
            *bodysuit_notes(drafted, given, half, cloth, loop),
        ),
    )


def _lining_height(given: BodysuitGiven, halves: tuple[BodysuitHalf, ...]) -> float:
    """At the center, which belongs to both of the wearer's sides: the mean of what they have, mm."""
    most = cut("crotch.lining") * (given.crotch_front + given.crotch_back)
    return sum(lining_height(half.front, most) for half in halves) / len(halves)


def _pieces(names: PanelNames, half: BodysuitHalf, lining: float) -> dict[str, Piece]:
    pieces = {
        which: bodysuit_piece(names, which, panel, half.levels.of(which, half.front_length))
        for which, panel in (("front", half.front), ("back", half.back))
    }
    if half.sleeve is not None:
        pieces["sleeve"] = sleeve_piece(names, half.sleeve)
    return {**pieces, "lining": lining_piece(names, half.front, lining)}


def _joined(pattern: Pattern, names: PanelNames, half: BodysuitHalf, pieces: dict[str, Piece]) -> Pattern:
    after = pattern.with_pieces(*pieces.values()).with_materials(
        {"self": STRETCH_FABRIC, "lining": STRETCH_LINING}
    )
    after = after.with_seams(*upper_seams(names, half), *crotch_seams(names))
    after = after.with_elastics(*suit_elastics(names, has_sleeve=half.sleeve is not None))
    classes = {"neck": "elastic_edge", "leg_opening": "elastic_edge"}
    if half.sleeve is None:
        classes["armhole"] = "elastic_edge"
    lining = {
        names.at("lining", word): Allowance(allowance_class)
        for word, allowance_class in (("leg_opening", "elastic_edge"), ("upper", "neatened_edge"))
    }
    return upper_cut_data(after.with_allowances(lining), names, half, classes)


STEP = StepDefinition(
    operation="bodysuit",
    version=4,
    kind="block",
    title="Draft bodysuit",
    sentence="{use}, neck {neck}, leg {leg}, sleeve {sleeve}, cloth {across} across, {along} along",
    parameters=BodysuitParameters,
    run=run,
    needs=NEEDS,
    needs_for=needs_for,
    eases=usual_eases,
    upcasters={1: dict, 2: dict, 3: dict},
    refuses=BODYSUIT_REFUSES,
)
