"""The edges beside a seam drawn smooth across it, the two panels laid together as they are sewn."""

from dataclasses import dataclass, replace
from math import radians

from notchbook.geometry import Path, Transform
from notchbook.pattern import Edge
from notchbook.style.lines.truing import trued, turn_between
from notchbook.units import TOLERANCES

LOST = 0.05
"""mm by which an edge beside the seam may become shorter. Half the closure tolerance."""


@dataclass(frozen=True, slots=True)
class Beside:
    """A panel at one end of its seam: the seam's edge from top to bottom, and its neighbor edge there."""

    face: Path
    neighbor: Edge
    at_bottom: bool

    @property
    def outward(self) -> Path:
        """The neighbor from the seam on."""
        path = self.neighbor.path
        return path if self._starts_here else path.reversed()

    @property
    def _starts_here(self) -> bool:
        corner = self.face.end if self.at_bottom else self.face.start
        return self.neighbor.path.start.distance_to(corner) <= TOLERANCES.join

    def with_outward(self, path: Path) -> "Beside":
        """The neighbor drawn anew from the seam on, and the seam's edge led to its new end."""
        face = self.face.with_end(path.start) if self.at_bottom else self.face.with_start(path.start)
        drawn = path if self._starts_here else path.reversed()
        return replace(self, face=face, neighbor=replace(self.neighbor, path=drawn))


def true_across(first: Beside, second: Beside) -> tuple[Beside, Beside]:
    """Both neighbors without a corner across the seam; as they were where none can be seen."""
    motion = _laid_together(first, second)
    before = first.outward.reversed()
    after = second.outward.transformed(motion)
    turn = turn_between(before, after)
    if abs(turn) <= TOLERANCES.angle or abs(radians(turn)) > _SHARPEST:
        return first, second
    drawn = trued((before, after), LOST)
    return (
        first.with_outward(drawn[0].reversed()),
        second.with_outward(drawn[1].transformed(motion.inverse())),
    )


_SHARPEST = radians(45.0)
"""A sharper corner is meant, such as where the seam ends in the point of a neckline."""


def _laid_together(first: Beside, second: Beside) -> Transform:
    """The motion that lays the second panel to the first at this end of the seam."""
    place = [one.face.length if first.at_bottom else 0.0 for one in (first, second)]
    ends = [one.face.point_at(at) for one, at in zip((first, second), place, strict=True)]
    along = [one.face.tangent_at(at) for one, at in zip((first, second), place, strict=True)]
    return Transform.carrying(ends[1], ends[1] + along[1], ends[0], ends[0] + along[0])
