"""What no hand would draw: measures that leave no arm, or an armhole that runs into the bust dart."""

from notchbook.blocks.upper.frames import Frames, arrivals
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Path, Point, direction

_SAMPLES = 12
"""Places at which the armhole is looked at; it bends evenly."""


def require_arm_room(given: BodiceGiven, frames: Frames) -> None:
    """DraftRefused ``bodice-no-arm-room`` or ``bodice-arm-room-wide``."""
    facts = {"bust": given.bust, "across_back": given.across_back, "across_chest": given.across_chest}
    if frames.arm_width < proportion("armhole.least_width"):
        raise DraftRefused("bodice-no-arm-room", arm=frames.arm_width, **facts)
    if frames.arm_width > proportion("armhole.most_room_share") * given.bust / 2.0:
        raise DraftRefused("bodice-arm-room-wide", arm=frames.arm_width, **facts)


def require_underarm(frames: Frames) -> None:
    """DraftRefused ``bodice-underarm-low`` where the underarm lies far below the bust point."""
    below = frames.bust_point.y - frames.front_underarm.y
    if below > proportion("bust.most_above_underarm"):
        raise DraftRefused("bodice-underarm-low", below=below)


def require_dart_length(frames: Frames) -> None:
    """DraftRefused ``bodice-waist-dart-short`` where a waist dart is too short to sew: its mouth would dip
    and the waist could not be closed over it."""
    darts = (*frames.waists.front.darts, *frames.waists.back.darts)
    shortest = min(darts, key=lambda dart: dart.point_y - dart.mouth_y, default=None)
    if shortest is None:
        return
    length = shortest.point_y - shortest.mouth_y
    if length < proportion("waist.least_dart_length"):
        raise DraftRefused("bodice-waist-dart-short", length=length, width=2.0 * shortest.half)


def require_turn_below(armholes: tuple[Path, Path], frames: Frames) -> None:
    """DraftRefused ``bodice-armhole-corner`` where an armhole, front or back, comes down so steeply that
    no way is left in which it could turn square to the side seam."""
    uppers = (("across chest", frames.front_upper), ("across back", frames.back_upper))
    for armhole, arrival, (measure, upper) in zip(armholes, arrivals(frames), uppers, strict=True):
        if _turn_below(armhole, arrival) < proportion("armhole.least_turn"):
            facts = {"width": 2.0 * upper.width, "offset": upper.offset}
            raise DraftRefused("bodice-armhole-corner", measure=measure, **facts)


def _turn_below(armhole: Path, arrival: float) -> float:
    """How long an armhole stays square to the side seam, over how high it still hangs when it begins to turn
    that way; below 0 where it would have to come back."""
    curve, arriving = armhole.segments[-1], direction(arrival)
    if not isinstance(curve, Cubic):
        return 0.0
    hangs = abs((curve.start_handle - curve.end).cross(arriving))
    return (curve.end - curve.end_handle).dot(arriving) / hangs if hangs else 0.0


def require_clear_of_dart(armhole: Path, frames: Frames) -> None:
    """DraftRefused ``bodice-armhole-over-dart`` where the front armhole's hollow reaches the bust dart.

    The dart is taken at its highest place in the side seam, both in the upper frame.
    """
    if frames.turned.angle == 0.0:
        return
    foot = Point(frames.waists.front.parts[-1].end_x, frames.waists.front.side_y)
    side = foot.distance_to(frames.front_underarm)
    share = min(proportion("bust.highest_in_side") / side, 0.5)
    mouth = frames.front_underarm.lerp(foot, share).rotated(frames.turned.angle, frames.bust_point)
    leg = mouth - frames.bust_point
    lower = armhole.segments[-1]
    for number in range(_SAMPLES + 1):
        place = lower.at(number / _SAMPLES) - frames.bust_point
        if place.dot(leg) > 0.0 and leg.cross(place) < 0.0:
            raise DraftRefused("bodice-armhole-over-dart", angle=frames.turned.angle)
