"""Where the side seam stands: so that it halves the room for the arm, and the armhole leans forward."""

from dataclasses import dataclass, replace

from notchbook.blocks.upper.across import across_change, shoulder_extension, shoulder_tilt
from notchbook.blocks.upper.frames import Frames, build_frames
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.levers import Pulled
from notchbook.blocks.upper.necks import Slopes
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.suppression import suppression

_ROUNDS = 12
_NEAR = 1e-3
"""mm by which the two halves of the armhole may differ in width: no closure hangs on it."""


@dataclass(slots=True)
class Place:
    """The back's width at the bust line; by how much the shoulders are drafted longer; by how much the
    front's part of the room for the arm is to be wider and the back's narrower than half of it; mm.
    ``most_narrowed`` is by how many degrees the upper bust may make the bust dart narrower, where that is
    less than usual. ``frames`` were drafted last, there the searches begin."""

    width: float
    extension: float = 0.0
    lean: float = 0.0
    most_narrowed: float | None = None
    frames: Frames | None = None


def settle_side(given: BodiceGiven, slopes: Slopes, place: Place) -> tuple[Frames, Pulled]:
    """The frames where the side seam parts the room for the arm as wanted; ``place`` is moved there.

    DraftRefused with the measures that cannot be had together.
    """
    shares = suppression(given)
    bust = given.bust / 2.0
    least, most = proportion("side.least_share") * bust, proportion("side.most_share") * bust
    for turn in range(_ROUNDS):
        drafted = replace(given, shoulder=given.shoulder + place.extension)
        frames = build_frames(drafted, slopes, shares, place.width, place.frames, place.most_narrowed)
        pulled = _pull(given, frames, place)
        extension = shoulder_extension(frames.front_upper, frames.back_upper, place.extension)
        back = frames.back_underarm.x - frames.back_upper.width - pulled.back_change
        front = frames.turned.underarm.x - frames.front_upper.width - pulled.front_change
        width = min(max(place.width - (back - front) / 2.0 - place.lean, least), most)
        moved = abs(width - place.width) + abs(extension - place.extension)
        if turn > 0 and moved < _NEAR:
            break
        place.width, place.extension, place.frames = width, extension, frames
    return frames, pulled


def _pull(given: BodiceGiven, frames: Frames, place: Place) -> Pulled:
    """How far the armhole's levers are pulled for these frames."""
    tilt = shoulder_tilt(frames.front_upper, frames.back_upper)
    spare = _spare(given, frames.arm_width)
    if given.upper_arm is not None:
        spare = _for_arm(spare, frames.arm_width, given.upper_arm)
    front_lean, back_lean = frames.front_upper.lean - tilt, frames.back_upper.lean + tilt
    return Pulled(
        place.extension,
        tilt,
        across_change(frames.front_upper, front_lean, spare, "across chest"),
        across_change(frames.back_upper, back_lean, spare, "across back"),
        place.lean,
    )


def _spare(given: BodiceGiven, room: float) -> float:
    """What half an across width is to give way for the room alone, mm: see ``across_change``.

    Where the upper bust leaves less room for the arm than the armhole has, the widths give way to it by no
    more than two careful readings of them may differ, unless the room itself is too wide.
    """
    half = given.bust / 2.0
    widest = proportion("armhole.most_width_share") * half
    most = widest
    if given.upper_bust is not None:
        by_upper = (given.upper_bust - given.across_back - given.across_chest) / 2.0
        most = max(by_upper, proportion("armhole.usual_width_share") * half)
    least = min(proportion("armhole.narrow_width_share") * half, most)
    spare = (room - min(max(room, least), most)) / 2.0
    if given.upper_bust is None:
        return spare
    return min(spare, max((room - widest) / 2.0, proportion("armhole.most_for_upper")))


def _for_arm(spare: float, room: float, arm: float) -> float:
    """What half an across width is to give way once the arm that was measured has its say, mm: ``spare`` for
    the room alone (see ``across_change``), less where the arm is full for it.

    The widths give way to a full arm by no more than two careful readings of them may differ.
    """
    over = (room - proportion("armhole.arm_share") * arm) / 2.0
    if over >= 0.0:
        return min(spare, over)
    return min(spare, max(over, -proportion("armhole.first_narrowing")))
