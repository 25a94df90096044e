"""A piece made smaller all round: each edge moved inward, but for the fold and the legs of darts."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, offset
from notchbook.pattern import Edge, Piece, spoken
from notchbook.style.edges.redrawn import require_plain
from notchbook.style.edges.tidied import tidied


def inset(piece: Piece, amount: float) -> Piece:
    """The piece with every edge but the fold and legs moved inward by the amount, mm; lines and marks stay.

    StepRefused ``trim-too-much`` where nothing of an edge is left.
    """
    if amount <= 0.0:
        return piece
    paths = [_moved(edge, amount) for edge in piece.outline]
    count = len(paths)
    starts, ends = [0.0] * count, [path.length for path in paths]
    longer = [_carried(path, amount) for path in paths]
    for index in range(count):
        following = (index + 1) % count
        crossings = longer[index].intersections(longer[following])
        if not crossings:
            raise StepRefused("trim-too-much", edge=spoken(piece.outline[index].name), amount=amount)
        crossing = max(crossings, key=lambda found: found.at_self)
        ends[index], starts[following] = crossing.at_self, crossing.at_other
    outline: list[Edge] = []
    for index, edge in enumerate(piece.outline):
        if ends[index] - starts[index] <= 1.0:
            raise StepRefused("trim-too-much", edge=spoken(edge.name), amount=amount)
        left = tidied(longer[index].between(starts[index], ends[index]))
        outline.append(replace(edge, path=left))
    closed = [
        replace(edge, path=edge.path.with_end(outline[(index + 1) % count].path.start))
        for index, edge in enumerate(outline)
    ]
    smaller = replace(piece, outline=tuple(closed))
    require_plain(smaller)
    return smaller


def _moved(edge: Edge, amount: float) -> Path:
    return edge.path if edge.kind in ("fold", "leg") else offset(edge.path, amount)


def _carried(path: Path, amount: float) -> Path:
    """The path carried on straight at both ends, to meet its neighbors."""
    by = 4.0 * amount
    start = Path.line(path.start - path.tangent_at(0.0) * by, path.start)
    return start.joined(path).joined(Path.line(path.end, path.end + path.tangent_at(path.length) * by))
