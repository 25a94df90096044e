"""Laying two pieces together along an edge that they share, to make one piece."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Transform
from notchbook.pattern.names import spoken
from notchbook.pattern.piece import Edge, Piece
from notchbook.units import TOLERANCES

_SAMPLES = 33
"""Places compared along the two edges; a cubic cannot leave its mate unseen between so many."""


def laying_motion(still: Path, moved: Path) -> Transform:
    """The rigid motion that lays ``moved`` on ``still``, ends to ends."""
    return Transform.carrying(moved.start, moved.end, still.start, still.end)


def gap_between(still: Path, moved: Path) -> float:
    """The largest distance between two paths walked together from their starts, mm."""
    shares = [index / (_SAMPLES - 1) for index in range(_SAMPLES)]
    return max(
        still.point_at(still.length * share).distance_to(moved.point_at(moved.length * share))
        for share in shares
    )


def join_outlines(still: Piece, still_edge: str, moved: Piece, moved_edge: str) -> tuple[Piece, Piece]:
    """``still`` with ``moved`` laid to it along the two edges; also ``moved`` as it was laid.

    The joined edges vanish, the end points of ``still_edge`` keep their names and take the place of
    the other two. Refused (``join-misfit``) when the edges do not lie on each other within the
    closure tolerance: what is not the same line cannot be joined without changing the pattern.
    """
    seat = still.edge(still_edge)
    partner = moved.edge(moved_edge)
    motion = laying_motion(seat.path, partner.path.reversed())
    laid = moved.transformed(motion)
    gap = gap_between(seat.path, laid.edge(moved_edge).path.reversed())
    if gap > TOLERANCES.closure:
        raise StepRefused(
            "join-misfit",
            first=spoken(still_edge),
            second=spoken(moved_edge),
            gap=gap,
            first_length=seat.length,
            second_length=partner.length,
        )
    renamed = {partner.start: seat.end, partner.end: seat.start}
    inserted = _opened(laid, moved_edge, renamed, seat)
    index = still.edge_index(still_edge)
    outline = (*still.outline[:index], *inserted, *still.outline[index + 1 :])
    joined = replace(
        still,
        outline=outline,
        intakes=(*still.intakes, *laid.intakes),
        lines=(*still.lines, *laid.lines),
        marks=(*still.marks, *laid.marks),
        inner_darts=(*still.inner_darts, *laid.inner_darts),
    )
    return joined, laid


def _opened(laid: Piece, gone: str, renamed: dict[str, str], seat: Edge) -> tuple[Edge, ...]:
    """The edges of ``laid`` after the one that is gone, round to it, snapped to the seat's ends."""
    begin = laid.edge_index(gone)
    count = len(laid.outline)
    edges = [laid.outline[(begin + step) % count] for step in range(1, count)]
    edges[0] = replace(edges[0], path=edges[0].path.with_start(seat.path.start))
    edges[-1] = replace(edges[-1], path=edges[-1].path.with_end(seat.path.end))
    return tuple(
        replace(edge, start=renamed.get(edge.start, edge.start), end=renamed.get(edge.end, edge.end))
        for edge in edges
    )
