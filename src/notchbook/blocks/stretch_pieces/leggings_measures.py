"""What body, cloth and parameters give the numbers of the leggings."""

from dataclasses import dataclass, replace

import numpy as np

from notchbook.blocks.lower_measures import needed_rise_keys, read_lower, read_rise
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_fabric.reductions import Reduced, least_girth
from notchbook.blocks.stretch_pieces.close_fit import require_stretch
from notchbook.blocks.stretch_pieces.crotch_measures import (
    CROTCH_PARTS,
    crotch_shares,
    front_longer,
    has_front_room,
)
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.parameters import LeggingsParameters
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.body import MeasureSet, Side
from notchbook.recipe import MeasureNeeds, SometimesNeeded, StepContext

_NEEDED = (
    "waist_girth",
    "hip_girth",
    "hip_depth",
    "inside_leg",
    "thigh_girth",
    "knee_girth",
    "ankle_girth",
)
_ESTIMATED = ("crotch_length",)
_HELPFUL = (*CROTCH_PARTS, "calf_girth", "knee_depth", "heel_girth")

NEEDS = MeasureNeeds(
    needed=_NEEDED,
    estimated=_ESTIMATED,
    helpful=_HELPFUL,
    sometimes=(SometimesNeeded("unless outside leg or sitting rise was taken", ("standing_rise",)),),
)
"""What the block needs, for a list of blocks."""


def leggings_needs(measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body: one of the three ways to know its rise."""
    needed = tuple(dict.fromkeys((*_NEEDED, *needed_rise_keys(measures))))
    return MeasureNeeds(needed=needed, estimated=_ESTIMATED, helpful=_HELPFUL)


@dataclass(frozen=True)
class LeggingsRead:
    """The numbers' input and what stands behind it by measure; ``hem_wider`` is what was added at the hem for
    the heel, mm. ``ends_at_ankle``: the hem has the width of the ankle, not of the leg above it.
    ``knee_left_out`` is a knee depth that was measured and does not lie on the leg, mm."""

    given: LeggingsGiven
    taken: dict[str, Reduced]
    hem_wider: float
    ends_at_ankle: bool
    knee_left_out: float | None


def leggings_read(
    context: StepContext, parameters: LeggingsParameters, cloth: Cloth, side: Side
) -> LeggingsRead:
    """The leg of one side. DraftRefused ``cloth-hardly-stretches``."""
    require_stretch(cloth, "leggings")
    reader = StretchReader(context, side, "leggings", cloth)
    front, back = crotch_shares(reader, "leggings_front_share")
    inside, rise = reader.body("inside_leg"), _rise(context, side)
    shorter = reader.pattern("inside_leg", "leg") / inside
    measured = reader.find("knee_depth")
    is_on_leg = measured is not None and rise < measured < rise + inside
    knee = measured - rise if measured is not None and is_on_leg else _usual_knee_down(inside)
    ankle_down = inside * (1.0 - cut("ankle.height")) * shorter
    hem_down = ankle_down
    if parameters.own_length is not None:
        hem_down = context.positive(parameters.own_length, "own_length", side)
    calf = reader.found("calf_girth", "calf", parameters.calf_ease)
    ankle = reader.pattern("ankle_girth", "ankle", parameters.ankle_ease)
    given = LeggingsGiven(
        waist=reader.pattern("waist_girth", "waist", parameters.waist_ease),
        hip=reader.pattern("hip_girth", "hip", parameters.hip_ease),
        thigh=reader.pattern("thigh_girth", "thigh", parameters.thigh_ease),
        knee=reader.pattern("knee_girth", "knee", parameters.knee_ease),
        calf=calf,
        ankle=ankle,
        crotch_front=front + front_longer(context, "leggings"),
        crotch_back=back,
        rise=rise,
        hip_depth=reader.pattern("hip_depth", "trunk"),
        knee_down=knee * shorter,
        calf_down=None if calf is None else (knee + cut("knee.calf_below") * (inside - knee)) * shorter,
        hem_down=hem_down,
        side_seam=parameters.side_seam,
        has_front_room=has_front_room(context),
        thigh_least=_least(reader, "thigh_girth", parameters.thigh_ease),
        calf_least=_least(reader, "calf_girth", parameters.calf_ease),
        knee_may_widen=parameters.knee_ease is None,
    )
    hem = _width_at(given, hem_down, ankle_down)
    given = replace(given, ankle=hem + _wider_for_heel(reader, parameters, hem))
    return LeggingsRead(
        given,
        reader.taken,
        reader.wider.get("heel_girth", 0.0),
        ends_at_ankle=hem_down >= ankle_down,
        knee_left_out=None if is_on_leg else measured,
    )


def _least(reader: StretchReader, key: str, ease: str | None) -> float | None:
    """The least girth that the cloth goes over the leg with, mm; None where the measure was not taken, or
    somebody chose an ease of her own, which is left as it is."""
    body = reader.find(key)
    return None if body is None or ease is not None else least_girth(body, reader.cloth)


def _width_at(given: LeggingsGiven, down: float, ankle_down: float) -> float:
    """The girth of the leg on the pattern so far below the crotch level, mm: straight between the levels that
    were measured, of which the ankle lies at ``ankle_down``."""
    levels = [
        (figure("leggings.thigh_level") * given.knee_down, given.thigh),
        (given.knee_down, given.knee),
        (ankle_down, given.ankle),
    ]
    if given.calf is not None and given.calf_down is not None:
        levels.append((given.calf_down, given.calf))
    downs, girths = zip(*sorted(levels), strict=True)
    return float(np.interp(down, downs, girths))


def _wider_for_heel(reader: StretchReader, parameters: LeggingsParameters, hem: float) -> float:
    """What a hem of this girth lacks for the heel, mm, unless somebody chose the ease at the ankle."""
    heel = reader.find("heel_girth")
    if heel is None or parameters.ankle_ease is not None:
        return 0.0
    return reader.widened("heel_girth", max(heel / (1.0 + reader.cloth.across) - hem, 0.0))


def _rise(context: StepContext, side: Side) -> float:
    """The rise as on the body; InputError ``measure-missing`` where nothing tells it.

    It is not reduced with the trunk: where the waist stands is decided by the crotch length, which is. A rise
    that were shorter too would only pull the depth of the crotch by as much again.
    """
    measures = context.measures
    return read_rise(read_lower(context, side), measures.rise_method, measures.name).standing


def _usual_knee_down(inside: float) -> float:
    """How far the knee usually lies below the crotch level, mm."""
    return inside / 2.0 - cut("knee.above_middle") * inside / _USUAL_INSIDE_LEG


_USUAL_INSIDE_LEG = 780.0
"""mm; the inside leg of the figures that the table quotes."""
