"""From measures to the bodice in numbers: every length of it closes by construction, nothing by trial."""

from notchbook.blocks.upper.armhole_lengths import are_apart, bring_together, draw_at
from notchbook.blocks.upper.evening import even_out
from notchbook.blocks.upper.frames import Frames
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.leaning import lowered_across
from notchbook.blocks.upper.levers import Pulled, levers
from notchbook.blocks.upper.necks import Slopes
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.refusals import require_clear_of_dart, require_turn_below
from notchbook.blocks.upper.shapes import BackHalf, BodiceHalf, FrontHalf, OpenDart
from notchbook.blocks.upper.side_place import Place
from notchbook.blocks.upper.waist_chain import WaistChain
from notchbook.geometry import Path, Point


def draft_bodice(given: BodiceGiven) -> BodiceHalf:
    """Front and back of one side. The side seam is placed so that it halves the room for the arm.

    DraftRefused, each with the measures that cannot be had together: ``bodice-no-arm-room``,
    ``bodice-arm-room-wide``, ``bodice-underarm-low``, ``bodice-armhole-corner``,
    ``bodice-armhole-over-dart``, ``bodice-neck-unreachable``, ``bodice-neck-depth``,
    ``bodice-bust-point-far``, ``bodice-bust-point-low``, ``bodice-bust-point-wide``,
    ``bodice-front-too-long``, ``bodice-shoulder-against-width``, ``bodice-shoulder-below-underarm``,
    ``bodice-side-too-short``, ``bodice-waist-dart-short``, ``bodice-waist-darts-too-wide``,
    ``bodice-waist-unreachable``.
    """
    half = proportion("slope.front_over_back") / 2.0
    slopes = Slopes(given.shoulder_slope + half, given.shoulder_slope - half)
    place = Place(proportion("side.usual_share") * given.bust / 2.0)
    drawn = draw_at(given, slopes, place)
    frames, pulled, armholes = bring_together(given, slopes, drawn) if are_apart(drawn[2]) else drawn
    pulled, armholes = even_out(frames, pulled, armholes)
    require_turn_below(armholes, frames)
    require_clear_of_dart(armholes[0], frames)
    return BodiceHalf(
        _front(frames, pulled, armholes[0]),
        _back(frames, pulled, armholes[1]),
        levers(given, frames, pulled),
        frames.balance,
        frames.necks.contour,
        2.0 * (frames.waists.front.length + frames.waists.back.length) if given.waist is None else None,
    )


def _front(frames: Frames, pulled: Pulled, armhole: Path) -> FrontHalf:
    foot = Point(frames.waists.front.parts[-1].end_x, frames.waists.front.side_y)
    across = lowered_across(frames.front_upper, frames.turned.underarm, pulled.front_evened)
    return FrontHalf(
        Path.of(frames.necks.front),
        frames.front_shoulder.parts[0],
        armhole,
        Point(across.width + pulled.front_change, across.across_y),
        Path.line(frames.front_underarm, foot),
        tuple(part.path() for part in frames.waists.front.parts),
        _darts(frames.waists.front),
        frames.bust_point,
        frames.turned.angle,
    )


def _back(frames: Frames, pulled: Pulled, armhole: Path) -> BackHalf:
    foot = Point(frames.waists.back.parts[-1].end_x, frames.waists.back.side_y)
    across = lowered_across(frames.back_upper, frames.back_underarm, pulled.back_evened)
    return BackHalf(
        Path.of(frames.necks.back),
        frames.back_shoulder.parts,
        frames.back_shoulder.dart,
        armhole,
        Point(across.width + pulled.back_change, across.across_y),
        Path.line(frames.back_underarm, foot),
        tuple(part.path() for part in frames.waists.back.parts),
        _darts(frames.waists.back),
    )


def _darts(chain: WaistChain) -> tuple[OpenDart, ...]:
    return tuple(
        OpenDart(
            Point(dart.middle - dart.half, dart.mouth_y),
            Point(dart.middle, dart.point_y),
            Point(dart.middle + dart.half, dart.mouth_y),
        )
        for dart in chain.darts
    )
