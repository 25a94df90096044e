"""Which pieces show on the outside of a garment, and from which side."""

import re
from typing import Final, Literal

from notchbook.pattern import Pattern, Piece

ViewWord = Literal["front", "back"]

VIEWS: Final[tuple[ViewWord, ...]] = ("front", "back")

_HIDDEN: Final = frozenset(
    {
        "facing",
        "interfacing",
        "interlining",
        "lining",
        "bag",
        "pocketing",
        "shield",
        "underlap",
        "binding",
        "gusset",
    }
)
"""Words of pieces that lie inside."""

_HIDDEN_MATERIALS: Final = frozenset({"lining", "fusible", "interlining", "pocketing"})

_SLEEVES: Final = frozenset({"sleeve", "topsleeve", "undersleeve"})


def words_of(piece: Piece) -> frozenset[str]:
    """The words of a piece's name, without the side."""
    return frozenset(re.split(r"[._/@]", piece.name))


def is_outer(piece: Piece) -> bool:
    """Whether a piece shows when the garment is worn."""
    materials = {told.material for told in piece.instructions}
    return bool(materials - _HIDDEN_MATERIALS) and not words_of(piece) & _HIDDEN


def is_sleeve(piece: Piece) -> bool:
    """Whether a piece is set into the armhole; half a raglan is not, it goes on from the body to the neck."""
    words = words_of(piece)
    return bool(words & _SLEEVES) and not words & set(VIEWS)


def view_pieces(pattern: Pattern, view: ViewWord) -> tuple[Piece, ...]:
    """The body pieces that are seen from this side, in the order of the pattern; no sleeves, no strips."""
    return tuple(
        piece
        for piece in pattern.pieces.values()
        if is_outer(piece) and not is_sleeve(piece) and view in words_of(piece)
    )


def strip_pieces(pattern: Pattern) -> tuple[Piece, ...]:
    """What is sewn on along an edge and belongs to no side: bands, cuffs, collars."""
    return tuple(
        piece
        for piece in pattern.pieces.values()
        if is_outer(piece) and not is_sleeve(piece) and not words_of(piece) & set(VIEWS)
    )
