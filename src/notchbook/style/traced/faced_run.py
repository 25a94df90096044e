"""The run of edges that is traced off, its darts closed and its panels laid together."""

from dataclasses import dataclass, replace

from notchbook.geometry import Path, Transform
from notchbook.pattern import Edge, Piece
from notchbook.style.traced.beside import Beside, Laid

_STEPS = 10
"""Places at which two lines of a seam are compared."""


@dataclass(frozen=True, slots=True)
class Faced:
    """One edge or group that is traced off: its name as it was given, the end from which it is walked, its
    path with the darts in it closed (counter-clockwise), and how deep the piece reaches there, mm.

    ``trim`` was taken off the path at its start and at its end, ``less`` is how much shorter it became
    besides, mm. ``faces``: it is sewn to the edge that it was traced from. ``joints``: how far along it, mm,
    panels of the garment meet.
    """

    name: str
    starts_at: str
    members: tuple[Edge, ...]
    path: Path
    depth: float
    trim: tuple[float, float] = (0.0, 0.0)
    less: float = 0.0
    faces: bool = True
    joints: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class PanelSeam:
    """A seam between panels that were laid together: its name, and both sew lines, away from the traced
    edges."""

    name: str
    first: Path
    second: Path

    def moved(self, motion: Transform) -> "PanelSeam":
        """The same laid elsewhere."""
        return PanelSeam(self.name, self.first.transformed(motion), self.second.transformed(motion))

    def apart(self, depth: float) -> float:
        """How far the two lines lie open or over down to the depth, mm."""
        steps = [depth * step / _STEPS for step in range(1, _STEPS + 1)]
        places = [self.first.point_at(min(step, self.first.length)) for step in steps]
        return max(self.second.nearest(place).gap for place in places)


@dataclass(frozen=True, slots=True)
class FacedRun:
    """The traced edges of one piece, or of panels laid together, in counter-clockwise order, laid with the
    first of them still.

    ``word`` and ``title`` are those of the piece, or what its panels have in common. ``forward``: the edges
    were given in this order. ``panels``: every stretch between darts and seams, as it was laid, in order.
    ``seams``: those between panels.
    """

    word: str
    title: str
    faced: tuple[Faced, ...]
    before: Beside
    after: Beside
    forward: bool
    panels: tuple[Laid, ...]
    seams: tuple[PanelSeam, ...] = ()

    def moved(self, motion: Transform) -> "FacedRun":
        """The run laid elsewhere."""
        return replace(
            self,
            faced=tuple(replace(one, path=one.path.transformed(motion)) for one in self.faced),
            before=self.before.moved(motion),
            after=self.after.moved(motion),
            panels=tuple(one.moved(motion) for one in self.panels),
            seams=tuple(one.moved(motion) for one in self.seams),
        )

    def panel(self, *, at_end: bool) -> Piece:
        """The piece where the run ends, or begins."""
        return self.panels[-1 if at_end else 0].piece

    @property
    def start(self) -> str:
        """The name of the point where the run begins."""
        return self.faced[0].members[0].start

    @property
    def end(self) -> str:
        """The name of the point where the run ends."""
        return self.faced[-1].members[-1].end
