"""Trousers in numbers: from one side's measures to a front and a back panel. It knows no names and no
Pattern.

The way through: ``given`` -> ``belly_room`` (girths between waist and hip) -> ``crotch_fit`` (the levers of
``pull`` until the crotch seam is right) -> ``drawing`` (tops by ``waist_plan`` and ``top``, legs by
``legs_below``, curves by ``crotch_curve``) -> ``panels`` and ``levers`` -> ``shapes``.
"""

from notchbook.blocks.legs.attainable import attainable_crotch, usual_crotch
from notchbook.blocks.legs.dart_counts import count_darts
from notchbook.blocks.legs.draft import draft_trousers
from notchbook.blocks.legs.given import LevelGirth, TrousersGiven
from notchbook.blocks.legs.lower_waist import girth_below, lowered
from notchbook.blocks.legs.shapes import TrouserPanel, TrousersHalf

__all__ = [
    "LevelGirth",
    "TrouserPanel",
    "TrousersGiven",
    "TrousersHalf",
    "attainable_crotch",
    "count_darts",
    "draft_trousers",
    "girth_below",
    "lowered",
    "usual_crotch",
]
