"""What a set-in sleeve is drafted from: the armhole it goes into and the arm, mm and degrees."""

from dataclasses import dataclass
from typing import Literal

from notchbook.geometry import Path

Keep = Literal["biceps", "cap_height"]
"""What is kept of the two that depend on each other; the other is solved."""


@dataclass(frozen=True, slots=True)
class ArmholeGiven:
    """The sewn armhole, seen along the closed side seam of the wearer's right side, darts closed.

    The underarm lies at (0, 0), the side seam runs down along -y; the front lies toward +x, the back
    toward -x. ``front`` and ``back`` run from the underarm to the shoulder point. The notches are the
    distances (mm, along the armhole from the underarm) of the balance notches.
    """

    front: Path
    back: Path
    front_notch: float
    back_notch: float

    @property
    def girth(self) -> float:
        """The whole armhole as sewn, mm."""
        return self.front.length + self.back.length


@dataclass(frozen=True, slots=True)
class SleeveGiven:
    """One sleeve. Girths have their ease, mm.

    ``cap_ease`` is shared between front and back by ``front_ease_share``; it lies between the balance
    notches and 20 mm before the shoulder seam. With ``keep`` biceps the cap height is solved; with
    cap_height the biceps is. ``length`` runs from the top of the cap to the hem along the middle.
    ``elbow`` is the least girth at the elbow (None: not asked), ``elbow_length`` its distance from the
    shoulder point; ``back_ease`` is how much longer the back seam is for the elbow, as an ``elbow_dart``
    or as ease. ``below_underarm``, where given, replaces the length by how far the middle of the hem lies
    below the biceps line. ``gave_way`` says by how much the biceps is less than asked for, for a full arm.

    ``pitch``: how far the highest point of the crown lies behind the shoulder seam, as an angle: 360
    degrees times that way along the armhole over the whole armhole. 0 sets the crown on the shoulder
    seam; a positive pitch swings the hem forward. None lets the balance of the cap decide.
    """

    armhole: ArmholeGiven
    cap_ease: float
    front_ease_share: float
    keep: Keep
    biceps: float
    cap_height: float | None
    hem: float
    length: float
    elbow: float | None = None
    elbow_length: float | None = None
    back_ease: float = 0.0
    elbow_dart: bool = False
    pitch: float | None = None
    below_underarm: float | None = None
    gave_way: float = 0.0

    def down(self, height: float) -> float:
        """From the biceps line down to the middle of the hem under a cap of this height, mm."""
        return self.length - height if self.below_underarm is None else self.below_underarm
