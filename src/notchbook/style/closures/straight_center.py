"""A straight center down which a garment opens: its edge, its ends and its directions."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Edge,
    EdgeUse,
    Pattern,
    Piece,
    directed,
    require,
    require_one,
    split_side,
    spoken,
)
from notchbook.pattern.resolve import expand
from notchbook.units import TOLERANCES


@dataclass(frozen=True, slots=True)
class StraightCenter:
    """The straight edge of a piece at a center, with the end at the top.

    ``down`` and ``outward`` are unit directions: down the center, and away from the piece. ``runs_down``:
    whether the outline runs down there.
    """

    piece: Piece
    edge: Edge
    top: Point
    down: Point
    outward: Point
    runs_down: bool

    @property
    def length(self) -> float:
        """How long the center is, mm."""
        return self.edge.length

    @property
    def line(self) -> Path:
        """The center, walked down."""
        return self.edge.path if self.runs_down else self.edge.path.reversed()

    def at(self, distance: float, out: float = 0.0) -> Point:
        """The place so far down the center, mm, and so far outward of it."""
        return self.top + self.down * distance + self.outward * out


def straight_center(pattern: Pattern, name: str, top: str) -> StraightCenter:
    """The center of this name, whose upper end is ``top``.

    NameLost where it is gone, in parts, or ends elsewhere; StepRefused ``closure-edge-curved`` where it is
    not straight.
    """
    edge = pattern.edges[require_one(pattern, name)]
    (walk,) = directed(pattern, edge.name, top)
    require_straight(name, edge.path)
    inward = edge.path.tangent_at(0.0).perpendicular()
    line = walk.path
    down = (line.end - line.start).unit()
    return StraightCenter(pattern.piece_of(edge.name), edge, line.start, down, -inward, walk.forward)


def require_straight(name: str, path: Path) -> None:
    """Refused (``closure-edge-curved``) where the edge leaves its chord by more than sewing sees."""
    chord = Path.line(path.start, path.end)
    off = max(chord.nearest(place).gap for place in path.flattened(TOLERANCES.sew_length))
    if off > TOLERANCES.closure:
        raise StepRefused("closure-edge-curved", edge=spoken(name), off=off)


def seams_to_itself(pattern: Pattern, edges: Sequence[str]) -> list[str]:
    """The seams that join these edges to their own reflections.

    StepRefused ``closure-sewn-elsewhere`` where one of them is sewn to anything else.
    """
    named = {member for edge in edges for member in require(pattern, edge)}
    found: list[str] = []
    for seam in pattern.seams.values():
        uses = (*seam.first, *seam.second)
        used = {member for use in uses for member in expand(pattern, use.edge)[0]}
        if not used & named:
            continue
        if not used <= named or not _joins_the_sides(seam.first, seam.second):
            raise StepRefused("closure-sewn-elsewhere", edge=spoken(edges[0]), seam=spoken(seam.name))
        found.append(seam.name)
    return found


def _joins_the_sides(first: tuple[EdgeUse, ...], second: tuple[EdgeUse, ...]) -> bool:
    """Whether the two runs are one run on the wearer's left and right: one name, or one name on two sides."""
    return [split_side(use.edge)[0] for use in first] == [split_side(use.edge)[0] for use in second]
