"""Where edges meet a center: a fold, or a seam that joins a piece to its reflection.

At the fork of a pair of trousers no edge meets the center: the crotch seam runs on from front to back across
the inseams, and whether it does so smoothly is judged there.
"""

from collections.abc import Iterator

from notchbook.checks.corners import End
from notchbook.checks.walks import walked_seams
from notchbook.pattern import Edge, Pattern, Piece
from notchbook.pattern.names import last_word, split_side

_FORK = "crotch_point"
"""The word of the point where the four panels of a pair of trousers meet."""

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
            edges = first[index].edge, second[index].edge
            if not are_reflections(edges[0].name, edges[1].name):
                continue
            steps = {
                edge.name: (edge, run[index].forward) for edge, run in zip(edges, walked.runs, strict=True)
            }
            for edge, is_forward in steps.values():
                end: End = "start" if is_forward == (index == 0) else "end"
                if last_word(edge.start if end == "start" else edge.end) != _FORK:
                    yield pattern.piece_of(edge.name), edge, end


def are_reflections(first: str, second: str) -> bool:
    """Whether two edges are one on the wearer's left and right: one name, or one name on two sides."""
    return split_side(first)[0] == split_side(second)[0]
