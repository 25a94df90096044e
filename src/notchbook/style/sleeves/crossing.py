"""Whether edges that were drawn anew cross the outline of their piece."""

from collections.abc import Collection, Iterable

from notchbook.pattern import Piece

_AT_END = 0.1
"""mm from the end of an edge within which it only meets its neighbor. Own judgment."""


def crosses(piece: Piece, drawn: Iterable[str], but: Collection[str] = ()) -> bool:
    """Whether one of these edges meets itself or another one elsewhere than at its own ends; what they do
    with the edges of ``but`` is not asked."""
    for name in drawn:
        path = piece.edge(name).path
        if path.self_crossings():
            return True
        ends = path.start, path.end
        for other in piece.outline:
            met = () if other.name in (name, *but) else path.intersections(other.path)
            if any(min(one.point.distance_to(end) for end in ends) > _AT_END for one in met):
                return True
    return False
