"""A gusset: four edges as long as the four sides of the slashes that they are sewn to."""

import math

from notchbook.geometry import Point
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Pattern,
    Piece,
    Seam,
    part_name,
    piece_name,
)
from notchbook.style._outlined import Corner, outlined, straight_sides
from notchbook.style.sleeves.kimono.joining import CutOn

_CORNERS = ("sleeve_point", "front_point", "side_point", "back_point")
_EDGES = ("front_sleeve", "front_side", "back_side", "back_sleeve")
"""The edges between those corners, each called by the panel and the slash side that it is sewn to."""


def with_gusset(pattern: Pattern, slug: str, front: CutOn, back: CutOn, angle: float) -> Pattern:
    """The pattern with the gusset cut and sewn into both slashes.

    ``angle`` is that at its points in front and behind, degrees: so far the arm is freed. The point toward
    the sleeve lies above, that toward the side below. Its edges are not notched: a slash has no allowance to
    notch, and pivots at its point.
    """
    assert front.slash is not None
    assert back.slash is not None
    sewn = [*front.slash, *reversed(back.slash)]
    lengths = [edge.length for edge in sewn]
    half = sum(lengths) / 4.0 * math.sin(math.radians(angle) / 2.0)
    above, below = Point(0.0, half), Point(0.0, -half)
    corners = (
        above,
        _apex(above, below, lengths[0], lengths[1], -1.0),
        below,
        _apex(above, below, lengths[3], lengths[2], 1.0),
    )
    name = piece_name(slug, "gusset")
    words = zip(corners, _CORNERS, _EDGES, strict=True)
    outline = outlined(name, straight_sides([Corner(*one, "seam") for one in words]))
    after = pattern.with_pieces(Piece(name, "Gusset", outline, cut="pair"))
    # On both pieces each seam begins at the arm or at the side and ends at the point of the slash.
    starts = (
        (sewn[0].start, outline[0].start),
        (sewn[1].end, outline[1].end),
        (sewn[2].end, outline[2].start),
        (sewn[3].start, outline[3].end),
    )
    for word, slash, edge, (on_slash, own) in zip(_EDGES, sewn, outline, starts, strict=True):
        uses = (EdgeUse(slash.name, on_slash),), (EdgeUse(edge.name, own),)
        after = after.with_seams(Seam(part_name(slug, f"{word}_gusset"), *uses, allowance_class="gusset"))
    return after.with_allowances({edge.name: Allowance("gusset") for edge in (*outline, *sewn)})


def _apex(above: Point, below: Point, upper: float, lower: float, side: float) -> Point:
    """The corner at these distances from the two corners at the seam."""
    base = above.distance_to(below)
    along = (upper**2 - lower**2 + base**2) / (2.0 * base)
    return Point(side * math.sqrt(max(upper**2 - along**2, 0.0)), above.y - along)
