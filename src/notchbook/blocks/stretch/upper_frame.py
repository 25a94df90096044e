"""What torso and bodysuit share: necks, shoulders, armholes, the side seam and the sleeve."""

from dataclasses import dataclass, replace
from functools import cache

from notchbook.blocks.stretch.arm_room import ArmRoom, settle_arm_room
from notchbook.blocks.stretch.armhole_widths import suited_bust
from notchbook.blocks.stretch.armholes import Armholes, draw_armholes
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.front_length import FrontLength, front_length
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.necks import Necks, draw_necks
from notchbook.blocks.stretch.shapes import Levels, StretchSleeve
from notchbook.blocks.stretch.side_seam import SideSeam, side_seam, with_loosened_waist
from notchbook.blocks.stretch.sleeve import finished_sleeve, sleeve_hem, sleeve_longer
from notchbook.blocks.stretch.straps import with_strap_out
from notchbook.blocks.upper.shapes import Lever

_SAID = 0.005
"""A cap as flat or high as it may be is said by the lowered underarm or the wider sleeve."""


@dataclass(frozen=True, slots=True)
class UpperFrame:
    """The upper part of one side, its side seam running down as far as was asked."""

    necks: Necks
    armholes: Armholes
    side: SideSeam
    sleeve: StretchSleeve | None
    levels: Levels
    front_length: FrontLength
    levers: tuple[Lever, ...]


def draw_upper(asked: TorsoGiven, low: float) -> UpperFrame:
    """Necks to side seam (down to the height ``low``), the underarm lowered where the sleeve asks for it.

    Refuses as the parts do.
    """
    necks = draw_necks(asked)
    given = with_loosened_waist(with_strap_out(_with_suited_bust(asked), necks), low)
    if given.strap != asked.strap:
        necks = draw_necks(given)
    underarm_y = given.back_length - given.armhole_depth

    @cache
    def armholes_at(lowered: float) -> Armholes:
        seam = side_seam(given, underarm_y - lowered, low)
        return draw_armholes(given, necks, seam.path.start, seam.arrival)

    room = settle_arm_room(given.sleeve, armholes_at) if given.sleeve is not None else None
    lowered = room.lowered if room is not None else 0.0
    side = side_seam(given, underarm_y - lowered, low)
    armholes = armholes_at(lowered)
    sleeve = finished_sleeve(room.sleeve, room.cap) if room is not None else None
    return UpperFrame(
        necks,
        armholes,
        side,
        sleeve,
        Levels(underarm_y - lowered, 0.0, -given.hip_depth, given.back_length),
        front_length(given, necks.base.y, side.path),
        (*_given_levers(asked, given), *_levers(given, armholes, room)),
    )


def _with_suited_bust(asked: TorsoGiven) -> TorsoGiven:
    """What is asked with the bust drafted so much wider or narrower, within its limits, that the across back
    keeps its width."""
    if asked.bust_limits is None or asked.is_cut_in:
        return asked
    least, most = asked.bust_limits
    return replace(asked, bust=min(max(suited_bust(asked), least), most))


def _given_levers(asked: TorsoGiven, given: TorsoGiven) -> tuple[Lever, ...]:
    """By how much bust, strap and waist are drafted otherwise than asked."""
    found: list[Lever] = []
    if asked.bust_limits is not None:
        least, most = (limit - asked.bust for limit in asked.bust_limits)
        found.append(Lever("bust_wider", given.bust - asked.bust, least, most, 0.0))
    if asked.strap_edges is not None and given.strap_edges is not None:
        moved = given.strap_edges[1] - asked.strap_edges[1]
        most = figure("armhole.strap_outmost") * asked.shoulder - asked.strap_edges[1]
        found.append(Lever("strap_moved_out", moved, 0.0, max(most, 0.0), 0.0))
    if asked.waist is not None and given.waist is not None:
        most = max((asked.loosest_waist or 0.0) - asked.waist, 0.0)
        found.append(Lever("waist_wider", given.waist - asked.waist, 0.0, most, 0.0))
    return tuple(found)


def _levers(given: TorsoGiven, armholes: Armholes, room: ArmRoom | None) -> tuple[Lever, ...]:
    found: list[Lever] = [] if given.is_cut_in else _armhole_levers(given, armholes)
    if room is not None:
        longer = sleeve_longer(room.sleeve, room.cap)
        wider_hem = sleeve_hem(room.sleeve, room.cap) - room.sleeve.hem
        least, usual, highest = (figure(f"cap.{word}_share") for word in ("least", "usual", "most"))
        found += [
            Lever("underarm_lowered", room.lowered, 0.0, figure("cap.most_lowering"), 0.0),
            Lever("sleeve_wider", room.wider, 0.0, figure("cap.most_widening"), 0.0),
            Lever("sleeve_longer", longer, 0.0, figure("cap.most_longer"), 0.0),
            Lever("sleeve_hem_wider", wider_hem, 0.0, figure("cap.most_hem_wider"), 0.0),
            Lever(
                "cap_height",
                room.cap.height / armholes.girth,
                least - _SAID,
                highest + _SAID,
                usual,
                "",
            ),
        ]
    return tuple(found)


def _armhole_levers(given: TorsoGiven, armholes: Armholes) -> list[Lever]:
    """Those of a shoulder that is not cut in."""
    most = figure("armhole.most_narrowing_share") * given.shoulder
    quarter = given.bust / 4.0
    wide = figure("armhole.most_across_change")
    narrow = figure("armhole.most_across_narrowing") * given.across_back
    room = (quarter - armholes.back_across.x) / quarter
    least, usual, highest = (
        figure(f"armhole.{word}_share") for word in ("least_flagged", "usual_room", "most_flagged")
    )
    return [
        Lever("shoulder_narrowed", armholes.shoulder.shorter, -figure("armhole.most_dropping"), most, 0.0),
        Lever("armhole_room", room, least, highest, usual, ""),
        Lever("across_back", armholes.across_change, -narrow, wide, 0.0),
    ]


def notch_place(armhole_length: float, share: str) -> float:
    """Distance of a balance notch from the underarm, mm."""
    return figure(share) * armhole_length
