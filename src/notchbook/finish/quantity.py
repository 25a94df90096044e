"""How often a piece is cut, in the words of the cutting room."""

from collections.abc import Sequence

from notchbook.finish.cut_piece import Quantity
from notchbook.finish.house_table import Supply
from notchbook.finish.leather import quantity_words
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Piece
from notchbook.pattern.making import LeatherMaking
from notchbook.units import TOLERANCES

_SAMPLES = 97


def quantities_of(
    piece: Piece, supply: Supply, notches: Sequence[Point], making: LeatherMaking | None = None
) -> tuple[Quantity, ...]:
    """One quantity for each material; panels are the pieces of cloth that lie on the table when cut.

    ``notches``: their places on the sew line. A band with an underlap is a plain strip, but its notches
    tell its two ends apart, so that it must be cut right side up. What is cut from hides is cut singly.
    """
    hides = making.material if making is not None and making.is_hide else None
    return tuple(
        Quantity(
            told.material,
            quantity_words(piece, told.times)
            if told.material == hides
            else _text(piece, told.times, supply, notches),
            _panels(piece, told.times),
        )
        for told in piece.instructions
    )


def _panels(piece: Piece, times: int) -> int:
    return 2 * times if piece.cut == "pair" else times


def _text(piece: Piece, times: int, supply: Supply, notches: Sequence[Point]) -> str:
    if piece.cut == "pair":
        return "cut 1 pair" if times == 1 else f"cut {times} pairs"
    if piece.cut == "fold":
        return f"cut {times} on fold" if supply == "fold" else f"cut {times}, whole"
    if piece.side != "both" or not is_symmetric(piece.sew_line, notches):
        return f"cut {times}, right side up"
    return f"cut {times}"


def is_symmetric(outline: Path, notches: Sequence[Point] = ()) -> bool:
    """Whether the shape with its notches is its own reflection across its upright or its level middle, so
    that it does not matter which face of the cloth lies up."""
    center = outline.bounds().center
    axes = (Point(0.0, 1.0), Point(1.0, 0.0))
    return any(_reflects(outline, notches, Transform.reflection(center, center + axis)) for axis in axes)


def _reflects(outline: Path, notches: Sequence[Point], reflection: Transform) -> bool:
    moved = [reflection.apply(notch) for notch in notches]
    if any(min(place.distance_to(notch) for notch in notches) > TOLERANCES.seam_walk for place in moved):
        return False
    places = (outline.length * index / _SAMPLES for index in range(_SAMPLES))
    return all(
        outline.nearest(reflection.apply(outline.point_at(place))).gap <= TOLERANCES.seam_walk
        for place in places
    )
