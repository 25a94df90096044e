"""A panel of the bodice as a sleeve is cut on to it: where the shoulder ends and the side seam begins."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Pattern, Piece, directed, part_name, require, spoken
from notchbook.pattern.sewn import run_of


@dataclass(frozen=True, slots=True)
class ArmPanel:
    """The ``armhole`` that the sleeve replaces, the first edge of the side seam below it, and whether the
    outline runs from the shoulder to the side. ``shoulder`` is the unit direction in which the shoulder seam
    arrives at its end, ``side`` the side seam downward from the underarm."""

    piece: Piece
    armhole: Edge
    side_edge: Edge
    runs_down: bool
    shoulder: Point
    side: Path

    @property
    def tip(self) -> Point:
        """The end of the shoulder."""
        return self.armhole.path.start if self.runs_down else self.armhole.path.end

    @property
    def tip_name(self) -> str:
        """The name of that point."""
        return self.armhole.start if self.runs_down else self.armhole.end

    @property
    def underarm_name(self) -> str:
        """The name of the point where armhole and side seam meet."""
        return self.armhole.end if self.runs_down else self.armhole.start

    @property
    def outward(self) -> float:
        """The sign of x away from the center of the body."""
        return 1.0 if self.shoulder.x > 0.0 else -1.0


def arm_panel(pattern: Pattern, piece_name: str) -> ArmPanel:
    """The panel of this name.

    StepRefused ``kimono-sleeve-there`` where a sleeve is set into its armhole already, ``kimono-parted``
    where the armhole is in several parts.
    """
    armhole, side = part_name(piece_name, "armhole"), part_name(piece_name, "side_seam")
    members = require(pattern, armhole)
    if len(members) != 1:
        raise StepRefused("kimono-parted", edge=spoken(armhole))
    for seam in pattern.seams.values():
        if any(
            step.edge.name == members[0] for run in (seam.first, seam.second) for step in run_of(pattern, run)
        ):
            raise StepRefused("kimono-sleeve-there", armhole=spoken(armhole), seam=spoken(seam.name))
    edge = pattern.edges[members[0]]
    piece = pattern.piece_of(edge.name)
    underarm = part_name(piece_name, "underarm")
    runs_down = edge.end == underarm
    first = directed(pattern, side, underarm)[0]
    shoulder = piece.edge_before(edge.name).path if runs_down else piece.edge_after(edge.name).path.reversed()
    return ArmPanel(piece, edge, first.edge, runs_down, shoulder.tangent_at(shoulder.length), first.path)
