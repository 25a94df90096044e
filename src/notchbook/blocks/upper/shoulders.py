"""The shoulder seams: the front as long as measured, the back with its dart or its ease."""

from dataclasses import dataclass
from math import asin, degrees

from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.shapes import OpenDart
from notchbook.geometry import Path, Point, Transform, direction


@dataclass(frozen=True, slots=True)
class Shoulder:
    """A shoulder seam from the side-neck point to ``tip``, in two parts where a dart opens in it.

    ``slope`` is that of its outer part as it lies on flat cloth, degrees below the horizontal.
    """

    parts: tuple[Path, ...]
    dart: OpenDart | None
    tip: Point
    slope: float


def straight_shoulder(neck_point: Point, length: float, slope: float) -> Shoulder:
    """A plain seam of this length, mm."""
    tip = neck_point + direction(-slope) * length
    return Shoulder((Path.line(neck_point, tip),), None, tip, slope)


def back_shoulder(given: BodiceGiven, neck_point: Point, slope: float, underarm_y: float) -> Shoulder:
    """The back seam: sewn as long as the front's with its dart closed, or longer by its ease.

    The outer part is turned outward about the dart's point, so that the seam is straight when the dart
    is closed, and both legs are equal.
    """
    amount = given.back_shoulder_amount
    if given.back_shoulder == "ease":
        return straight_shoulder(neck_point, given.shoulder + amount, slope)
    closed = straight_shoulder(neck_point, given.shoulder, slope)
    most = proportion("shoulder.most_dart_share") * max(closed.tip.y - underarm_y, 1.0)
    length = max(min(proportion("shoulder.dart_length"), most), amount)
    first = neck_point.lerp(closed.tip, proportion("shoulder.dart_place"))
    point = first + direction(-90.0 - slope / 2.0) * length
    angle = 2.0 * degrees(asin(amount / 2.0 / length))
    outward = Transform.rotation(-angle, point)
    second, tip = outward.apply(first), outward.apply(closed.tip)
    parts = (Path.line(neck_point, first), Path.line(second, tip))
    return Shoulder(parts, OpenDart(first, point, second), tip, slope + angle)
