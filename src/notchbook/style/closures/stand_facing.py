"""The facing of a button stand as a piece of its own: what lies behind the front, down its edge."""

from notchbook.geometry import Path
from notchbook.pattern import CutInstruction, Edge, EdgeKind, EdgeUse, Piece, Seam, part_name
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.style.closures.stand_outline import StandDrawn


def stand_facing(stand: StandDrawn, name: str) -> Piece:
    """The facing: along the edge of the stand, its ends and its free edge."""
    assert stand.faced is not None
    upper, lower = stand.faced
    walked = [
        Path.line(upper.start, lower.start),
        lower,
        Path.line(lower.end, upper.end),
        upper.reversed(),
    ]
    words = ("lap", "facing_bottom", "facing_edge", "facing_top")
    points = ("lap_top_outer", "lap_bottom_outer", "facing_bottom_inner", "facing_top_inner")
    kinds: tuple[EdgeKind, ...] = ("seam", _kind(stand.beside[1]), "plain", _kind(stand.beside[0]))
    edges = [
        Edge(
            part_name(name, words[index]),
            walked[index],
            part_name(name, points[index]),
            part_name(name, points[(index + 1) % 4]),
            kinds[index],
        )
        for index in range(4)
    ]
    whole = Path(tuple(segment for edge in edges for segment in edge.path.segments))
    ring = [edge.reversed() for edge in reversed(edges)] if whole.area() < 0.0 else edges
    return Piece(
        name=name,
        title=f"{stand.piece.title} facing",
        outline=tuple(ring),
        grain=stand.piece.grain,
        cut=stand.piece.cut,
        side=stand.piece.side,
        instructions=(CutInstruction("self"), CutInstruction("fusible")),
        rule=name.split(".", 1)[0],
    )


def _kind(beside: Edge) -> EdgeKind:
    return "hem" if beside.kind == "hem" else "plain"


def facing_seam(slug: str, owner: str, facing: str) -> Seam:
    """The edge of the stand sewn to its facing, and turned."""
    return Seam(
        part_name(slug, f"{last_word(owner)}_facing"),
        (EdgeUse(part_name(facing, "lap"), part_name(facing, "lap_top_outer")),),
        (EdgeUse(part_name(owner, "lap"), part_name(owner, "lap_top_outer")),),
        allowance_class="facing_edge",
        seam_class=TURNED_SEAM,
    )
