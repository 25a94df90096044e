"""What no hand would draw: measures that leave no arm, or an armhole that runs into the bust dart."""

from notchbook.blocks.upper.frames import Frames
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point

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
