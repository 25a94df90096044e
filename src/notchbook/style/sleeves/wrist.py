"""The lower end of a sleeve as a cuff comes to it: its edges in order, and the slit of a placket."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, InternalLine, Pattern, part_name, piece_name, require, spoken
from notchbook.pattern.names import instance_of, last_word
from notchbook.style.sleeves.figures import TOWER_SEAM


@dataclass(frozen=True, slots=True)
class Wrist:
    """The run of the hem from the upper edge of the slit, or from a seam, round the arm; how long the slit
    is, mm (0: none); how many of its edges come before the seam of the sleeve; and with a tower how far that
    and the strip below it reach beyond the slit, mm (None: no tower)."""

    uses: tuple[EdgeUse, ...]
    slit: float
    before_seam: int
    tower: tuple[float, float] | None = None

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
    at, slit = next(((index, one) for index, one in enumerate(slits, 1) if one is not None), (0, None))
    uses = tuple(EdgeUse(edge.name, edge.start) for edge in (*edges[at:], *edges[:at]))
    if slit is None:
        return Wrist(uses, 0.0, 1)
    return Wrist(uses, slit.path.length, len(edges) - at, _tower_at(pattern, slit.name))


def _slit_at(pattern: Pattern, point: str) -> InternalLine | None:
    """The slit that begins at a point of the outline; None where there is none."""
    piece = pattern.pieces[pattern.carriers[point]]
    place = piece.points[point]
    for line in piece.lines:
        if line.kind == "cut_line" and line.path.start.distance_to(place) < 0.1:
            return line
    return None


def _tower_at(pattern: Pattern, slit: str) -> tuple[float, float] | None:
    """How far the tower of a slit, and the strip below it, reach beyond it as sewn, mm; None without one.

    Each is folded in half, and its seam lies inside the edge of the slit. A strip that is no wider than that
    seam binds the edge and reaches no farther.
    """
    own = instance_of(slit)
    tower, strip = (pattern.pieces.get(piece_name(own, word)) for word in ("tower", "strip"))
    if tower is None or strip is None:
        return None
    over, under = (
        one.edge(part_name(one.name, "lower_end")).length / 2.0 - TOWER_SEAM.value for one in (tower, strip)
    )
    return over, max(under, 0.0)
