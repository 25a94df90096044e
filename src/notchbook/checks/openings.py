"""Openings of a garment as sewn: neck, waist, sleeve and leg, closed all round, and what a zip adds."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from notchbook.checks.sewn import sewn
from notchbook.pattern import Edge, Pattern, Piece, split_side
from notchbook.pattern.hems import given_hems
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.zip_openings import zip_opening

OpeningKind = Literal["neck", "waist", "sleeve", "leg"]

_TRACED = frozenset({"facing", "interfacing", "interlining", "lining", "band", "waistband", "bag"})
"""Words of pieces that lie on others: their edges repeat those of the garment."""


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening that is closed all round: its edges, how long they are as sewn round the body or limb (mm),
    and how much longer the zips beside it make it when they are open."""

    kind: OpeningKind
    edges: tuple[str, ...]
    length: float
    zips: float
    over_bust: bool

    @property
    def widest(self) -> float:
        """What passes through it at most, mm."""
        return self.length + self.zips


def openings(pattern: Pattern) -> Iterator[Opening]:
    """Every opening of the pattern whose edges meet all round; one that falls open has nothing to pass."""
    outer = [
        piece for piece in pattern.pieces.values() if not _words(piece.name) & _TRACED and not piece.stretches
    ]
    sewn_edges = _sewn_edges(pattern)
    for kind, edges in _rings(outer, sewn_edges | given_hems(pattern)):
        if edges:
            found = _opening(pattern, kind, edges, sewn_edges)
            if found is not None:
                yield found


def _rings(outer: list[Piece], finished: frozenset[str]) -> Iterator[tuple[OpeningKind, list[Edge]]]:
    """The rings of edges, of which ``finished`` are sewn to something or hemmed."""
    yield "neck", [edge for piece in outer for edge in _called(piece, "neck") if edge.name not in finished]
    upper = [piece for piece in outer if _called(piece, "armhole")]
    lower = [piece for piece in outer if piece not in upper]
    waist = [
        edge
        for piece in (lower if any(_called(piece, "waist") for piece in lower) else upper)
        for edge in _called(piece, "waist")
    ]
    closed = [edge for edge in waist if edge.kind == "hem" or edge.name in finished]
    yield "waist", waist if len(closed) == len(waist) else []  # a band or a skirt is still to come
    for side in ("both", "left", "right"):
        sleeves = [piece for piece in outer if split_side(piece.name)[1] == side and is_sleeve(piece)]
        yield "sleeve", [edge for piece in sleeves for edge in piece.outline if edge.kind == "hem"]
    for side in ("both", "left", "right"):
        legs = [piece for piece in outer if split_side(piece.name)[1] == side and _called(piece, "inseam")]
        yield "leg", [edge for piece in legs for edge in piece.outline if edge.kind == "hem"]


def _opening(
    pattern: Pattern, kind: OpeningKind, edges: list[Edge], sewn_edges: frozenset[str]
) -> Opening | None:
    """The opening; None where it falls open somewhere."""
    zips = 0.0
    names = {edge.name for edge in edges}
    for edge in edges:
        for neighbor, corner in _neighbors(pattern.piece_of(edge.name), edge):
            if neighbor.name in names or neighbor.kind in ("fold", "leg"):
                continue
            if neighbor.name not in sewn_edges or _is_stand(neighbor):
                return None
            zips = max(zips, _zip_length(pattern, neighbor, corner))
    round_body = kind in ("neck", "waist")
    length = sum(_times(pattern, edge, round_body) * _stretched(pattern, edge) for edge in edges)
    upper = any(_called(piece, "armhole") for piece in pattern.pieces.values())
    return Opening(kind, tuple(edge.name for edge in edges), length, 2.0 * zips, upper)


def _stretched(pattern: Pattern, edge: Edge) -> float:
    """How long the edge is when something passes, mm: as sewn; as cut where an elastic gathers it."""
    held = {
        member
        for one in pattern.elastics.values()
        for name in one.edges
        for member in expand(pattern, name)[0]
    }
    return edge.length if edge.name in held else sewn(pattern, edge)


def _is_stand(edge: Edge) -> bool:
    """Whether the edge is the end of a button stand: it falls open, faced or not."""
    return last_word(edge.name).split("_")[0] == "lap"


def _neighbors(piece: Piece, edge: Edge) -> tuple[tuple[Edge, str], tuple[Edge, str]]:
    index = piece.edge_index(edge.name)
    after = piece.outline[(index + 1) % len(piece.outline)]
    return (piece.outline[index - 1], edge.start), (after, edge.end)


def _times(pattern: Pattern, edge: Edge, round_body: bool) -> int:
    is_half = pattern.piece_of(edge.name).cut in ("fold", "pair")
    return 2 if round_body and is_half else 1


def _zip_length(pattern: Pattern, edge: Edge, corner: str) -> float:
    """How far a zip in this edge opens from the corner, mm; 0 where there is none.

    One without a notch, by its allowance alone, opens the whole edge.
    """
    opened = zip_opening(pattern, edge, corner)
    has_zip = opened > 0.0 or any(
        allowance.allowance_class == "zip" and edge.name in expand(pattern, name)[0]
        for name, allowance in pattern.allowances.items()
    )
    return opened or (edge.length if has_zip else 0.0)


def _sewn_edges(pattern: Pattern) -> frozenset[str]:
    return frozenset(
        member
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for member in expand(pattern, use.edge)[0]
    )


def _called(piece: Piece, word: str) -> list[Edge]:
    """The edges of a piece that are called so, or are parts of such an edge."""
    return [
        edge
        for edge in piece.outline
        if edge.kind not in ("leg", "fold") and word in split_side(edge.name)[0].split("/")[1:]
    ]


def is_sleeve(piece: Piece) -> bool:
    """Whether the piece has the cap of a sleeve, whole or in halves."""
    return any(is_cap(edge.name) for edge in piece.outline)


def is_cap(edge: str) -> bool:
    """Whether an edge is the cap of a sleeve or a part of it."""
    return any(part.split("_")[0] == "cap" for part in split_side(edge)[0].split("/")[1:])


def _words(piece: str) -> set[str]:
    return set(last_word(piece).split("_")) | set(split_side(piece)[0].split(".")[0].split("_"))
