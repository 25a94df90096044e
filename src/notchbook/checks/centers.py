"""Where edges meet a center: a fold, or a seam that joins a piece to its reflection."""

from collections.abc import Iterator

from notchbook.checks.corners import End
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Edge, Pattern, Piece

_ENDS: tuple[End, End] = ("start", "end")


def centers(pattern: Pattern) -> Iterator[tuple[Piece, Edge, End]]:
    """Every end of a fold, and of a run of edges that is sewn to its own reflection."""
    for piece in pattern.pieces.values():
        for edge in piece.outline:
            if edge.kind == "fold":
                yield from ((piece, edge, end) for end in _ENDS)
    for walked in walked_seams(pattern):
        first, second = walked.runs
        for index in (0, -1):
            edge = first[index].edge
            if edge.name == second[index].edge.name:
                at_start = index == 0
                end: End = "start" if first[index].forward == at_start else "end"
                yield pattern.piece_of(edge.name), edge, end
