"""What a line of the ease table is called."""

from typing import Final

from notchbook.body import PopulationName
from notchbook.body.quantity_words import worded_for
from notchbook.pattern import split_side, spoken
from notchbook.pattern.names import instance_of

_OF_LEGS: Final = ("trousers", "leggings")
"""Garments of two legs: of one side they are that side's leg."""


def row_words(name: str, population: PopulationName | None) -> str:
    """``bodice, bust girth``; of one of two legs that differ ``right leg, knee girth``."""
    said = worded_for(spoken(name), population)
    side = split_side(name)[1]
    garment = instance_of(name).replace("_", " ")
    if side == "both" or not garment.startswith(_OF_LEGS):
        return said
    return said.replace(f"{side} {garment}", f"{side} leg", 1)
