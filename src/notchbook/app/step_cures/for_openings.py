"""What might let the body through an opening: a zip in a seam that ends there, or a deeper neckline."""

import math
from collections.abc import Iterator

from notchbook.app.step_cures.proposed import Proposed
from notchbook.pattern import Edge, Finding, Pattern, Piece, sewn_length, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.units import Amount

ZIP_STEP = 10.0
"""mm; zips are cut to whole centimeters (common practice)."""

NECK_STEP = 10.0
"""mm by which a neckline is tried deeper."""

DEEPEST = 150.0
"""mm; a neckline that must be deeper than this to go over a head wants an opening. Own judgment."""

_CENTERS = ("center_back", "side_seam", "center_front", "sleeve_seam", "inseam")
"""The seams in which a zip is looked for, the usual one first (common practice)."""


def for_opening(pattern: Pattern, finding: Finding) -> tuple[Proposed, ...]:
    """A zip as long as is missing, in each seam that ends at the opening; for a neck also a deeper one."""
    if finding.measured is None or finding.wanted is None:
        return ()
    edges = [pattern.edges[name] for name in finding.names if name in pattern.edges]
    length = math.ceil((finding.wanted - finding.measured) / 2.0 / ZIP_STEP) * ZIP_STEP
    deeper = _deeper_necks(edges) if finding.code == "opening-under-head" else ()
    return (*_zips(pattern, edges, length), *deeper)


def _zips(pattern: Pattern, edges: list[Edge], length: float) -> Iterator[Proposed]:
    """A zip from the opening down, once for each seam; one that has a zip already is left alone."""
    beside = {edge.name: (edge, point) for edge, point in _sewn_beside(pattern, edges)}
    by_word: dict[str, tuple[Edge, str]] = {}
    for edge, point in beside.values():
        by_word.setdefault(_word(edge.name), (edge, point))
    for word in (word for word in _CENTERS if word in by_word):
        edge, point = by_word[word]
        if edge.name not in pattern.allowances and sewn_length(pattern, edge.name) > length:
            yield Proposed(
                "zip_opening",
                {"edge": edge.name, "from_point": point, "length": Amount.plain(length).text},
                f"put a zip of {Amount.plain(length).text} into {spoken(edge.name)}",
                value=Amount.plain(length).text,
            )


def _sewn_beside(pattern: Pattern, edges: list[Edge]) -> Iterator[tuple[Edge, str]]:
    """The sewn edges that meet the opening, each with the corner where it does."""
    own = {edge.name for edge in edges}
    sewn = {
        member
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for member in expand(pattern, use.edge)[0]
    }
    for edge in edges:
        for neighbor, corner in _around(pattern.piece_of(edge.name), edge):
            if neighbor.name in sewn - own and neighbor.kind not in ("fold", "leg"):
                yield neighbor, corner


def _around(piece: Piece, edge: Edge) -> tuple[tuple[Edge, str], tuple[Edge, str]]:
    index = piece.edge_index(edge.name)
    after = piece.outline[(index + 1) % len(piece.outline)]
    return (piece.outline[index - 1], edge.start), (after, edge.end)


def _word(name: str) -> str:
    """The word of the seam that an edge is a part of."""
    parts = name.split("/")[1:]
    return next((word for word in _CENTERS if word in parts), "")


def _deeper_necks(edges: list[Edge]) -> Iterator[Proposed]:
    """The front neckline deeper, by one step after another; front and back are drawn together."""
    necks = [(edge.name, point) for edge in edges for point in (_center_of(edge),) if point]
    front = next((edge for edge, point in necks if last_word(point) == "neck_pit"), None)
    if front is None or len(necks) != len(edges):
        return
    for step in range(1, int(DEEPEST / NECK_STEP) + 1):
        depth = step * NECK_STEP
        yield Proposed(
            "change_neckline",
            {
                "necks": [
                    {
                        "edge": edge,
                        "center": point,
                        "depth": Amount.plain(depth if edge == front else 0.0).text,
                    }
                    for edge, point in necks
                ]
            },
            f"draw {spoken(front)} deeper",
            depth,
            ladder="neck",
        )


def _center_of(edge: Edge) -> str:
    """The end of a neck edge at the center, where the neck was not divided; else empty."""
    for point in (edge.start, edge.end):
        if last_word(point) in ("neck_pit", "nape"):
            return point
    return ""
