"""The stretch blocks in numbers: torso, bodysuit and leggings, without names and pieces."""

from notchbook.blocks.stretch.draft_bodysuit import draft_bodysuit
from notchbook.blocks.stretch.draft_leggings import draft_leggings
from notchbook.blocks.stretch.draft_torso import draft_torso
from notchbook.blocks.stretch.given import (
    BodysuitGiven,
    LeggingsGiven,
    StrapGiven,
    StretchSleeveGiven,
    TorsoGiven,
)
from notchbook.blocks.stretch.shapes import (
    BodysuitHalf,
    BodysuitPanel,
    LeggingsLeg,
    LegPanel,
    Levels,
    StretchSleeve,
    TorsoHalf,
    TorsoPanel,
)

__all__ = [
    "BodysuitGiven",
    "BodysuitHalf",
    "BodysuitPanel",
    "LegPanel",
    "LeggingsGiven",
    "LeggingsLeg",
    "Levels",
    "StrapGiven",
    "StretchSleeve",
    "StretchSleeveGiven",
    "TorsoGiven",
    "TorsoHalf",
    "TorsoPanel",
    "draft_bodysuit",
    "draft_leggings",
    "draft_torso",
]
