"""A facing that was made before a zip opens the garment at its end, as before a fly, which is made last: its
ends are sewn to each other there no longer."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from notchbook.pattern import Edge, Pattern, Seam, run_of
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.sewn import Directed
from notchbook.pattern.zip_openings import zip_opening
from notchbook.style.traced.zip_ends import sewn_to_tape


@dataclass(frozen=True, slots=True)
class Opened:
    """The pattern, and the seams that are gone from it with the reason."""

    pattern: Pattern
    removals: Mapping[str, str]


def opened_behind(pattern: Pattern, slug: str, zips: Sequence[str]) -> Opened:
    """The facings opened where a zip opens what they face; ``zips``: its lines of the sewing order."""
    ends = {
        edge.name: pattern.piece_of(edge.name)
        for seam in pattern.seams.values()
        if seam.seam_class == TURNED_SEAM and pattern.piece_of(seam.first[0].edge).rule is not None
        for edge in _ends_at_zip(pattern, seam)
    }
    closed = [seam.name for seam in pattern.seams.values() if _joins_sides(seam, ends)]
    if not closed:
        return Opened(pattern, {})
    line = sewn_to_tape(pattern, slug, tuple(ends.values()), tuple(ends), zips)
    after = pattern.with_seams(without=closed).with_operations(line)
    return Opened(after, dict.fromkeys(closed, "a zip opens there"))


def _joins_sides(seam: Seam, edges: Mapping[str, object]) -> bool:
    """Whether one of the edges is sewn to its own reflection."""
    return any(use.side != "both" and use.edge in edges for use in (*seam.first, *seam.second))


def _ends_at_zip(pattern: Pattern, seam: Seam) -> Iterator[Edge]:
    """The edges of the facing at those ends of its seam where a zip begins to open what it faces."""
    inner, outer = run_of(pattern, seam.first), run_of(pattern, seam.second)
    corners = (
        ((inner[0].edge, inner[0].start), (outer[0].edge, outer[0].start)),
        (_last(inner[-1]), _last(outer[-1])),
    )
    for (edge, corner), (faced, at) in corners:
        if zip_opening(pattern, _beside(pattern, faced, at), at) > 0.0:
            yield _beside(pattern, edge, corner)


def _last(step: Directed) -> tuple[Edge, str]:
    return step.edge, step.edge.end if step.forward else step.edge.start


def _beside(pattern: Pattern, edge: Edge, corner: str) -> Edge:
    piece = pattern.piece_of(edge.name)
    return piece.edge_after(edge.name) if edge.end == corner else piece.edge_before(edge.name)
