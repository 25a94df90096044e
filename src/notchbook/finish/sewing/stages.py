"""When a seam is sewn, where nothing must come before it: by the words of its edges and its allowance class.

The usual order of the workroom: what is easier on flat single pieces first, what closes the garment late
(common practice, no source).
"""

from typing import Final

from notchbook.pattern import Pattern, Piece, Seam, Stage
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.resolve import expand

_BY_WORD: Final[dict[str, tuple[Stage, int]]] = {
    "shoulder": ("shoulders", 0),
    "inseam": ("sides", 1),
    "crotch": ("sides", 2),
    "armhole": ("armholes", 0),
    "neck": ("neck", 1),
}
"""Words that stand for one place of the body, wherever they are found."""

_BY_CLASS: Final[dict[str, tuple[Stage, int]]] = {
    "side": ("sides", 0),
    "inseam": ("sides", 1),
    "crotch": ("sides", 2),
    "shoulder": ("shoulders", 0),
    "armhole": ("armholes", 0),
    "waist": ("waist", 0),
    "waistband": ("waist", 1),
    "neckline": ("neck", 1),
    "facing_edge": ("neck", 2),
    "fly": ("closures", 0),
    "lining": ("lining", 0),
    "cuff": ("hems", 0),
    "gusset": ("sides", 3),
}

_OWN: Final[dict[str, tuple[Stage, int]]] = {
    "pocket_flap": ("prepare", 1),
    "pocket_opening": ("pockets", 0),
    "pocket_bag": ("pockets", 6),
    "waistband_center": ("waist", -1),
}
"""Classes that tell of a pocket, and of a waistband closed before it is sewn on, whatever else the edges are
called."""

_IN_SEAM: Final[tuple[Stage, int]] = ("sides", 4)
"""The bags of a pocket in a seam are closed in one go with that seam, after it."""

_SLEEVE: Final = "sleeve"


def stage_of(pattern: Pattern, seam: Seam) -> tuple[Stage, int]:
    """The stage of a seam, and its rank there."""
    edges = [edge for use in (*seam.first, *seam.second) for edge in expand(pattern, use.edge)[0]]
    words = {word for edge in edges for word in split_side(edge)[0].split("/")[1:]}
    pieces = [pattern.piece_of(edge) for edge in edges if edge in pattern.carriers]
    if seam.allowance_class in _OWN or any(_is_bag(pattern, piece) for piece in pieces):
        return _IN_SEAM if _closes_in_seam(seam, pieces) else _OWN.get(seam.allowance_class, ("pockets", 0))
    if pieces and all(_SLEEVE in last_word(piece.name) for piece in pieces):
        return "sleeves", 0
    if seam.allowance_class == "lining" or (pieces and all(_is_lining(piece.name) for piece in pieces)):
        return "lining", 0
    for word, when in _BY_WORD.items():
        if word in words:
            return when
    if pieces and all(piece.rule is not None for piece in pieces):
        return "neck", 0  # a facing or collar is closed before it is sewn on
    return _BY_CLASS.get(seam.allowance_class, ("panels", 0))


def _closes_in_seam(seam: Seam, pieces: list[Piece]) -> bool:
    """Whether the seam closes two bags that each have an opening: they lie in a seam of the garment."""
    openings = (any(last_word(edge.name) == "opening" for edge in piece.outline) for piece in pieces)
    return seam.allowance_class == "pocket_bag" and all(openings)


def _is_lining(piece: str) -> bool:
    return "lining" in _words(piece)


def _is_bag(pattern: Pattern, piece: Piece) -> bool:
    """Whether an edge of the piece is closed to a bag, whatever the step that made it is called."""
    given = (pattern.allowances.get(edge.name) for edge in piece.outline)
    return any(one is not None and one.allowance_class == "pocket_bag" for one in given)


def _words(piece: str) -> list[str]:
    return split_side(piece)[0].replace(".", "_").split("_")
