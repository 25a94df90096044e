"""Elastics that draw an edge in: round which edges, and how much shorter than these."""

from dataclasses import dataclass
from typing import Literal

GoesRound = Literal["limb", "body"]
"""Round a limb there is one for each of the wearer's sides; round the body one goes over both."""


@dataclass(frozen=True, slots=True)
class Elastic:
    """An elastic laid onto the edges of an opening, or pushed into their casing.

    ``edges`` are edges or groups of the opening, once each. ``share`` is the length of the closed ring
    over that of the opening as sewn or, where ``girth`` (mm) is given, over that girth of the body.
    ``width`` is that of the elastic, mm. ``title`` is what the card calls it.
    """

    name: str
    title: str
    edges: tuple[str, ...]
    share: float
    width: float
    goes_round: GoesRound
    girth: float | None = None
