"""What comes out of the stretch blocks' numbers: half panels and legs as curves, before they get names.

Torso and bodysuit: both panels have their center at x = 0 and the side toward +x; the waist lies at
y = 0. Sleeve and leg are the wearer's right, face up: front toward +x, back toward -x. mm, y up.
"""

from dataclasses import dataclass, replace

from notchbook.blocks.stretch.front_length import FrontLength
from notchbook.blocks.stretch.leg_easing import LegEase
from notchbook.blocks.upper.shapes import Lever
from notchbook.geometry import Path, Point


@dataclass(frozen=True, slots=True)
class Levels:
    """Heights of the level lines, mm: underarm (the bust line of a block without darts), waist, hip; and that
    of the neck base at the center back, whatever neck is cut."""

    underarm: float
    waist: float
    hip: float
    nape: float

    def of(self, which: str, front: FrontLength) -> "Levels":
        """Those of ``front`` or ``back``: waist and hip of a longer front lie lower."""
        if which == "back":
            return self
        return replace(self, waist=self.waist - front.longer, hip=self.hip - front.longer)


@dataclass(frozen=True)
class TorsoPanel:
    """A front or back half panel.

    ``neck`` runs from the center to the side-neck point, ``shoulder`` on to the shoulder point, ``armhole``
    on to the underarm, ``side`` on down to the hem; ``hem`` runs from the center to the side. ``across`` is
    the place of the armhole where it is upright. ``notch`` is the distance (mm, along the armhole from the
    underarm) of the balance notch; on the cap it lies as far from the underarm.
    """

    neck: Path
    shoulder: Path
    armhole: Path
    across: Point
    side: Path
    hem: Path
    notch: float

    @property
    def underarm(self) -> Point:
        """Where armhole and side seam meet."""
        return self.armhole.end


@dataclass(frozen=True)
class StretchSleeve:
    """A sleeve whose cap is as long as its armhole, half by half; biceps line at y = 0, crown at x = 0.

    ``cap_front`` and ``cap_back`` run from the underarm to the crown, which meets the shoulder seam; the
    seams from the underarm to the hem; ``hem`` from the back to the front.
    """

    cap_front: Path
    cap_back: Path
    front_seam: Path
    back_seam: Path
    hem: Path
    cap_height: float
    biceps: float

    @property
    def crown(self) -> Point:
        """The highest point, which meets the shoulder seam."""
        return self.cap_front.end


@dataclass(frozen=True)
class TorsoHalf:
    """One drafted side of a stretch torso, with the levers that were pulled; ``levels`` are the back's."""

    front: TorsoPanel
    back: TorsoPanel
    sleeve: StretchSleeve | None
    levels: Levels
    front_length: FrontLength
    levers: tuple[Lever, ...]

    @property
    def eased(self) -> float:
        """How much longer the front's side seam is than the back's, which it is eased to, mm."""
        return self.front.side.length - self.back.side.length


@dataclass(frozen=True)
class BodysuitPanel:
    """A front or back half panel of a bodysuit.

    Paths run as in ``TorsoPanel``; ``side`` ends at the leg opening, ``leg`` runs on from the side to the
    crotch join, ``crotch`` on to the center, level and square to it.
    """

    neck: Path
    shoulder: Path
    armhole: Path
    across: Point
    side: Path
    leg: Path
    crotch: Path
    notch: float

    @property
    def underarm(self) -> Point:
        """Where armhole and side seam meet."""
        return self.armhole.end


@dataclass(frozen=True)
class BodysuitHalf:
    """One drafted side of a bodysuit; ``levels`` are the back's. ``leg_opening`` is the length of the
    opening as drafted, mm; ``trunk_loop`` the way from the middle of the shoulder seam over front, crotch and
    back to it again, along the grain."""

    front: BodysuitPanel
    back: BodysuitPanel
    sleeve: StretchSleeve | None
    levels: Levels
    front_length: FrontLength
    leg_opening: float
    trunk_loop: float
    levers: tuple[Lever, ...]

    @property
    def eased(self) -> float:
        """How much longer the front's side seam is than the back's, which it is eased to, mm."""
        return self.front.side.length - self.back.side.length


@dataclass(frozen=True)
class LegPanel:
    """The front or back of one leg, from the side line.

    ``waist`` runs from the side to the center, ``crotch`` from the waist to the crotch point, ``inseam``
    from there to the hem, ``hem`` from the inseam to the side, ``side`` from the waist to the hem.
    """

    waist: Path
    crotch: Path
    inseam: Path
    hem: Path
    side: Path


@dataclass(frozen=True)
class LeggingsLeg:
    """One leg: front and back in one frame, y = 0 at the crotch level, the side line along x = 0.

    Without a side seam both ``side`` paths are the same straight line on x = 0, and the two are cut as one
    piece. With one they are equally long curves. Levels are heights, mm. ``ease`` is what thigh, knee and
    calf gave way for an even inseam.
    """

    front: LegPanel
    back: LegPanel
    hip_level: float
    knee_level: float
    calf_level: float | None
    ease: LegEase
    levers: tuple[Lever, ...]
