"""The two edges that a slanted opening cuts off, walked from the corner between them, darts closed."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Pattern, Piece, closed_motions, require, spoken


@dataclass(frozen=True, slots=True)
class CornerWalks:
    """A corner of a piece and the ways from it along its waist and down its side.

    ``waist`` runs along all of the waist with its darts closed, the part nearest to the corner lying still;
    ``waist_edge`` is that part, ``side_edge`` the nearest part of the side, ``side`` the way along that one.
    ``runs_to_side``: whether the outline comes along the waist to the corner and goes on down the side.
    """

    piece: Piece
    corner: str
    waist_edge: Edge
    side_edge: Edge
    waist: Path
    side: Path
    runs_to_side: bool
    waist_parts: frozenset[str]

    def off(self, travel: Point) -> Point:
        """The direction off the piece, square to a direction of walking along the waist."""
        return travel.perpendicular() * (1.0 if self.runs_to_side else -1.0)


def corner_walks(pattern: Pattern, waist: str, side: str) -> CornerWalks:
    """The corner in which the waist and the side of one piece meet.

    StepRefused ``slant-no-corner`` where they meet in none.
    """
    waists, sides = require(pattern, waist), require(pattern, side)
    for name in dict.fromkeys(pattern.carriers[member] for member in waists):
        piece = pattern.pieces[name]
        own = [piece.edge(one) for one in waists if piece.has_edge(one)]
        down = [piece.edge(one) for one in sides if piece.has_edge(one)]
        if down and own[-1].end == down[0].start:
            return _walks(piece, own, down[0], runs_to_side=True)
        if down and own[0].start == down[-1].end:
            return _walks(piece, own, down[-1], runs_to_side=False)
    raise StepRefused("slant-no-corner", waist=spoken(waist), side=spoken(side))


def _walks(piece: Piece, own: list[Edge], side: Edge, *, runs_to_side: bool) -> CornerWalks:
    motions = closed_motions(piece, own[0].name, own[-1].name)
    near = own[-1] if runs_to_side else own[0]
    parts = frozenset(edge.name for edge in own)
    still = motions[near.name].inverse()
    laid = [edge.path.transformed(motions[edge.name].then(still)) for edge in own]
    if runs_to_side:
        walk = _joined([path.reversed() for path in reversed(laid)])
        return CornerWalks(piece, side.start, near, side, walk, side.path, True, parts)
    return CornerWalks(piece, side.end, near, side, _joined(laid), side.path.reversed(), False, parts)


def _joined(paths: list[Path]) -> Path:
    """The paths in a row, each begun where the one before ends."""
    run = paths[0]
    for path in paths[1:]:
        run = run.joined(path.with_start(run.end))
    return run
