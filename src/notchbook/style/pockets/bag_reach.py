"""How far a bag may reach behind its piece."""

from collections.abc import Collection
from typing import Final

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Edge, Piece, split_side, spoken

_ENDS: Final = frozenset(
    {
        "center_front",
        "center_back",
        "crotch_seam",
        "inseam",
        "side_seam",
        "waist",
        "armhole",
        "neck",
        "shoulder",
    }
)
"""Words of edges where the part of the body ends that the piece covers. Behind a seam between panels a bag
hangs as free as behind one piece."""


def require_reach(piece: Piece, bag: Path, but: Collection[str] = ()) -> None:
    """StepRefused ``pocket-bag-past-edge`` where a bag behind the piece would run over its hem, its center or
    a seam at which its part of the body ends. It may hang over the edges that are named."""
    for edge in piece.outline:
        if edge.name not in but and _ends_there(edge) and edge.path.intersections(bag):
            raise StepRefused("pocket-bag-past-edge", piece=spoken(piece.name), edge=spoken(edge.name))


def _ends_there(edge: Edge) -> bool:
    words = split_side(edge.name)[0].split("/")[1:]
    return edge.kind in ("hem", "fold") or (edge.kind != "leg" and not _ENDS.isdisjoint(words))
