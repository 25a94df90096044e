"""Everything of the bodice that one back width settles, but for the armhole curves."""

from dataclasses import dataclass
from math import cos, degrees, sin

from notchbook.blocks.upper.across import UpperArmhole
from notchbook.blocks.upper.across_levels import upper_armholes
from notchbook.blocks.upper.dart_angle import Turned, turned
from notchbook.blocks.upper.front_heights import front_heights
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.necks import Necks, Slopes, draw_necks
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.shoulders import Shoulder, back_shoulder, straight_shoulder
from notchbook.blocks.upper.suppression import Suppression
from notchbook.blocks.upper.waist import Chest, Waists, settle_waists
from notchbook.errors import DraftRefused
from notchbook.geometry import Point


@dataclass(frozen=True, slots=True)
class Frames:
    """Both panels at one back width, mm. ``front_underarm`` lies in the lower frame, ``turned`` holds it
    in the upper one; ``balance`` is the share that the front came out shorter by."""

    back_width: float
    waists: Waists
    necks: Necks
    bust_point: Point
    front_underarm: Point
    back_underarm: Point
    turned: Turned
    balance: float
    front_shoulder: Shoulder
    back_shoulder: Shoulder
    front_upper: UpperArmhole
    back_upper: UpperArmhole

    @property
    def under_arms(self) -> float:
        """The width under the arms with the bust dart closed, front and back together, mm."""
        return self.back_underarm.x + self.turned.underarm.x

    @property
    def arm_width(self) -> float:
        """The room between across back and across chest as given, front and back together, mm."""
        return self.under_arms - self.back_upper.width - self.front_upper.width


def build_frames(
    given: BodiceGiven,
    slopes: Slopes,
    shares: Suppression,
    back_width: float,
    before: Frames | None = None,
    most_narrowed: float | None = None,
) -> Frames:
    """Draft all but the armholes with a back so wide at the bust line; ``before`` are frames not far from
    these, where the searches begin. ``most_narrowed``: see ``turned``.

    DraftRefused with the measures that cannot be had together.
    """
    chest = _chest(given)
    widths = (given.bust / 2.0 - back_width, back_width)
    waists = settle_waists(given, shares, chest, widths, before.waists.settled if before else None)
    bust_point = Point(chest.point_x, waists.bust_y)
    back_underarm, side = _back_underarm(given, waists, back_width)
    front_foot = Point(waists.front.parts[-1].end_x, waists.front.side_y)
    front_underarm = front_foot + Point(sin(waists.tilt), cos(waists.tilt)) * side
    heights = front_heights(given, waists, chest.point_x, front_underarm.y)
    necks = draw_necks(given, slopes, heights, before.necks.width if before else None)
    scye = necks.back.end.y - back_underarm.y
    wanted_y = necks.front.end.y - (1.0 - proportion("bust.balance")) * scye
    dart = Turned(0.0, 0.0, 0.0, front_underarm)
    if given.bust_shape is not None:
        upper = None if given.upper_bust is None else given.upper_bust / 2.0 - back_underarm.x
        dart = turned(bust_point, front_underarm, wanted_y, upper, most_narrowed)
    front = straight_shoulder(necks.front.end, given.shoulder, slopes.front)
    back = back_shoulder(given, necks.back.end, slopes.back, back_underarm.y)
    return Frames(
        back_width,
        waists,
        necks,
        bust_point,
        front_underarm,
        back_underarm,
        dart,
        1.0 - (necks.front.end.y - dart.underarm.y) / scye,
        front,
        back,
        *upper_armholes(given, (front, back), (dart.underarm, back_underarm)),
    )


def arrivals(frames: Frames) -> tuple[float, float]:
    """The directions in which front and back armhole reach the underarm: square to the side, degrees."""
    tilt = degrees(frames.waists.tilt)
    return frames.turned.angle - tilt, -tilt


def _chest(given: BodiceGiven) -> Chest:
    shape = given.bust_shape
    if shape is None:
        return Chest(proportion("bust.mark_share") * given.across_chest / 2.0, None)
    return Chest(shape.point_width / 2.0, shape.front_length - shape.neck_to_bust_point)


def _back_underarm(given: BodiceGiven, waists: Waists, back_width: float) -> tuple[Point, float]:
    """The back's underarm, and the length of the side seam down from it."""
    level = given.back_length - given.scye_depth
    side = (level - waists.back.side_y) / cos(waists.tilt)
    if side < proportion("side.least_length"):
        raise DraftRefused(
            "bodice-side-too-short", side=side, scye_depth=given.scye_depth, back_length=given.back_length
        )
    beside = back_width - waists.side + side * sin(waists.tilt)
    return Point(beside, level), side
