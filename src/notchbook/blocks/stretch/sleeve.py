"""The stretch sleeve below its cap: seams and hem."""

from math import radians, tan

from notchbook.blocks.stretch.cap import Cap, most_taper
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import StretchSleeveGiven
from notchbook.blocks.stretch.shapes import StretchSleeve
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, curve_between


def finished_sleeve(given: StretchSleeveGiven, cap: Cap) -> StretchSleeve:
    """The sleeve below this cap. DraftRefused ``stretch-sleeve-short``."""
    if sleeve_longer(given, cap) > figure("cap.most_longer"):
        raise DraftRefused("stretch-sleeve-short", length=given.length, cap=cap.height)
    down = _down(given, cap)
    front_under, back_under = cap.front.start, cap.back.start
    middle, half = (front_under.x + back_under.x) / 2.0, sleeve_hem(given, cap) / 2.0
    front_hem, back_hem = Point(middle + half, -down), Point(middle - half, -down)
    return StretchSleeve(
        cap_front=Path.of(cap.front),
        cap_back=Path.of(cap.back),
        front_seam=Path.of(curve_between(front_under, -90.0 - cap.tilt, front_hem, -90.0)),
        back_seam=Path.of(curve_between(back_under, -90.0 + cap.tilt, back_hem, -90.0)),
        hem=Path.line(back_hem, front_hem),
        cap_height=cap.height,
        biceps=cap.biceps,
    )


def sleeve_hem(given: StretchSleeveGiven, cap: Cap) -> float:
    """The hem in use, mm: as given, or so wide that the seams of a short sleeve do not run in too steeply."""
    seam = _down(given, cap)
    narrowest = cap.biceps - 2.0 * seam * tan(radians(most_taper(seam)))
    return max(given.hem, narrowest)


def sleeve_longer(given: StretchSleeveGiven, cap: Cap) -> float:
    """By how much the sleeve is drafted longer than given, mm, so that a seam is left below a high cap."""
    return max(cap.height + figure("cap.least_seam") - given.length, 0.0)


def _down(given: StretchSleeveGiven, cap: Cap) -> float:
    """From the biceps line to the hem, mm."""
    return given.length + sleeve_longer(given, cap) - cap.height
