"""What body, cloth and parameters give the numbers of the bodysuit."""

from dataclasses import dataclass

from notchbook.blocks.stretch.given import BodysuitGiven, StrapGiven
from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_pieces.close_fit import require_stretch
from notchbook.blocks.stretch_pieces.crotch_measures import (
    CROTCH_PARTS,
    crotch_needs,
    crotch_shares,
    front_longer,
    has_front_room,
)
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.parameters import BodysuitParameters
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.blocks.stretch_pieces.upper_measures import NEEDS as TORSO_NEEDS
from notchbook.blocks.stretch_pieces.upper_measures import TorsoRead, torso_read, upper_needs
from notchbook.body import MeasureSet, Side
from notchbook.errors import InputError
from notchbook.recipe import MeasureNeeds, SometimesNeeded, StepContext

_HELPFUL = (*CROTCH_PARTS, "trunk_loop")

NEEDS = MeasureNeeds(
    needed=TORSO_NEEDS.needed,
    estimated=(*TORSO_NEEDS.estimated, "crotch_length"),
    helpful=(*TORSO_NEEDS.helpful, *_HELPFUL),
    sometimes=(
        *TORSO_NEEDS.sometimes,
        SometimesNeeded("with a classic leg", ("thigh_girth",)),
        SometimesNeeded("unless crotch length or another rise was taken", ("standing_rise",)),
    ),
)
"""What the block needs, for a list of blocks."""


def bodysuit_needs(parameters: BodysuitParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body with these parameters: the crotch length, or what tells it."""
    upper = upper_needs(parameters)
    thigh = ("thigh_girth",) if _is_solved_for_thigh(parameters) else ()
    needed, estimated = crotch_needs(measures)
    return MeasureNeeds(
        needed=(*upper.needed, *needed, *thigh),
        estimated=(*upper.estimated, *estimated),
        helpful=(*upper.helpful, *_HELPFUL),
    )


@dataclass(frozen=True)
class BodysuitRead:
    """The numbers' input, and the torso read behind it."""

    given: BodysuitGiven
    torso: TorsoRead


def bodysuit_read(
    context: StepContext, parameters: BodysuitParameters, cloth: Cloth, side: Side
) -> BodysuitRead:
    """The bodysuit of one side. InputError ``stretch-strap-with-sleeve``; DraftRefused
    ``cloth-hardly-stretches``."""
    require_stretch(cloth, parameters.use)
    reader = StretchReader(context, side, parameters.use, cloth)
    torso = torso_read(reader, parameters, 0.0, _strap(context, reader, parameters))
    front, back = crotch_shares(reader)
    has_room = has_front_room(context)
    given = BodysuitGiven(
        torso=torso.given,
        crotch_front=front + front_longer(context, "suit"),
        crotch_back=back,
        crotch_width=_crotch_width(context, parameters, torso.given.hip, "men_" if has_room else ""),
        leg_opening=_leg_opening(context, reader, parameters),
        leg_height=None
        if parameters.leg == "classic" or parameters.own_leg_opening is not None
        else cut(f"leg.{parameters.leg}") * torso.given.hip_depth,
        has_front_room=has_room,
    )
    return BodysuitRead(given, torso)


def _crotch_width(context: StepContext, parameters: BodysuitParameters, hip: float, whose: str) -> float:
    """The whole width of the crotch join, mm; ``whose`` is the beginning of the figures' names."""
    if parameters.crotch_width is not None:
        return context.positive(parameters.crotch_width, "crotch_width", "both")
    least, most = cut("crotch.least_width"), cut(f"crotch.{whose}most_width")
    return min(max(cut(f"crotch.{whose}width") * hip, least), most)


def _is_solved_for_thigh(parameters: BodysuitParameters) -> bool:
    return parameters.leg == "classic" and parameters.own_leg_opening is None


def _leg_opening(context: StepContext, reader: StretchReader, parameters: BodysuitParameters) -> float | None:
    if parameters.own_leg_opening is not None:
        return context.positive(parameters.own_leg_opening, "own_leg_opening", reader.side)
    if not _is_solved_for_thigh(parameters):
        return None
    return reader.pattern("thigh_girth", "leg_opening")


def _strap(context: StepContext, reader: StretchReader, parameters: BodysuitParameters) -> StrapGiven | None:
    has_sleeve = parameters.sleeve != "none"
    if parameters.shoulder == "strap" and has_sleeve:
        raise InputError("stretch-strap-with-sleeve", sleeve=parameters.sleeve)
    if parameters.shoulder == "full" or has_sleeve:
        return None
    width = context.positive(parameters.strap_width, "strap_width", reader.side)
    if parameters.strap_place is not None:
        own = context.positive(parameters.strap_place, "strap_place", reader.side)
        return StrapGiven(width, max(own, width / 2.0))
    place = cut("strap.place") * reader.pattern("shoulder_length", "shoulder")
    return StrapGiven(width, max(place, width / 2.0), may_move=True)
