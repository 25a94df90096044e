"""The part of a piece that is folded back: from its free edge to the line on which it is folded."""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, InternalLine, Piece
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class FoldedBack:
    """The edges of the part that is folded back, in the order of the outline, and the line of its fold, from
    the last of them back to the first."""

    edges: tuple[Edge, ...]
    fold: InternalLine


def folded_back(piece: Piece, free_edge: str) -> FoldedBack | None:
    """What is folded back with this edge of the outline; None where no fold line runs from corner to corner.

    Of several folds the one that leaves the least of the piece beyond it.
    """
    found = [part for line in piece.lines for part in _beyond(piece, line) if _has(part, free_edge)]
    return min(found, key=lambda part: abs(as_piece(piece, part).sew_line.area()), default=None)


def as_piece(piece: Piece, part: FoldedBack) -> Piece:
    """The part as a piece of its own, cut along the fold; it has the name of the whole piece still."""
    plain = tuple(replace(edge, kind="plain") for edge in part.edges)
    fold = Edge(part.fold.name, part.fold.path, plain[-1].end, plain[0].start, "plain")
    return replace(piece, outline=(*plain, fold), intakes=(), lines=(), marks=(), inner_darts=())


def _has(part: FoldedBack, name: str) -> bool:
    return any(edge.name == name for edge in part.edges)


def _beyond(piece: Piece, line: InternalLine) -> tuple[FoldedBack, ...]:
    """Both parts of a piece that a fold line from corner to corner divides; none where it ends elsewhere."""
    one, other = _corner(piece, line.path.start), _corner(piece, line.path.end)
    if line.kind != "fold_line" or one is None or other is None or one == other:
        return ()
    return _part(piece, line, one, other), _part(piece, line, other, one)


def _part(piece: Piece, line: InternalLine, begin: int, end: int) -> FoldedBack:
    count = len(piece.outline)
    edges = tuple(piece.outline[(begin + index) % count] for index in range((end - begin) % count))
    fold = Path.line(edges[-1].path.end, edges[0].path.start)
    return FoldedBack(edges, replace(line, path=fold))


def _corner(piece: Piece, place: Point) -> int | None:
    """Which edge of the outline begins at this place; None where none does."""
    begins = (
        index
        for index, edge in enumerate(piece.outline)
        if edge.path.start.distance_to(place) <= TOLERANCES.sew_length
    )
    return next(begins, None)
