"""How long the hem of a sleeve is as sewn: round the wrist or the arm with its ease."""

import math
from dataclasses import replace

from notchbook.geometry import Path
from notchbook.pattern import Allowance, Pattern, require, sewn_length
from notchbook.recipe import StepContext
from notchbook.style.sleeves.figures import ARM_BAND_EASE, CUFF_EASE
from notchbook.style.sleeves.found import FoundSleeve

_DEPTHS = (("hem_sleeve", 25.0), ("hem_sleeve_tapered", 15.0), ("hem_sleeve_flared", 10.0))
"""The hems of sleeves and about how deep they are turned in the house's table, mm."""

_CUFF_ABOVE_WRIST = 100.0
"""mm above the wrist within which the hem of a sleeve is taken to be held by a cuff there. Own judgment."""

_EXCESS = 0.0275
"""By how much the raw edge of a hem may be shorter or longer than its fold: just under the 3 percent from
which the house warns. Own judgment."""


def hem_to(pattern: Pattern, context: StepContext, sleeve: FoundSleeve, asked: str | None) -> float:
    """How long the hem is when it is gathered, mm.

    As asked; else the wrist with the ease of a cuff where the sleeve reaches it, the upper arm with that of a
    band where it ends above the elbow; between, and where that was not measured, as the hem was.
    """
    if asked is not None:
        return context.positive(asked, "hem_length")
    points, arm = sleeve.piece.points, context.find("arm_length")
    down = points[sleeve.name("crown")].y - points[sleeve.name("hem_middle")].y
    reaches_elbow = sleeve.name("elbow_line") in {line.name for line in sleeve.piece.lines}
    girth = None
    if arm is not None and down > arm - _CUFF_ABOVE_WRIST:
        girth, ease = context.find("wrist_girth"), CUFF_EASE.value
    elif not reaches_elbow:
        girth, ease = context.find("upper_arm_girth"), ARM_BAND_EASE.value
    return sewn_length(pattern, sleeve.name("hem")) if girth is None else girth + ease


def hem_class(*hems: Path) -> str:
    """How deep the hem of a sleeve is turned up: less where it bends more, so that its raw edge need not be
    stretched."""
    bends = max(_bend(path) for path in hems)
    return next((name for name, depth in _DEPTHS if bends * depth <= _EXCESS), _DEPTHS[-1][0])


def _bend(path: Path) -> float:
    """How much the hem turns from end to end over its length, 1/mm."""
    turn = path.tangent_at(path.length).direction() - path.tangent_at(0.0, "after").direction()
    return abs(math.radians((turn + 180.0) % 360.0 - 180.0)) / path.length


def to_band(pattern: Pattern, hem: str) -> Pattern:
    """The hem as an edge that is sewn to a band or cuff, and no longer turned up."""
    for member in require(pattern, hem):
        piece = pattern.piece_of(member)
        pattern = pattern.with_pieces(piece.with_edges(replace(piece.edge(member), kind="seam")))
    return pattern.with_allowances({hem: Allowance("cuff")})
