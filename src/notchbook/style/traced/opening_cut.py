"""An edge divided for an opening in its seam: above, the opening, and below."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Pattern, Piece, Place, child_name, directed, locate, part_name, spoken


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening in an edge: the pattern with it, its piece, the edge of the opening and that which
    was divided, the name of its top, its path walked down, the direction into the piece, and whether the
    outline runs down there."""

    pattern: Pattern
    splits: Mapping[str, tuple[str, ...]]
    piece: Piece
    edge: str
    old_edge: str
    top: str
    down: Path
    inward: Point
    runs_down: bool


def opening_cut(pattern: Pattern, top: Place, length: float, owner: str) -> Opening:
    """Divide the edge at a place and so far below it (mm); new points are named under ``owner``.

    StepRefused ``pocket-across`` where both ends do not lie on one edge.
    """
    begin = locate(pattern, top)
    end = locate(pattern, replace(top, amount=top.amount + length))
    if begin.edge.name != end.edge.name:
        raise StepRefused(
            "pocket-across", first=spoken(begin.edge.name), second=spoken(end.edge.name), length=length
        )
    edge, piece = begin.edge, pattern.pieces[begin.piece]
    runs_down = end.distance > begin.distance
    low, high = sorted((begin.distance, end.distance))
    before, rest = edge.path.split_at(low)
    middle, after = rest.split_at(high - low)
    points = [part_name(owner, word) for word in ("opening_top", "opening_end")]
    words = ["above", "opening", "below"]
    if not runs_down:
        points, words = points[::-1], words[::-1]
    names = [child_name(edge.name, word) for word in words]
    parts = (
        Edge(names[0], before, edge.start, points[0], edge.kind),
        Edge(names[1], middle, points[0], points[1], edge.kind),
        Edge(names[2], after, points[1], edge.end, edge.kind),
    )
    index = piece.edge_index(edge.name)
    divided = replace(piece, outline=(*piece.outline[:index], *parts, *piece.outline[index + 1 :]))
    walks_down = directed(pattern, top.edge, top.from_point)[0]
    down = middle if runs_down else middle.reversed()
    chord = (middle.end - middle.start).unit()
    return Opening(
        pattern.with_pieces(divided),
        {edge.name: tuple(names)},
        divided,
        names[1],
        edge.name,
        part_name(owner, "opening_top"),
        down,
        chord.perpendicular(),
        walks_down.forward,
    )
