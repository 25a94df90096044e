"""Whose body a step drafts for, so that the step knows by what it was told."""

from typing import Final

from notchbook.blocks.bodice_pieces.bodice_measures import BUST_KEYS, wearer_of
from notchbook.blocks.bodice_pieces.eases import Wearer
from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.recipe import StepContext

_TELLING: Final = (*BUST_KEYS, "bust_girth")
"""The measures that tell it where the set does not say it. Height and girths tell a child: what these say
together is remembered for every step."""


def wearer_in(context: StepContext) -> Wearer:
    """As the set says, else by its measures; these then count as read, so that the step runs again when one
    of them becomes another."""
    if context.measures.population is None:
        for key in _TELLING:
            context.find(key, "both")
    return wearer_of(UpperParameters(), context.measures)
