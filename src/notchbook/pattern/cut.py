"""Cut data: what the steps say about allowance, corners, notches and hems.

These are instructions kept by name on the pattern; the cut line itself is made from them by
``finish`` and never stored.
"""

from dataclasses import dataclass
from typing import Literal

from notchbook.pattern.names import split_side
from notchbook.pattern.place import Place

CornerStyle = Literal["mitre", "square", "folded", "turned"]
"""``mitre``: both cut lines run on to meet, with a limit; ``square``: the first edge's allowance is
ended square to the seam that is sewn first; ``folded``: reflected at the fold of hem or dart, so
that it lies flat when turned; ``turned``: both are turned in, and cut off so that they meet in a miter."""

NotchKind = Literal["single", "double"]


@dataclass(frozen=True, slots=True)
class Allowance:
    """How far the cut line lies outside one edge or group, mm.

    ``width`` is a fixed width; None takes it from the house's table by ``allowance_class``.
    """

    allowance_class: str
    width: float | None = None


@dataclass(frozen=True, slots=True)
class Notch:
    """A notch on an edge: a place on the sew line, cut into the allowance.

    ``seam`` names the seam it serves (None: a lone mark, such as a fold of the hem).
    """

    name: str
    place: Place
    kind: NotchKind = "single"
    seam: str | None = None
    purpose: str = ""

    def serves(self, seam: str) -> bool:
        """Whether it serves the seam of this name.

        On a piece that serves both of the wearer's sides it serves the seams of both.
        """
        return self.seam is not None and self.seam in (seam, split_side(seam)[0])
