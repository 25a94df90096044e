"""What a bodice is drafted from: one side of the body, eases added, mm and degrees."""

from dataclasses import dataclass
from typing import Literal

BackShoulder = Literal["dart", "ease"]
"""How the back shoulder takes up the shoulder blade."""


@dataclass(frozen=True, slots=True)
class BustGiven:
    """The measures that shape the bust, mm: only for a bodice that is drafted with a bust dart.

    ``front_length`` runs from the side-neck point over the bust point to the waist, ``center_front``
    from the neck pit to the waist, ``neck_to_bust_point`` from the side-neck point, ``point_width``
    from bust point to bust point.
    """

    front_length: float
    center_front: float
    neck_to_bust_point: float
    point_width: float


@dataclass(frozen=True, slots=True)
class BodiceGiven:
    """One side of a bodice. Girths and widths are those of the whole body with their ease, mm.

    ``waist`` None leaves the waist as wide as it falls: no darts, no flare, the surplus is declared
    ease. ``shoulder`` is the length of the front shoulder seam, ``shoulder_slope`` the slope of the
    seam below the horizontal, degrees (the body's less the lift), mean of front and back.
    ``scye_depth`` runs from the nape down to the underarm level, ease added; ``back_length`` from the
    nape to the waist. ``bust_shape`` None: no bust dart; ``front_length`` and ``center_front`` are then
    used where they were measured. ``upper_bust`` is the girth under the arms above the bust, ease added;
    ``upper_arm`` the arm that the armhole is to hold, without ease. ``pit_lowered`` is how far below its
    measured height the neck pit is drawn, mm.
    ``back_shoulder_amount`` is the intake of the shoulder dart or the ease of the back shoulder, mm.
    The counts of darts are settled before: 0 to 2. ``side_take_in`` is what each panel gives up at the
    side from bust line to waist where the hip below asks for its own share, None for the usual one.
    """

    bust: float
    waist: float | None
    across_back: float
    across_chest: float
    neck: float
    shoulder: float
    shoulder_slope: float
    scye_depth: float
    back_length: float
    bust_shape: BustGiven | None
    front_length: float | None = None
    center_front: float | None = None
    upper_bust: float | None = None
    upper_arm: float | None = None
    pit_lowered: float = 0.0
    back_shoulder: BackShoulder = "dart"
    back_shoulder_amount: float = 10.0
    front_darts: int = 1
    back_darts: int = 2
    side_take_in: float | None = None
