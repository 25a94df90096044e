"""The shapes of a fly: the line of its free edge, and of the stitches that hold it."""

from notchbook.geometry import Path, curve_between, offset
from notchbook.pattern import Edge

_ROUND = 1.3
"""Height of the round lower end over the width there. Own judgment: a J as it is stitched."""


def j_line(fly: Path, width: float) -> Path:
    """The J beside a fly that is walked down, so far to the left of the walk, mm: down from the waist and
    round to the lower end of the fly."""
    beside = offset(fly, width)
    height = min(_ROUND * abs(width), 0.6 * beside.length)
    kept, _ = beside.split_at(beside.length - height)
    down = kept.tangent_at(kept.length)
    arriving = (fly.end - kept.end).unit()
    across = arriving - down * arriving.dot(down)
    into = (across.unit() + down * 0.35).unit()
    return kept.joined(Path.of(curve_between(kept.end, down.direction(), fly.end, into.direction())))


def walked_down(edge: Edge, top: str) -> Path:
    """The edge from its upper end down."""
    return edge.path if edge.start == top else edge.path.reversed()
