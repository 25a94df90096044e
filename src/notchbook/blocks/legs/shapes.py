"""What comes out of the trousers' numbers: a front and a back panel as curves, before they get names.

Both panels have their crease at x = 0 and the side toward +x, so that the crotch point lies toward -x;
y = 0 is the crotch level; mm, y up. The crease runs along the grain in the middle of knee and hem. Every
path runs as its field says.
"""

from dataclasses import dataclass

from notchbook.blocks.upper.shapes import Lever, OpenDart
from notchbook.geometry import Path, Point

__all__ = ["Lever", "OpenDart", "TrouserPanel", "TrousersHalf"]


@dataclass(frozen=True)
class TrouserPanel:
    """One panel of one leg.

    ``waist`` parts run from the center to the side, the ``waist_darts`` between them; ``closed_waist`` is the
    waistline as it is sewn, in one piece (in the frame of its own center). ``side`` runs from the waist to
    the hem, ``hem`` from the side to the inseam, ``inseam`` from the crotch point to the hem, ``crotch`` from
    the waist at the center to the crotch point: first straight, then curved.

    ``hip`` and ``knee`` levels are y; the knee is None where the legs end above it. Places are points on the
    outline: ``hip_center`` on the crotch seam at the hip level, ``hip_side`` and ``knee_side`` on the side
    seam (notches of front and back match), ``crotch_side`` on the side seam at the crotch level,
    ``knee_inseam``. ``slant`` is the angle of the straight center against the grain (degrees, positive: in at
    the waist). ``extension`` is the way along the crotch level from the foot of the straight center
    (extended) to the crotch point, ``corner_depth`` the way from that foot, at 45 degrees up toward the
    inseam, to the crotch curve. ``fork_angle`` is the angle inside the piece between inseam and crotch seam
    at the crotch point (front and back together 180 degrees). ``side_take_in`` is how far the side leans in
    from hip to waist.
    """

    waist: tuple[Path, ...]
    waist_darts: tuple[OpenDart, ...]
    closed_waist: Path
    side: Path
    hem: Path
    inseam: Path
    crotch: Path
    hip: float
    knee: float | None
    hip_center: Point
    hip_side: Point
    crotch_side: Point
    knee_side: Point | None
    knee_inseam: Point | None
    slant: float
    extension: float
    corner_depth: float
    fork_angle: float
    side_take_in: float

    @property
    def crotch_point(self) -> Point:
        """Where crotch seam and inseam meet."""
        return self.crotch.end

    @property
    def intakes(self) -> tuple[float, ...]:
        """The mouths of the darts, straight across, mm."""
        return tuple(dart.first.distance_to(dart.second) for dart in self.waist_darts)


@dataclass(frozen=True)
class TrousersHalf:
    """One drafted leg, with the levers that were pulled.

    ``crotch_steps`` is how far the levers of the crotch were pulled together: 0 where the usual draft has the
    wanted seam, above 0 where it had to be longer (what is unusual stands in ``proportions.toml``). ``depth``
    is the ease of the crotch depth in use, ``drop`` how far the back crotch point lies below the front one,
    ``moved_side`` by how much each front waist is larger than a quarter because the side seam at the waist
    was moved back (below 0: forward), ``hip`` and ``waist`` the girths in use (with the ease that was raised
    or not), ``knee`` the girth of the leg at the knee in use, ``thigh`` that at the crotch level,
    ``thigh_below`` that 50 mm below; ``split_miss`` by how much the front crotch is longer than given
    because a lever stood in the way (0 where none did, or no parts were given). All mm.
    """

    front: TrouserPanel
    back: TrouserPanel
    levers: tuple[Lever, ...]
    crotch_steps: float
    depth: float
    drop: float
    moved_side: float
    waist: float
    hip: float
    knee: float | None
    thigh: float
    thigh_below: float
    split_miss: float = 0.0

    @property
    def crotch(self) -> float:
        """The whole crotch seam, mm."""
        return self.front.crotch.length + self.back.crotch.length
