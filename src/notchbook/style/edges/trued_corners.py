"""A corner trued where an edge turned but did not move: the edge across bends and keeps its length."""

from notchbook.geometry import Path
from notchbook.pattern import Piece
from notchbook.style.edges.end_turns import bent_end, turned
from notchbook.style.edges.redrawn import redrawn

_LEAST_TURN = 0.3
"""Degrees below which a corner is left as it is: a protractor does not show it."""

_MOST_TURN = 12.0
"""Degrees above which it is another corner, for the checks to speak of. Own judgment."""

_TRIES = 6


def trued_corner(before: Piece, after: Piece, moved: str, across: str) -> Piece:
    """The piece with the corner between two neighbors at the angle that it had before one of them was moved.

    ``moved`` is the edge that turned there, ``across`` the one that follows. The corner slides by what the
    bend would cost in length, some tenths of a millimeter at most, and the moved edge ends there.
    """
    old, new, edge = before.edge(moved), after.edge(moved), after.edge(across)
    at_end = new.end == edge.start
    turn = turned(old.path, new.path, at_end=at_end)
    if not _LEAST_TURN <= abs(turn) <= _MOST_TURN:
        return after
    toward = edge.path.reversed() if at_end else edge.path
    bent = bent_end(toward, turn)
    way = bent.tangent_at(bent.length)
    slid = 0.0
    path = bent
    for _ in range(_TRIES):
        path = bent.with_end(bent.end - way * slid)
        slid += path.length - toward.length
    seam = new.path.with_end(path.end) if at_end else new.path.with_start(path.end)
    return redrawn(after, {moved: seam, across: _back(path, reverse=at_end)})


def _back(path: Path, *, reverse: bool) -> Path:
    return path.reversed() if reverse else path
