"""Facings and linings that were made before a zip opens the garment at their end, as before a fly, which is
made last: there they are sewn to each other no longer.

What ends beside the zip, as a facing does, loses that seam. What goes on below it, as a lining does, is sewn
from the lower end of the zip on, where it gets a notch of its own.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from notchbook.pattern import (
    Edge,
    Notch,
    Operation,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    piece_name,
    run_of,
    split_side,
    with_side,
)
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.sewn import Directed
from notchbook.pattern.zip_openings import zip_opening
from notchbook.style.traced.zip_ends import sewn_to_tape

_BELOW = 20.0
"""mm of an edge below the zip from which on it is sewn there. Own judgment, as below a fly."""


@dataclass(frozen=True, slots=True)
class Opened:
    """The pattern, and the seams that are gone from it with the reason."""

    pattern: Pattern
    removals: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class _End:
    """An edge of what is turned in, its corner where a zip begins, and how far that opens, mm as sewn."""

    edge: Edge
    corner: str
    opened: float

    @property
    def goes_on(self) -> bool:
        """Whether the edge reaches below the zip and is sewn there."""
        return self.edge.length > self.opened + _BELOW


def opened_behind(pattern: Pattern, slug: str, zips: Sequence[str]) -> Opened:
    """The facings and linings opened where a zip opens what they lie behind; ``zips``: its lines of the
    sewing order."""
    ends = {end.edge.name: end for seam in pattern.seams.values() for end in _ends_at_zip(pattern, seam)}
    joined = {name for seam in pattern.seams.values() for name in _joined_sides(seam) if name in ends}
    below = [ends[name] for name in sorted(joined) if ends[name].goes_on]
    short = {name: pattern.piece_of(name) for name in ends if not ends[name].goes_on}
    closed = [seam.name for seam in pattern.seams.values() if short.keys() & _joined_sides(seam)]
    after = _sewn_below(pattern, slug, below, zips) if below else pattern
    if not closed:
        return Opened(after, {})
    line = sewn_to_tape(pattern, slug, tuple(short.values()), tuple(short), zips)
    after = after.with_seams(without=closed).with_operations(line)
    return Opened(after, dict.fromkeys(closed, "a zip opens there"))


def _sewn_below(pattern: Pattern, slug: str, ends: Sequence[_End], zips: Sequence[str]) -> Pattern:
    """The pattern with a notch on each edge where the zip ends, and the line of work for what lies above."""
    notches: list[Notch] = []
    after = dict.fromkeys(zips)
    for end in ends:
        piece = pattern.piece_of(end.edge.name)
        place = Place(end.edge.name, end.corner, end.opened)
        notches.append(Notch(_notch_name(slug, piece), place, purpose="zip stop"))
        after |= dict.fromkeys(_seams_of(pattern, piece))
    text = "Turn the edges of the lining in above its zip notch and sew them to the tape of the zip."
    owner = instance_of(ends[0].edge.name)
    names = tuple(end.edge.name for end in ends)
    line = Operation(part_name(slug, f"zip_edges_{owner}"), "lining", text, names, tuple(after))
    return pattern.with_notches(*notches).with_operations(line)


def _notch_name(slug: str, piece: Piece) -> str:
    base, side = split_side(piece.name)
    word = f"{instance_of(base)}_{last_word(base)}"
    return with_side(part_name(piece_name(slug, word), "zip_notch"), side)


def _seams_of(pattern: Pattern, piece: Piece) -> Iterator[str]:
    """The seams in which the piece is sewn."""
    for seam in pattern.seams.values():
        runs = (*run_of(pattern, seam.first), *run_of(pattern, seam.second))
        if any(pattern.carriers[one.edge.name] == piece.name for one in runs):
            yield seam.name


def _joined_sides(seam: Seam) -> frozenset[str]:
    """The edges that the seam sews to their own reflection, on sides that are alike or differ."""
    first, second = ({use.edge for use in uses} for uses in (seam.first, seam.second))
    alike = {split_side(name)[0] for name in first} & {split_side(name)[0] for name in second}
    return frozenset(name for name in first | second if split_side(name)[0] in alike)


def _ends_at_zip(pattern: Pattern, seam: Seam) -> Iterator[_End]:
    """The edges of what is turned in at those ends of its seam where a zip begins to open what it lies on."""
    if seam.seam_class != TURNED_SEAM:
        return
    inner, outer = run_of(pattern, seam.first), run_of(pattern, seam.second)
    if pattern.piece_of(inner[0].edge.name).rule is None:
        return
    corners = (
        ((inner[0].edge, inner[0].start), (outer[0].edge, outer[0].start)),
        (_last(inner[-1]), _last(outer[-1])),
    )
    for (edge, corner), (faced, at) in corners:
        opened = zip_opening(pattern, _beside(pattern, faced, at), at)
        behind = _beside(pattern, edge, corner)
        if opened > 0.0 and not zip_opening(pattern, behind, corner):
            yield _End(behind, corner, opened)


def _last(step: Directed) -> tuple[Edge, str]:
    return step.edge, step.edge.end if step.forward else step.edge.start


def _beside(pattern: Pattern, edge: Edge, corner: str) -> Edge:
    piece = pattern.piece_of(edge.name)
    return piece.edge_after(edge.name) if edge.end == corner else piece.edge_before(edge.name)
