"""The fall of a collar: how much its inner edge is bent, so that its outer edge lies on the garment."""

import math

from notchbook.style.collars.curves import bend_for_rise, limited_bend
from notchbook.style.collars.figures import OUTER_EDGE_SHORT
from notchbook.style.collars.laid_neck import LaidNeck

_USUAL_DROP = 0.12
"""Share of its length by which the inner edge drops to the front where the garment cannot be laid out: 20 mm
of 170 (own judgment)."""


def fall_bend(
    edge: float, straight: float, width: float, lies: tuple[LaidNeck | None, float], drop: float | None
) -> float:
    """The bend of the inner edge, degrees (0 or below: away from the outer edge).

    ``edge`` is how long the inner edge is, ``width`` how far the outer one lies from it; ``lies``: the laid
    neck and how far from it the outer edge comes to lie. ``drop``: how far the front end of the inner edge is
    to lie below its back; None: so far that the outer edge is as long as the garment there, less what a
    collar gives.
    """
    laid, at = lies
    if drop is not None:
        return bend_for_rise(edge, straight, -drop)
    if laid is None:
        return bend_for_rise(edge, straight, -_USUAL_DROP * edge)
    lacking = laid.girth(at) - OUTER_EDGE_SHORT.value - edge
    return -limited_bend(math.degrees(max(0.0, lacking) / width))
