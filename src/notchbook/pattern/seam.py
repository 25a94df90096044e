"""Seams: which edges are sewn to each other. Pairs are data, never guessed."""

from dataclasses import dataclass
from typing import Literal

from notchbook.pattern.names import Side

Gives = Literal["longer", "shorter"]
"""Which of two runs gives way: the longer is eased or gathered in, or the shorter is stretched on."""

TURNED_SEAM = "SSe"
"""The class of a seam that is turned, its allowances between the layers (ASTM D6193), as at a facing: its
first run is traced off its second and a little shorter, so that the seam rolls inward."""


@dataclass(frozen=True, slots=True)
class EdgeUse:
    """One edge or group in the run of a seam, walked from the named end ``starts_at``.

    ``side`` says on which of the wearer's sides the edge is taken, for seams that join left to right.
    """

    edge: str
    starts_at: str
    side: Side = "both"


@dataclass(frozen=True, slots=True)
class Seam:
    """Two runs that are sewn to each other from the same end.

    ``ease`` (mm) is how much longer the second run is declared to be, as sewn, than the first (negative:
    shorter); ``gives`` says whether the longer is eased into the shorter or the shorter stretched onto the
    longer. ``ease_between`` holds the labels of the two notches (last word
    of their names; "start" or "end" for an end of the seam) between which the ease lies, in walking
    order: the other stretches agree; None: it may lie anywhere. ``allowance_class`` names a row of the
    house's allowance table, ``seam_class`` the construction (ASTM D6193 / ISO 4916 code).
    """

    name: str
    first: tuple[EdgeUse, ...]
    second: tuple[EdgeUse, ...]
    ease: float = 0.0
    allowance_class: str = "plain"
    seam_class: str = "SSa"
    ease_between: tuple[str, str] | None = None
    gives: Gives = "longer"
