"""What a raglan takes of one panel of the bodice: the part over a line from the neck to the armhole."""

import math
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Edge, Pattern, Piece, part_name, require, spoken
from notchbook.style.sleeves.found import Which

_BOW = 6.0
"""Degrees by which the line still bends beyond the straight way where it meets the neck: a little round over
the chest. Own judgment."""


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel with its neck, shoulder and armhole, and how far along its neck, in the direction of that
    edge, the line begins, mm. ``goes_down``: the outline runs from neck over shoulder to armhole, as in
    front."""

    which: Which
    piece: Piece
    neck: Edge
    shoulder: Edge
    armhole: Edge
    neck_at: float
    goes_down: bool

    @property
    def tip(self) -> Point:
        """The end of the shoulder."""
        return self.shoulder.path.end if self.goes_down else self.shoulder.path.start

    @property
    def tip_name(self) -> str:
        """The name of that point."""
        return self.shoulder.end if self.goes_down else self.shoulder.start

    @property
    def outward(self) -> Point:
        """The unit direction in which the shoulder arrives at its end."""
        path = self.shoulder.path
        return path.tangent_at(path.length) if self.goes_down else -path.tangent_at(0.0, "after")

    @property
    def from_neck(self) -> Path:
        """The shoulder from the neck out."""
        return self.shoulder.path if self.goes_down else self.shoulder.path.reversed()

    @property
    def from_underarm(self) -> Path:
        """The armhole from the underarm up."""
        return self.armhole.path.reversed() if self.goes_down else self.armhole.path

    def line_from(self, up: float) -> Path:
        """The raglan line from the armhole, ``up`` mm from the underarm, to the neck: it leaves the armhole
        in its own direction."""
        armhole, end = self.from_underarm, self.neck.path.point_at(self.neck_at)
        begin, leaving = armhole.point_at(up), armhole.tangent_at(up)
        way = end - begin
        bow = math.copysign(_BOW, leaving.cross(way))
        return Path.of(curve_between(begin, leaving.direction(), end, way.direction() + bow))


def panel_of(pattern: Pattern, name: str, which: Which, down: float) -> Panel:
    """A panel whose line begins ``down`` mm from the shoulder along the neck.

    StepRefused ``raglan-parted`` where neck, shoulder or armhole are in several parts, ``raglan-neck-short``.
    """
    neck, shoulder, armhole = (
        _one(pattern, part_name(name, word)) for word in ("neck", "shoulder", "armhole")
    )
    if not 0.0 < down < neck.length - _LEAST:
        raise StepRefused("raglan-neck-short", neck=spoken(neck.name), down=down, length=neck.length)
    goes_down = neck.end == shoulder.start
    at = neck.length - down if goes_down else down
    return Panel(which, pattern.piece_of(armhole.name), neck, shoulder, armhole, at, goes_down)


_LEAST = 10.0
"""mm of the neck that are left for the body."""


def require_inside(panel: Panel, line: Path) -> None:
    """StepRefused ``raglan-leaves-panel`` where the line runs out of the panel or through a dart."""
    outline = panel.piece.outline
    crossed = any(
        1.0 < met.at_self < line.length - 1.0 for edge in outline for met in line.intersections(edge.path)
    )
    if crossed or not panel.piece.sew_line.contains(line.point_at(line.length / 2.0)):
        raise StepRefused("raglan-leaves-panel", piece=spoken(panel.piece.name))


def _one(pattern: Pattern, name: str) -> Edge:
    members = require(pattern, name)
    if len(members) != 1:
        raise StepRefused("raglan-parted", edge=spoken(name))
    return pattern.edges[members[0]]
