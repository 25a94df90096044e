"""Facings: pieces that are sewn to an edge of the garment, turned in, and end in a free edge."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.finish.sewing.joints import Joints, steps
from notchbook.finish.sewing.seam_words import seam_word
from notchbook.finish.sewing.stages import is_lining, stage_of
from notchbook.pattern import Edge, Pattern, Piece, Seam, split_side
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM

_FREE = "edge"
"""How the free edge of a traced facing is called."""

_ROLLED = frozenset({"collar_edge", "facing_edge"})
"""Classes of edges that turn back, as a lapel does, or are seen from both sides: what is done to them their
steps tell."""


_UPPER_NECK = "upper_neck"
"""How the seam is called by which the upper layer of a collar meets the neck: on a shawl, its facing."""


@dataclass(frozen=True, slots=True)
class FacedEdge:
    """An edge of the garment, such as its neck, with the seams that face it in one go: ``rule`` is the step
    of the facing, ``word`` what the edge is called, ``pieces`` the facing's."""

    rule: str
    word: str
    seams: tuple[Seam, ...]
    pieces: tuple[Piece, ...]


def faced_edges(pattern: Pattern, joints: Joints) -> tuple[FacedEdge, ...]:
    """The faced edges of the garment; seams that meet there are sewn in one go."""
    alike: dict[tuple[str, str, object], list[Seam]] = {}
    for seam in pattern.seams.values():
        piece = _facing_of(pattern, seam)
        if piece is not None and piece.rule is not None:
            key = piece.rule, seam_word(pattern, seam), stage_of(pattern, seam)
            alike.setdefault(key, []).append(seam)
    return tuple(
        FacedEdge(rule, word, run, _pieces(pattern, run))
        for (rule, word, _), seams in alike.items()
        for run in _met(pattern, joints, seams)
    )


def free_edges(piece: Piece) -> tuple[Edge, ...]:
    """The free edges of a facing, or the stretches of it."""
    return tuple(edge for edge in piece.outline if _FREE in split_side(edge.name)[0].split("/")[1:2])


def own_seams(pattern: Pattern, pieces: tuple[Piece, ...]) -> tuple[Seam, ...]:
    """The seams that join these pieces to each other."""
    names = {piece.name for piece in pieces}
    return tuple(seam for seam in pattern.seams.values() if _carriers(pattern, seam) <= names)


def _facing_of(pattern: Pattern, seam: Seam) -> Piece | None:
    """The facing that the seam turns; None where it turns none."""
    run = steps(pattern, seam.first)
    if seam.seam_class != TURNED_SEAM or seam.allowance_class in _ROLLED or not run:
        return None
    piece = pattern.piece_of(run[0].edge.name)
    is_facing = piece.rule is not None and bool(free_edges(piece)) and not is_lining(piece.name)
    if last_word(seam.name) == _UPPER_NECK:
        return None
    return piece if is_facing else None


def _met(pattern: Pattern, joints: Joints, seams: list[Seam]) -> Iterator[tuple[Seam, ...]]:
    """The seams, those together whose facings are joined at their ends."""
    left = [(seam, _ends(pattern, seam)) for seam in seams]
    while left:
        run, waiting = list[Seam](), [left.pop(0)]
        while waiting:
            seam, ends = waiting.pop(0)
            run.append(seam)
            met = ends | {point for end in ends for point in joints.meets(end)}
            found = [one for one in left if one[1] & met]
            left = [one for one in left if one not in found]
            waiting.extend(found)
        yield tuple(run)


def _ends(pattern: Pattern, seam: Seam) -> frozenset[str]:
    run = steps(pattern, seam.first)
    return frozenset(point for step in (run[0], run[-1]) for point in (step.edge.start, step.edge.end))


def _carriers(pattern: Pattern, seam: Seam) -> frozenset[str]:
    run = (*steps(pattern, seam.first), *steps(pattern, seam.second))
    return frozenset(pattern.carriers[step.edge.name] for step in run)


def _pieces(pattern: Pattern, seams: tuple[Seam, ...]) -> tuple[Piece, ...]:
    run = (step for seam in seams for step in steps(pattern, seam.first))
    names = dict.fromkeys(pattern.carriers[step.edge.name] for step in run)
    return tuple(pattern.pieces[name] for name in names)
