"""What comes out of the bodice's numbers: two half panels as curves, before they get names.

Both panels have their center at x = 0 and the side toward +x; the waist at the center lies at
y = 0; mm, y up. Every path runs as its field says.
"""

from dataclasses import dataclass

from notchbook.geometry import Path, Point


@dataclass(frozen=True, slots=True)
class OpenDart:
    """A dart as it lies on flat cloth: its point and the two ends of its mouth.

    ``first`` is the end of the mouth nearer to the beginning of the path that it opens in. Both legs
    are equally long.
    """

    first: Point
    point: Point
    second: Point


@dataclass(frozen=True, slots=True)
class Lever:
    """Something the hand would shift by trial, and how far the draft pulled it.

    ``pulled`` lies between ``least`` and ``most``, its usual value is ``usual``; mm, degrees or a share as
    ``unit`` says ("mm", "deg", "").
    """

    name: str
    pulled: float
    least: float
    most: float
    usual: float
    unit: str = "mm"

    @property
    def at_limit(self) -> bool:
        """Whether it could be pulled no farther."""
        return self.pulled != self.usual and not self.least < self.pulled < self.most


@dataclass(frozen=True)
class BackHalf:
    """The back panel.

    ``neck`` runs from the nape (x = 0) to the side-neck point; ``shoulder`` on to the shoulder point, in
    two parts where ``shoulder_dart`` opens in it; ``armhole`` on to the underarm; ``side`` on to the
    waist; ``waist`` parts from the center to the side, the ``waist_darts`` between them. ``across``
    is the place on the armhole where it is upright: half the across back from the center.
    """

    neck: Path
    shoulder: tuple[Path, ...]
    shoulder_dart: OpenDart | None
    armhole: Path
    across: Point
    side: Path
    waist: tuple[Path, ...]
    waist_darts: tuple[OpenDart, ...]

    @property
    def underarm(self) -> Point:
        """Where armhole and side seam meet."""
        return self.armhole.end


@dataclass(frozen=True)
class FrontHalf:
    """The front panel in two frames that share the center front and the bust point.

    ``neck``, ``shoulder``, ``armhole`` and ``across`` lie in the upper frame, ``side``, ``waist`` and
    ``waist_darts`` in the lower one, where the bust dart is closed at the side seam. Each point that is
    lateral to the dart lies in the upper frame turned by ``+dart_angle`` degrees about ``bust_point``
    from where it lies in the lower one: the two together are the front with its dart at the side seam.
    A dart angle of 0 makes both frames one. The first waist dart points at the bust point.
    Paths run as in the back: neck pit to side-neck point, and on round; the side from the underarm down.
    """

    neck: Path
    shoulder: Path
    armhole: Path
    across: Point
    side: Path
    waist: tuple[Path, ...]
    waist_darts: tuple[OpenDart, ...]
    bust_point: Point
    dart_angle: float

    @property
    def underarm(self) -> Point:
        """Where the armhole ends, in the upper frame."""
        return self.armhole.end


@dataclass(frozen=True)
class BodiceHalf:
    """One drafted side, with the levers that were pulled.

    ``balance`` is the share of the bustless front's shortness that the draft came to (see the source of
    the default); ``contour`` the mm by which the center front is longer than was measured, because the
    front neck would have fallen too deep (0: none; below 0: shorter, because it would have been too
    shallow). ``fallen_waist`` is the girth of a waist that was left as it falls, mm, None where the
    waist was drafted to a girth.
    """

    front: FrontHalf
    back: BackHalf
    levers: tuple[Lever, ...]
    balance: float
    contour: float = 0.0
    fallen_waist: float | None = None
