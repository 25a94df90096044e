"""How far everything was pulled that the hand would shift by trial, and within which limits."""

from notchbook.blocks.legs.corner_depths import usual_depths, wanted_depth
from notchbook.blocks.legs.drawing import Drawn, DrawnPanel
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.blocks.legs.pull import CrotchRanges, Range
from notchbook.blocks.legs.shapes import Lever

_EMPTY = 0.05
"""mm."""


def levers(given: TrousersGiven, ranges: CrotchRanges, drawn: Drawn, raised_hip: float) -> tuple[Lever, ...]:
    """All levers of a drafted leg; ``raised_hip`` is by how much its hip level lies higher than measured,
    mm."""
    pulled = drawn.pulled
    share = proportion("thigh.front_share")
    more = drawn.legs.for_thigh
    return (
        _ranged("crotch_front_extension", pulled.front_extension + share * more, ranges.front_extension),
        _ranged("crotch_back_extension", pulled.back_extension + (1.0 - share) * more, ranges.back_extension),
        _ranged("back_slant", pulled.slant, ranges.slant, "deg"),
        _ranged("center_front_height", pulled.raised, ranges.raised),
        _ranged("center_back_height", pulled.back_raised, ranges.back_raised),
        _ranged("crotch_depth", pulled.depth, ranges.depth),
        Lever("extension_for_thigh", more, 0.0, proportion("thigh.most_more") * given.hip, 0.0),
        Lever("moved_side", drawn.waist.moved, 0.0, proportion("waist.flagged_moved"), 0.0),
        Lever("hip_girth", drawn.hip - given.hip, 0.0, proportion("hip.flagged_more"), 0.0),
        *_wider(drawn),
        Lever("hip_level", raised_hip, 0.0, proportion("hip_level.most_raised"), 0.0),
        Lever(
            "inseam_drop",
            -drawn.back.leg.fork.y,
            0.0,
            proportion("fork.flagged_drop"),
            proportion("fork.usual_drop"),
        ),
        _side("front", drawn.front.top.take_in),
        _side("back", drawn.back.top.take_in),
        _corner("front", drawn.front, drawn.hip),
        _corner("back", drawn.back, drawn.hip),
        *_darts(drawn),
    )


def _ranged(name: str, pulled: float, within: Range, unit: str = "mm") -> Lever:
    return Lever(name, pulled, within.least, within.most, within.usual, unit)


def _wider(drawn: Drawn) -> tuple[Lever, ...]:
    """The knee and the hem that follows it; the hem alone of a leg without a knee."""
    legs, most_hem = drawn.legs, proportion("hem.flagged_more")
    if legs.knee is None:
        return (Lever("hem_girth", legs.wider, 0.0, most_hem, 0.0),)
    return (
        Lever("knee_girth", legs.wider, 0.0, proportion("knee.flagged_more"), 0.0),
        Lever("hem_follows", legs.hem_more, 0.0, most_hem, 0.0),
    )


def _side(panel: str, take_in: float) -> Lever:
    least, most = proportion(f"{panel}.flagged_out"), proportion(f"{panel}.flagged_side")
    return Lever(f"{panel}_side_take_in", take_in, least, most, proportion(f"{panel}.usual_side"))


def _corner(name: str, panel: DrawnPanel, hip: float) -> Lever:
    least, most = usual_depths(name, hip)
    return Lever(
        f"{name}_corner_depth",
        panel.curve.depth,
        least,
        most,
        wanted_depth(name, panel.corner.extension, hip),
    )


def _darts(drawn: Drawn) -> tuple[Lever, ...]:
    """The front's darts together, and the widest of the back; an empty dart was not pulled."""
    front = [dart.first.distance_to(dart.second) for dart in drawn.front.top.darts]
    back = [dart.first.distance_to(dart.second) for dart in drawn.back.top.darts]
    found = []
    if sum(front) > _EMPTY:
        found.append(
            Lever(
                "front_waist_darts",
                sum(front),
                0.0,
                proportion("front.flagged_darts"),
                proportion("front.usual_darts"),
            )
        )
    if max(back, default=0.0) > _EMPTY:
        found.append(
            Lever(
                "back_waist_dart",
                max(back),
                0.0,
                proportion("back.flagged_dart"),
                proportion("back.usual_dart"),
            )
        )
    return tuple(found)
