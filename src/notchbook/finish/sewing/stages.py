"""When a seam is sewn, where nothing must come before it: by the words of its edges and its allowance class.

The usual order of the workroom: what is easier on flat single pieces first, what closes the garment late
(common practice, no source).
"""

from typing import Final

from notchbook.pattern import STAGES, Pattern, Piece, Seam, Stage
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM

_BY_WORD: Final[dict[str, tuple[Stage, int]]] = {
    "shoulder": ("shoulders", 0),
    "inseam": ("sides", 1),
    "crotch": ("sides", 2),
    "armhole": ("armholes", 0),
    "neck": ("neck", 1),
    "gorge": ("neck", 1),
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
        return "sleeves", int(seam.allowance_class == "side")  # what shapes it first, then it is closed
    if pieces and all(is_lining(piece.name) for piece in pieces):
        when = _by_word(words) or _by_class(seam)
        return "lining", STAGES.index(when[0])  # a lining is closed in the order of the garment
    if seam.allowance_class == "lining":
        return "lining", _when_faced(pattern, {piece.name for piece in pieces})
    if pieces and all(piece.rule is not None for piece in pieces):
        return _by_word(words) or ("neck", 0)  # a facing or collar is closed before it is sewn on
    return _by_word(words) or _by_class(seam)


def _when_faced(pattern: Pattern, pieces: set[str]) -> int:
    """When a lining is sewn to a facing: as the facing is to the garment, a front edge before armholes."""
    faced = (
        seam
        for seam in pattern.seams.values()
        if seam.seam_class == TURNED_SEAM
        and any(pattern.carriers.get(use.edge) in pieces for use in (*seam.first, *seam.second))
    )
    first = next(faced, None)
    return len(STAGES) if first is None else STAGES.index(stage_of(pattern, first)[0])


def _by_word(words: set[str]) -> tuple[Stage, int] | None:
    return next((when for word, when in _BY_WORD.items() if word in words), None)


def _by_class(seam: Seam) -> tuple[Stage, int]:
    return _BY_CLASS.get(seam.allowance_class, ("panels", 0))


def _closes_in_seam(seam: Seam, pieces: list[Piece]) -> bool:
    """Whether the seam closes two bags that each have an opening: they lie in a seam of the garment."""
    openings = (any(last_word(edge.name) == "opening" for edge in piece.outline) for piece in pieces)
    return seam.allowance_class == "pocket_bag" and all(openings)


def is_lining(piece: str) -> bool:
    """Whether the piece of this name is one of a lining."""
    return "lining" in _words(piece)


def _is_bag(pattern: Pattern, piece: Piece) -> bool:
    """Whether an edge of the piece is closed to a bag, whatever the step that made it is called."""
    given = (pattern.allowances.get(edge.name) for edge in piece.outline)
    return any(one is not None and one.allowance_class == "pocket_bag" for one in given)


def _words(piece: str) -> list[str]:
    return split_side(piece)[0].replace(".", "_").split("_")
