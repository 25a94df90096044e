"""The leg opening of a suit in the flat: its hollow lies round the thigh, of which the view sees the half."""

from typing import Final

from notchbook.geometry import Point
from notchbook.output.flat.joined import Placing
from notchbook.pattern import Edge, Piece
from notchbook.pattern.names import last_word

_LEG: Final = "leg_opening"

_SEEN: Final = 0.4
"""Share of the hollow that is seen from the front: the rest of it lies round the thigh, and what stands off
the body on paper lies on it when worn. Own judgment: a picture."""

_ON_EDGE: Final = 0.5
"""mm within which a place lies on the leg opening."""


def leg_edges(piece: Piece) -> tuple[Edge, ...]:
    """The edges round the leg of a suit, without inseam."""
    return tuple(edge for edge in piece.outline if last_word(edge.name) == _LEG)


def drawn_round_leg(piece: Piece, placing: Placing) -> Placing:
    """The placing with each hollow leg opening drawn flatter; a round one over the seat stays as it is."""
    edges = tuple(edge for edge in leg_edges(piece) if _hollow(edge, _middle(edge)) > 0.0)

    def placed_at(place: Point) -> Point:
        return placing(next((_flatter(edge, place) for edge in edges if _is_on(edge, place)), place))

    return placed_at


def _is_on(edge: Edge, place: Point) -> bool:
    return edge.path.nearest(place).gap <= _ON_EDGE


def _middle(edge: Edge) -> Point:
    return edge.path.point_at(edge.length / 2.0)


def _hollow(edge: Edge, place: Point) -> float:
    """How far a place lies into the piece from the line between the ends of the edge, mm."""
    return (place - edge.path.start).dot(_inward(edge))


def _inward(edge: Edge) -> Point:
    return (edge.path.end - edge.path.start).perpendicular().unit()


def _flatter(edge: Edge, place: Point) -> Point:
    """The place nearer to the line between the ends of the edge, where it lies into the piece from it."""
    return place - _inward(edge) * (max(_hollow(edge, place), 0.0) * (1.0 - _SEEN))
