"""The lower end of a sleeve as a cuff comes to it: its edges in order, and the slit of a placket."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, part_name, piece_name, require, spoken
from notchbook.pattern.names import last_word


@dataclass(frozen=True, slots=True)
class Wrist:
    """The run of the hem from the upper edge of the slit, or from a seam, round the arm; how long the slit
    is, mm (0: none); and how many of its edges come before the seam of the sleeve."""

    uses: tuple[EdgeUse, ...]
    slit: float
    before_seam: int

    @property
    def edges(self) -> tuple[str, ...]:
        """The edges in order."""
        return tuple(use.edge for use in self.uses)


def wrist_of(pattern: Pattern, sleeve: str) -> Wrist:
    """The hem of a sleeve in one piece, in two, or slit for a placket.

    StepRefused ``sleeve-missing`` where there is none, ``sleeve-without-wrist`` where its hem is gone.
    """
    name = part_name(piece_name(sleeve, "sleeve"), "hem")
    if name not in pattern.index:
        if piece_name(sleeve, "sleeve") in pattern.pieces:
            raise StepRefused("sleeve-without-wrist", sleeve=spoken(piece_name(sleeve, "sleeve")))
        there = sorted(piece.split(".", 1)[0] for piece in pattern.pieces if last_word(piece) == "sleeve")
        raise StepRefused("sleeve-missing", sleeve=sleeve, there=there or ["none"])
    edges = [pattern.edges[member] for member in require(pattern, name)]
    # The hem runs from its back end to its front: beyond the slit it goes round the front first. Where it is
    # pleated it has more parts.
    slits = [_slit_at(pattern, edge.start) for edge in edges[1:]]
    at = next((index for index, slit in enumerate(slits, 1) if slit > 0.0), 0)
    uses = tuple(EdgeUse(edge.name, edge.start) for edge in (*edges[at:], *edges[:at]))
    return Wrist(uses, slits[at - 1], len(edges) - at) if at else Wrist(uses, 0.0, 1)


def _slit_at(pattern: Pattern, point: str) -> float:
    """The length of the slit that begins at a point of the outline, mm; 0 where there is none."""
    piece = pattern.pieces[pattern.carriers[point]]
    place = piece.points[point]
    for line in piece.lines:
        if line.kind == "cut_line" and line.path.start.distance_to(place) < 0.1:
            return line.path.length
    return 0.0
