"""The leg of a pair of trousers in the flat: what reaches round between the legs is not seen."""

import math
from collections.abc import Sequence
from itertools import pairwise

from notchbook.geometry import Point
from notchbook.output.flat.joined import Placing
from notchbook.pattern import Piece, split_side

_STEP = 2.0
_GAP = 0.03
"""How far the legs stand apart, as a share of the height below the fork."""

_ON_SEAM = 8.0
"""mm within which a place above the fork is drawn on the center line."""

_ROUNDED = 0.6
"""Share of the waist of one side, from the center, over which it comes to lie square to the center. Own
judgment: a picture."""

_FADES = 260.0
"""mm below the waist over which the level lines come back to where they were."""


def has_fork(piece: Piece) -> bool:
    """Whether the piece is a panel of a leg that reaches the waist: a suit is open at the leg."""
    words = {word for edge in piece.outline for word in split_side(edge.name)[0].split("/")[1:]}
    return {"crotch_seam", "inseam", "waist"} <= words


def drawn_apart(piece: Piece, placing: Placing) -> Placing:
    """The placing with each level pressed toward the side, so that nothing passes the center line."""
    outline = [placing(place) for place in piece.sew_line.flattened(_STEP)]
    seam = sorted(
        (
            placing(place)
            for edge in piece.outline
            if "crotch_seam" in edge.name
            for place in edge.path.flattened(_STEP)
        ),
        key=lambda place: place.y,
    )
    fork = seam[0].y
    outward = -1.0 if sum(place.x for place in outline) < 0.0 else 1.0
    # Above the lowest place of the waist a level leaves the piece and comes back: there the one below counts.
    highest = min(
        placing(edge.path.point_at(edge.length / 2.0)).y for edge in piece.outline if "waist" in edge.name
    )
    known: dict[int, tuple[float, float]] = {}

    def at_level(level: int) -> tuple[float, float]:
        if level not in known:
            known[level] = _extent(outline, outward, level * _STEP)
        return known[level]

    def extent(y: float) -> tuple[float, float]:
        """The outer and the inner end of the piece at this height, counted outward from the center."""
        exact = min(y, highest - _STEP) / _STEP
        level = math.floor(exact)
        (outer, inner), (outer_above, inner_above) = at_level(level), at_level(level + 1)
        share = exact - level
        if y >= fork:  # the seam may run level here: whichever reaches farthest inward
            within = (inner, inner_above) if y < highest else ()
            return outer + share * (outer_above - outer), min((outward * _x_at(seam, y), *within))
        return outer + share * (outer_above - outer), inner + share * (inner_above - inner)

    def placed_at(place: Point) -> Point:
        there = placing(place)
        outer, inner = extent(there.y)
        wanted = 0.0 if there.y >= fork else max(inner, _GAP * (fork - there.y))
        if outer <= inner or wanted >= outer:
            return there
        share = (outer - outward * there.x) / (outer - inner)
        pressed = outer - share * (outer - wanted)
        on_seam = there.y >= fork and pressed < _ON_SEAM
        return Point(0.0 if on_seam else outward * pressed, there.y)

    return _square_at_center(piece, placed_at)


def _square_at_center(piece: Piece, placing: Placing) -> Placing:
    """The placing with the waist led over the center without a point: drafted, the waist is square to the
    seat seam, which leans where the piece lies flat and stands upright on the body."""
    waist = [
        placing(place)
        for edge in piece.outline
        if "waist" in split_side(edge.name)[0].split("/")[1:]
        for place in edge.path.flattened(_STEP)
    ]
    center, side = (pick(waist, key=lambda place: abs(place.x)) for pick in (min, max))
    width = abs(side.x) - abs(center.x)
    reach = _ROUNDED * width
    near = [place for place in waist if abs(place.x) - abs(center.x) <= reach]
    far = max(near, key=lambda place: abs(place.x))
    run = abs(far.x) - abs(center.x)
    if run < _STEP:
        return placing
    slope = (center.y - far.y) / run

    def placed_at(place: Point) -> Point:
        there = placing(place)
        beside = max(reach - max(abs(there.x) - abs(center.x), 0.0), 0.0)
        share = min(max(1.0 - (center.y - there.y) / _FADES, 0.0), 1.0)
        return Point(there.x, there.y - share * slope * beside * beside / (2.0 * reach))

    return placed_at


def _extent(outline: Sequence[Point], outward: float, y: float) -> tuple[float, float]:
    """The outer and the inner end of the outline at a height; of its nearest places where it ends before."""
    found = [
        outward * (one.x + (following.x - one.x) * (y - one.y) / (following.y - one.y))
        for one, following in pairwise([*outline, outline[0]])
        if min(one.y, following.y) <= y < max(one.y, following.y)
    ]
    if not found:
        nearest = min(abs(place.y - y) for place in outline)
        found = [outward * place.x for place in outline if abs(place.y - y) <= nearest + _STEP]
    return max(found), min(found)


def _x_at(chain: Sequence[Point], y: float) -> float:
    """The x of a rising chain at a height, that of its end beyond it."""
    for one, following in pairwise(chain):
        if y <= following.y:
            span = following.y - one.y
            share = min(max((y - one.y) / span if span > 0.0 else 1.0, 0.0), 1.0)
            return one.x + share * (following.x - one.x)
    return chain[-1].x
