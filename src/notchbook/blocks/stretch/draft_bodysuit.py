"""The bodysuit: the stretch torso with a crotch join and leg openings."""

from dataclasses import replace
from math import radians, sin

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.front_length import lengthened, moved_down
from notchbook.blocks.stretch.given import BodysuitGiven
from notchbook.blocks.stretch.leg_lines import LegLines, leg_lines
from notchbook.blocks.stretch.shapes import BodysuitHalf, BodysuitPanel
from notchbook.blocks.stretch.upper_frame import UpperFrame, draw_upper, notch_place
from notchbook.blocks.upper.shapes import Lever
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Path, Point
from notchbook.geometry.solve import solve_rising
from notchbook.units import TOLERANCES


def draft_bodysuit(asked: BodysuitGiven) -> BodysuitHalf:
    """Draft one side. What neither the side seam nor the cloth gives over a full bust lengthens the front
    crotch. The leg opening is as long as asked where its height at the side can be placed so;
    else it is drafted at the limit, and the lever says so.

    DraftRefused: ``bodysuit-crotch-short``, ``bodysuit-crotch-wide``, ``bodysuit-leg-no-room`` and what
    ``draw_upper`` refuses.
    """
    _require_crotch(asked)
    low = -(min(asked.crotch_front, asked.crotch_back) - figure("leg.least_over_crotch"))
    frame = draw_upper(asked.torso, low)
    given = replace(asked, crotch_front=asked.crotch_front + frame.front_length.lower)
    highest = -figure("leg.most_height_share") * given.torso.hip_depth
    height = _height(given, frame.side.path, low, max(highest, low))
    lines = leg_lines(given, frame.side.path, height)
    _require_room(given, lines)
    usual = min(max(-figure("leg.usual_height_share") * given.torso.hip_depth, low), highest)
    lever = Lever("leg_height", -height, -highest, -low, -usual)
    return BodysuitHalf(
        front=_panel(given, frame, lines, is_front=True),
        back=_panel(given, frame, lines, is_front=False),
        sleeve=frame.sleeve,
        levels=frame.levels,
        front_length=frame.front_length,
        leg_opening=lines.opening,
        trunk_loop=_trunk_loop(given, frame),
        levers=(*frame.levers, lever),
    )


def _require_crotch(given: BodysuitGiven) -> None:
    torso = given.torso
    shortest = torso.hip_depth + figure("crotch.least_below_hip")
    crotch = min(given.crotch_front, given.crotch_back)
    if crotch < shortest:
        raise DraftRefused("bodysuit-crotch-short", crotch=crotch, hip_depth=torso.hip_depth, least=shortest)
    widest = figure("crotch.most_width_share") * torso.hip / 2.0
    if given.crotch_width > widest:
        raise DraftRefused("bodysuit-crotch-wide", width=given.crotch_width, most=widest)


def _require_room(given: BodysuitGiven, lines: LegLines) -> None:
    """Neither leg line may run to the center, back out over the side or across it."""
    narrowest = min(leg.bounds().min_x for leg in (lines.front, lines.back))
    widest = max(leg.bounds().max_x for leg in (lines.front, lines.back))
    out = figure("leg.most_out_share") * given.torso.hip / 4.0
    crossings = (meet for leg in (lines.front, lines.back) for meet in leg.intersections(lines.side))
    if (
        narrowest < figure("leg.least_narrow_share") * given.crotch_width / 2.0
        or widest > lines.side.end.x + out
        or any(meet.at_self > TOLERANCES.join for meet in crossings)
    ):
        raise DraftRefused(
            "bodysuit-leg-no-room",
            hip=given.torso.hip,
            front=given.crotch_front,
            back=given.crotch_back,
            width=given.crotch_width,
        )


def _height(given: BodysuitGiven, side: Path, low: float, high: float) -> float:
    """The height of the opening at the side: as given, or such that the opening is as long as asked."""
    if given.leg_height is not None:
        return min(max(-given.leg_height, low), high)
    wanted = given.leg_opening
    if wanted is None:
        return min(max(-figure("leg.usual_height_share") * given.torso.hip_depth, low), high)

    def over(height: float) -> float:
        return leg_lines(given, side, height).opening - wanted

    try:
        return solve_rising(over, -figure("leg.usual_height_share") * given.torso.hip_depth, 10.0, low, high)
    except GeometryError:
        return low if over(low) > 0.0 else high


def _panel(given: BodysuitGiven, frame: UpperFrame, lines: LegLines, *, is_front: bool) -> BodysuitPanel:
    armhole = frame.armholes.front if is_front else frame.armholes.back
    longer = frame.front_length.longer if is_front else 0.0
    leg = (lines.front if is_front else lines.back).transformed(moved_down(longer))
    share = "armhole.front_notch_share" if is_front else "armhole.back_notch_share"
    return BodysuitPanel(
        neck=frame.necks.front if is_front else frame.necks.back,
        shoulder=frame.armholes.shoulder.front if is_front else frame.armholes.shoulder.back,
        armhole=armhole,
        across=frame.armholes.front_across if is_front else frame.armholes.back_across,
        side=lengthened(lines.side, longer),
        leg=leg,
        crotch=Path.line(leg.end, Point(0.0, leg.end.y)),
        notch=notch_place(armhole.length, share),
    )


def _trunk_loop(given: BodysuitGiven, frame: UpperFrame) -> float:
    """From the middle of the natural shoulder seam along the grain, front and back, mm."""
    drop = given.torso.shoulder / 2.0 * sin(radians(given.torso.shoulder_slope))
    over = 2.0 * (frame.necks.base.y - drop) + frame.front_length.longer
    return over + given.crotch_front + given.crotch_back
