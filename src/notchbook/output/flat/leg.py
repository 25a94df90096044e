"""The leg opening of a suit in the flat: its hollow lies round the thigh, of which the view sees the half."""

from typing import Final

from notchbook.geometry import Point
from notchbook.output.flat.joined import Placing
from notchbook.pattern import Edge, Piece
from notchbook.pattern.names import last_word

_LEG: Final = "leg_opening"

_SEEN: Final = 0.25
"""Share of the hollow that is seen from the front: the rest of it lies round the thigh, and what stands off
the body on paper lies on it when worn. Own judgment: a picture."""

_ON_EDGE: Final = 0.5
"""mm within which a place lies on the leg opening."""


def leg_edges(piece: Piece) -> tuple[Edge, ...]:
    """The edges round the leg of a suit, without inseam."""
    return tuple(edge for edge in piece.outline if last_word(edge.name) == _LEG)


def drawn_round_leg(piece: Piece, placing: Placing) -> Placing:
    """The placing with the hollow of each leg opening drawn flatter; what reaches out of its chord stays."""
    edges = leg_edges(piece)

    def placed_at(place: Point) -> Point:
        return placing(next((_flatter(edge, place) for edge in edges if _is_on(edge, place)), place))

    return placed_at


def _is_on(edge: Edge, place: Point) -> bool:
    return edge.path.nearest(place).gap <= _ON_EDGE


def _flatter(edge: Edge, place: Point) -> Point:
    """The place nearer to the line between the ends of the edge, where it lies into the piece from it."""
    start, end = edge.path.start, edge.path.end
    inward = (end - start).perpendicular().unit()
    hollow = max((place - start).dot(inward), 0.0)
    return place - inward * (hollow * (1.0 - _SEEN))
