"""What torso and dress need of a body: what the bodice needs, and the hip."""

from dataclasses import replace

from notchbook.blocks.bodice_pieces.bodice_measures import BUST_KEYS
from notchbook.blocks.bodice_pieces.bodice_measures import NEEDS as BODICE_NEEDS
from notchbook.blocks.bodice_pieces.bodice_measures import needs_for as needs_of_bodice
from notchbook.blocks.joined.parameters import DressParameters, TorsoParameters
from notchbook.body import MeasureSet
from notchbook.recipe import MeasureNeeds, SometimesNeeded

_HIP = ("hip_girth", "hip_depth")

NEEDS = replace(
    BODICE_NEEDS,
    needed=(*BODICE_NEEDS.needed, *_HIP),
    estimated=(*BODICE_NEEDS.estimated, "knee_depth"),
    sometimes=(SometimesNeeded("with bust shaping", BUST_KEYS),),
)
"""What the blocks need, for a list of blocks."""


def needs_for(parameters: TorsoParameters | DressParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body with these parameters."""
    needs = needs_of_bodice(parameters, measures)
    if parameters.own_length is not None or parameters.length == "hip":
        return needs
    return replace(needs, estimated=(*needs.estimated, "knee_depth"))
