"""The hip that the trousers are drafted to: as given, or wider where a waist or a belly would lean the side
out."""

from math import atan, cos, degrees, radians, sin

from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.large_bodies import share_of_large
from notchbook.blocks.legs.proportions import of_wearer, proportion
from notchbook.blocks.legs.waist_plan import WaistPlan, own_waists, panel_widths, plan_waist

_ROUNDS = 40
_CLOSE = 1e-7
"""mm."""


def usual_slant(given: TrousersGiven) -> float:
    """The slant of the center back before any lever is pulled, degrees: less on a large body, and where there
    is little to take in."""
    _, width = panel_widths(given, given.hip)
    room = degrees(
        atan((width - own_waists(given)[1] + proportion("back.flat_slant_more")) / given.hip_depth)
    )
    usual = of_wearer("back.usual_slant", given.wearer)
    usual -= share_of_large(given.hip) * max(0.0, usual - proportion("back.usual_slant_plus"))
    return min(usual, max(proportion("back.flat_slant"), room))


def waist_in_use(
    given: TrousersGiven, slant: float, fullness: float, wider: float
) -> tuple[float, WaistPlan]:
    """The hip girth in use, and how the waist is shared out at this slant of the back (degrees).

    ``wider`` is by how much the hip is made wider for a belly, mm.
    """
    hip = given.hip + wider
    for _ in range(_ROUNDS):
        plan = plan_waist(
            given, hip, _taken_by(slant, panel_widths(given, hip)[1], given.hip_depth), fullness
        )
        if plan.lacking < _CLOSE:
            break
        hip += 2.0 * plan.lacking
    return hip, plan


def _taken_by(slant: float, width: float, hip_depth: float) -> float:
    """What the slanted center takes off the width that is left at the waist, measured square to it, mm."""
    angle = radians(slant)
    return width * (1.0 - cos(angle)) + hip_depth * sin(angle)
