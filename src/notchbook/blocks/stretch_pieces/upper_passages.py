"""What must pass which opening of a torso or bodysuit."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.wearer import wearer_in
from notchbook.blocks.stretch_pieces.parameters import BodysuitParameters, StretchTorsoParameters
from notchbook.blocks.stretch_pieces.passing import Passage
from notchbook.blocks.stretch_pieces.promises import Drafted
from notchbook.body.usual_head import USUAL_CHILD_HEAD, USUAL_HEAD
from notchbook.pattern import Cure
from notchbook.recipe import StepContext

_WIDER_NECK = {"base": "crew", "crew": "scoop", "scoop": "deep"}
"""The next wider neck."""


def upper_passages(
    drafted: Drafted, context: StepContext, parameters: StretchTorsoParameters | BodysuitParameters
) -> Iterator[Passage]:
    """The head or the hip through the neck, the body past the waist, the hand through a long sleeve."""
    if parameters.put_on == "over_head":
        yield _neck(drafted, parameters, "the head", head_girth(context))
        yield from _waist(drafted, "the bust", "bust_girth", context.slug)
    elif parameters.put_on == "through_neck":
        yield _neck(drafted, parameters, "the hip", context.measure("hip_girth"))
        yield from _waist(drafted, "the hip", "hip_girth", context.slug)
    hand = context.find("hand_girth") if parameters.sleeve == "long" else None
    if hand is not None and drafted.half.sleeve is not None:
        sleeve = drafted.names.piece("sleeve")
        hem = drafted.half.sleeve.hem.length
        yield Passage(
            "the hand", "the hem of the sleeve", hem, hand, sleeve, drafted.names.at("sleeve", "hem")
        )


def head_girth(context: StepContext) -> float:
    """The head as measured, else a usual one, mm."""
    measured = context.find("head_girth")
    if measured is not None:
        return measured
    return USUAL_CHILD_HEAD if wearer_in(context) == "children" else USUAL_HEAD


def _neck(
    drafted: Drafted, parameters: StretchTorsoParameters | BodysuitParameters, what: str, girth: float
) -> Passage:
    half, slug = drafted.half, drafted.names.slug
    length = 2.0 * (half.front.neck.length + half.back.neck.length)
    wider = _WIDER_NECK.get(parameters.neck)
    cures = [Cure(slug, "neck", wider, f"cut a {wider} neck")] if wider is not None else []
    cures.append(_opened(slug))
    where = drafted.names.at("front", "neck")
    return Passage(what, "the neck", length, girth, drafted.names.piece("front"), where, tuple(cures))


def _waist(drafted: Drafted, what: str, key: str, slug: str) -> Iterator[Passage]:
    """The waist as drawn, where it is drafted to a girth."""
    waist = drafted.given.waist
    if waist is not None and key in drafted.taken:
        piece = drafted.names.piece("front")
        where = drafted.names.at("front", "side_seam")
        waist += drafted.pulled("waist_wider")
        yield Passage(what, "the waist", waist, drafted.taken[key].body, piece, where, (_opened(slug),))


def _opened(slug: str) -> Cure:
    return Cure(slug, "put_on", "opening", "give it an opening")
