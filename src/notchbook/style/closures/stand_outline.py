"""The outline of a piece with a stand beyond its center, and with a facing cut on beyond that."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, EdgeKind, InternalLine, Piece, part_name, spoken
from notchbook.style.closures.straight_center import StraightCenter
from notchbook.style.edges.redrawn import require_plain
from notchbook.style.traced.free_line import ended_at

_STEEPEST = 75.0
"""Degrees from the square to the center up to which a stand carries a V neck on down to its edge; a steeper
one is carried on at this angle. Own judgment."""


@dataclass(frozen=True, slots=True)
class StandSize:
    """How wide a stand is beyond the center, and its facing from the edge (0: none), mm; whether that is cut
    on or a piece of its own."""

    width: float
    facing: float
    is_cut_on: bool = True

    @property
    def cut_on(self) -> float:
        """The width of the facing that is cut on, mm; 0 where there is none."""
        return self.facing if self.is_cut_on else 0.0


@dataclass(frozen=True, slots=True)
class Joined:
    """Whether the piece is sewn to another one of the center at its upper and at its lower end: there the
    facing ends square to its free edge, so that this runs on over the seam."""

    above: bool = False
    below: bool = False


@dataclass(frozen=True, slots=True)
class StandDrawn:
    """A piece with its stand: the edges at its upper and lower end, walked from the center outward, what they
    are beside (the neck, the hem), and the lines from the edge of the stand into the piece there, as far as a
    facing reaches."""

    piece: Piece
    upper: tuple[Edge, ...]
    lower: tuple[Edge, ...]
    beside: tuple[Edge, Edge]
    faced: tuple[Path, Path] | None


def stand_drawn(center: StraightCenter, owner: str, size: StandSize, joined: Joined = Joined()) -> StandDrawn:
    """The piece with the stand; new names are given under ``owner``. The center becomes a line of the piece.

    The neck and the hem run on over the stand. StepRefused ``stand-facing-too-wide`` where the edge that the
    facing is turned under does not reach so far.
    """
    outline = center.piece.outline
    index, count = center.piece.edge_index(center.edge.name), len(outline)
    before, after = outline[index - 1], outline[(index + 1) % count]
    at_top = ("top", joined.above)
    at_bottom = ("bottom", joined.below)
    told = (at_top, at_bottom) if center.runs_down else (at_bottom, at_top)
    ends = (
        _End(center, owner, *told[0], before.path.reversed(), before),
        _End(center, owner, *told[1], after.path, after),
    )
    first, last = (list(end.edges(size)) for end in ends)
    middle = _middle(center, owner, size, first[-1], last[-1])
    walked = [*first, middle, *(edge.reversed() for edge in reversed(last))]
    line = InternalLine(center.edge.name, center.line, "match")
    lines = [*center.piece.lines, line]
    if size.cut_on > 0.0:
        lines.append(_fold(owner, first[0].path.end, last[0].path.end))
    drawn = replace(
        center.piece,
        outline=(*outline[:index], *walked, *outline[index + 1 :]),
        lines=tuple(lines),
        cut="single" if center.piece.cut == "single" else "pair",
    )
    require_plain(drawn)
    upper, lower = (first, last) if center.runs_down else (last, first)
    beside = (before, after) if center.runs_down else (after, before)
    faced = None
    if size.facing > 0.0:
        upper_line, lower_line = (end.faced(size) for end in (ends if center.runs_down else ends[::-1]))
        faced = upper_line, lower_line
    return StandDrawn(drawn, tuple(upper), tuple(lower), beside, faced)


def carried_on(center: StraightCenter, corner: Point, inward: Point, width: float) -> Point:
    """Where a neck or hem that leaves the corner in the direction ``inward``, run on over the center, meets
    the edge of a stand so wide, mm."""
    along = -inward.unit()
    square, drop = along.dot(center.outward), along.dot(center.down)
    least = math.cos(math.radians(_STEEPEST))
    slope = drop / square if square > least else math.copysign(math.tan(math.radians(_STEEPEST)), drop)
    return corner + center.outward * width + center.down * (slope * width)


def drops(center: StraightCenter, width: float) -> tuple[float, float]:
    """How much lower the edge of the stand begins and ends than the center does, mm (below 0: higher)."""
    outline = center.piece.outline
    index, count = center.piece.edge_index(center.edge.name), len(outline)
    before, after = outline[index - 1].path.reversed(), outline[(index + 1) % count].path
    paths = (before, after) if center.runs_down else (after, before)
    upper, lower = (
        (carried_on(center, path.start, path.tangent_at(0.0), width) - path.start).dot(center.down)
        for path in paths
    )
    return upper, lower


def _middle(center: StraightCenter, owner: str, size: StandSize, begin: Edge, end: Edge) -> Edge:
    word = "facing_edge" if size.cut_on > 0.0 else "lap"
    return Edge(part_name(owner, word), Path.line(begin.path.end, end.path.end), begin.end, end.end, "plain")


def _fold(owner: str, start: Point, end: Point) -> InternalLine:
    return InternalLine(part_name(owner, "fold_line"), Path.line(start, end), "fold_line")


@dataclass(frozen=True, slots=True)
class _End:
    """One end of the center; ``away`` is the outline from there into the piece, ``beside`` its edge."""

    center: StraightCenter
    owner: str
    word: str
    is_joined: bool
    away: Path
    beside: Edge

    def edges(self, size: StandSize) -> Iterator[Edge]:
        """From the center outward: the end of the stand, and that of the facing, which is its mirror."""
        corner = self.away.start
        begins = self.center.edge.start if corner == self.center.edge.path.start else self.center.edge.end
        out = carried_on(self.center, corner, self.away.tangent_at(0.0), size.width)
        tip = part_name(self.owner, f"lap_{self.word}_outer")
        kind: EdgeKind = "hem" if self.beside.kind == "hem" else "plain"
        yield Edge(part_name(self.owner, f"lap_{self.word}"), Path.line(corner, out), begins, tip, kind)
        if size.cut_on <= 0.0:
            return
        mirror = Transform.reflection(out, out + self.center.down)
        path = self.faced(size).transformed(mirror)
        end = part_name(self.owner, f"facing_{self.word}_outer")
        yield Edge(part_name(self.owner, f"facing_{self.word}"), path, tip, end, kind)

    def faced(self, size: StandSize) -> Path:
        """From the edge of the stand inward, as far as the facing reaches, along neck or hem."""
        corner = self.away.start
        out = carried_on(self.center, corner, self.away.tangent_at(0.0), size.width)
        inside = Path.line(out, corner).joined(self.away)
        path = inside.between(0.0, self._reach(inside, out, size.facing))
        return ended_at(path, path.end, -self.center.outward, size.facing) if self.is_joined else path

    def _reach(self, inside: Path, out: Point, facing: float) -> float:
        """How far along the line the facing reaches, mm."""
        goal = out - self.center.outward * facing
        limit = Path.line(goal - self.center.down * 3000.0, goal + self.center.down * 3000.0)
        met = [crossing.at_self for crossing in inside.intersections(limit)]
        if not met:
            depth = max((out - place).dot(self.center.outward) for place in inside.flattened(0.1))
            raise StepRefused(
                "stand-facing-too-wide", edge=spoken(self.beside.name), width=facing, most=depth
            )
        return min(met)
