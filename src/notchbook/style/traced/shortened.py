"""A traced edge made shorter for the turn of the cloth: drawn in near its ends, its directions there kept."""

from notchbook.geometry import Path, Point
from notchbook.style.edges.carried_edge import Carry, carried_edge

_ROUNDS = 20
_EXACT = 1e-6

_REACH = 40.0
"""mm from an end along which an edge is drawn in; no more than half of it. Own judgment."""


def shortened(path: Path, at_start: float, at_end: float) -> Path:
    """The path with its ends moved inward along itself, shorter by the sum of both amounts, mm.

    The corners that it makes with its neighbors keep their angles when these are moved with its ends.
    """
    if at_end > 0.0:
        path = _end_moved(path, at_end)
    return _end_moved(path.reversed(), at_start).reversed() if at_start > 0.0 else path


def _end_moved(path: Path, amount: float) -> Path:
    """The path shorter by the amount, its last stretch drawn in."""
    kept, rest = path.split_at(path.length - min(_REACH, path.length / 2.0))
    back = rest.tangent_at(rest.length) * -amount
    share, drawn = 1.0, rest
    for _ in range(_ROUNDS):
        drawn = carried_edge(rest, Carry(Point(0.0, 0.0), back * share, Point(0.0, 0.0)))
        missing = amount - (rest.length - drawn.length)
        if abs(missing) <= _EXACT:
            break
        share += missing / amount
    return kept.joined(drawn)
