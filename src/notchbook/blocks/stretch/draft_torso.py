"""The stretch torso: front and back panels without darts, to the waist, the hip or below."""

from notchbook.blocks.stretch.front_length import lengthened
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.shapes import TorsoHalf, TorsoPanel
from notchbook.blocks.stretch.side_seam import cut_at
from notchbook.blocks.stretch.upper_frame import UpperFrame, draw_upper, notch_place
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, curve_between


def draft_torso(given: TorsoGiven) -> TorsoHalf:
    """Draft one side. Front and back have the same side seam but for what the front is longer over the bust;
    the cap is as long as the armhole.

    DraftRefused: ``stretch-length-negative`` and what ``draw_upper`` refuses.
    """
    if given.length < 0.0:
        raise DraftRefused("stretch-length-negative", length=given.length)
    frame = draw_upper(given, -given.length)
    side = cut_at(frame.side.path, -given.length)
    front_side = lengthened(side, frame.front_length.longer)
    return TorsoHalf(
        _panel(frame, frame.necks.front, True, front_side),
        _panel(frame, frame.necks.back, False, side),
        frame.sleeve,
        frame.levels,
        frame.front_length,
        frame.levers,
    )


def _panel(frame: UpperFrame, neck: Path, is_front: bool, side: Path) -> TorsoPanel:
    armhole = frame.armholes.front if is_front else frame.armholes.back
    across = frame.armholes.front_across if is_front else frame.armholes.back_across
    share = "armhole.front_notch_share" if is_front else "armhole.back_notch_share"
    return TorsoPanel(
        neck=neck,
        shoulder=frame.armholes.shoulder.front if is_front else frame.armholes.shoulder.back,
        armhole=armhole,
        across=across,
        side=side,
        hem=_hem(side, frame.front_length.lower if is_front else 0.0),
        notch=notch_place(armhole.length, share),
    )


def _hem(side: Path, lower: float) -> Path:
    """From the center, so much lower than the side, and level at both."""
    center = Point(0.0, side.end.y - lower)
    return Path.line(center, side.end) if lower == 0.0 else Path.of(curve_between(center, 0.0, side.end, 0.0))
