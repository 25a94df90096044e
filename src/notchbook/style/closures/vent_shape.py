"""The outline of a piece with the extension of a vent at the lower end of a straight edge."""

from dataclasses import replace
from typing import NamedTuple

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Edge, EdgeKind, InternalLine, Piece, child_name, part_name, piece_name, spoken
from notchbook.pattern.names import last_word
from notchbook.units import TOLERANCES


class VentSizes(NamedTuple):
    """The vent in mm: height, width, slant of its top, and how deep the hem of its miter is (0: none)."""

    height: float
    width: float
    slant: float
    miter: float


def vented(
    piece: Piece, edge: Edge, hem_end: str, sizes: VentSizes, slug: str
) -> tuple[Piece, tuple[str, ...]]:
    """The piece with the extension on the end of ``edge`` at the hem, and the two parts of the edge.

    Mitered, its lower corner is cut off from the end of the fold to as high above the hem as that is deep:
    turned in, this line lies on that at which the hem ends (closed form).
    """
    height, width, slant, miter = sizes
    owner = piece_name(slug, last_word(piece.name))
    runs_down = edge.end == hem_end
    down = edge if runs_down else edge.reversed()
    upper, lower = down.path.split_at(down.length - height)
    if lower.start.distance_to(lower.end) < lower.length - TOLERANCES.sew_length:
        raise StepRefused("vent-edge-curved", edge=spoken(edge.name))
    along = lower.tangent_at(0.0)
    outward = along.perpendicular() * (-width if runs_down else width)
    outer = lower.end + outward - along * miter
    corners = (lower.start, lower.start + outward + along * slant, outer, lower.end)
    points = (
        part_name(owner, "top_inner"),
        part_name(owner, "top_outer"),
        part_name(owner, "hem_outer" if miter == 0.0 else "miter_outer"),
        hem_end,
    )
    last = part_name(owner, "hem" if miter == 0.0 else "miter")
    names = (part_name(owner, "top"), child_name(edge.name, "vent"), last)
    kinds: tuple[EdgeKind, ...] = ("plain", "plain", "hem" if miter == 0.0 else "plain")
    edges = [Edge(child_name(edge.name, "seam"), upper, down.start, points[0], edge.kind)]
    edges += [
        Edge(names[i], Path.line(corners[i], corners[i + 1]), points[i], points[i + 1], kinds[i])
        for i in range(3)
    ]
    children = (edges[0].name, names[1])
    if not runs_down:
        edges = [one.reversed() for one in reversed(edges)]
        children = children[::-1]
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *edges, *piece.outline[index + 1 :])
    fold = InternalLine(part_name(owner, "fold_line"), lower, "fold_line")
    return replace(piece, outline=outline, lines=(*piece.lines, fold)), children
