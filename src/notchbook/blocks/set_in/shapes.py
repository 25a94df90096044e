"""What comes out of the sleeve's numbers: the outline as curves, before it gets names."""

from dataclasses import dataclass

from notchbook.blocks.upper.shapes import Lever, OpenDart
from notchbook.geometry import Path, Point


@dataclass(frozen=True)
class SleeveHalf:
    """The wearer's right sleeve, face up: front toward +x, the biceps line at y = 0, mm.

    ``crown`` is the highest point of the cap, at x = 0, ``hem_middle`` the middle of the hem.
    ``cap_front`` runs from the front underarm to the point that meets the shoulder seam, ``cap_back``
    from the back underarm to the same point; ``front_seam`` and ``back_seam`` from the underarm to the
    hem, ``hem`` from the back to the front.
    With an ``elbow_dart`` the back seam has two parts, above and below it.

    ``front_notch`` and ``back_notch`` are the distances (mm, along the cap from the underarm) of the
    balance notches, the same as on the armhole; ``front_ease_end`` and ``back_ease_end`` those at which
    the ease ends before the shoulder seam. ``front_gap`` and ``back_gap`` say how far the lower 60 mm
    of the cap lie off the armhole at most. ``pitch`` is explained with ``SleeveGiven``, degrees.
    ``elbow_width`` is the girth at the elbow, ``elbow_down`` its distance down the front seam; both None
    where the sleeve ends above it.
    """

    cap_front: Path
    cap_back: Path
    front_seam: Path
    back_seam: tuple[Path, ...]
    hem: Path
    elbow_dart: OpenDart | None
    elbow_line: Path | None
    crown: Point
    hem_middle: Point
    cap_height: float
    biceps: float
    hem_girth: float
    elbow_width: float | None
    elbow_down: float | None
    front_notch: float
    back_notch: float
    front_ease_end: float
    back_ease_end: float
    front_gap: float
    back_gap: float
    pitch: float
    levers: tuple[Lever, ...]
