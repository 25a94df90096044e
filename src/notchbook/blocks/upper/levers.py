"""What the hand would shift by trial: how far each was pulled, and within which limits."""

from dataclasses import dataclass
from math import degrees

from notchbook.blocks.upper.frames import Frames
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.blocks.upper.shapes import Lever


@dataclass(frozen=True, slots=True)
class Pulled:
    """The armhole's levers: by how much the shoulders are drafted longer than given (mm), the tilt at the
    shoulder points (degrees, back in and front out), by how much half the across chest and half the across
    back are drafted wider than given, and how far the side seam stands behind the middle of the room for the
    arm (mm), for how much longer the front armhole stays square to the side seam, a share of its tangent, and
    how far each armhole was evened against a bump, 0 to 1 of what it may."""

    extension: float
    tilt: float
    front_change: float
    back_change: float
    side_lean: float = 0.0
    hollower: float = 0.0
    front_evened: float = 0.0
    back_evened: float = 0.0


def levers(given: BodiceGiven, frames: Frames, pulled: Pulled) -> tuple[Lever, ...]:
    """All levers of a drafted side."""
    return (
        _ruled("side_place", frames.back_width / (given.bust / 2.0), "side.{}_share", ""),
        _ruled("neck_width", frames.necks.width / given.neck, "neck.{}_width_share", ""),
        Lever(
            "neck_lean", frames.necks.lean, 0.0, proportion("neck.most_lean"), proportion("neck.lean"), "deg"
        ),
        Lever(
            "center_front",
            frames.necks.contour,
            -proportion("neck.most_lowering"),
            proportion("neck.most_raising"),
            0.0,
        ),
        Lever("shoulder", pulled.extension, 0.0, proportion("shoulder.most_extension"), 0.0),
        _across("across_back", pulled.back_change),
        _across("across_chest", pulled.front_change),
        _shoulder_tilt(pulled.tilt),
        _armhole_width(given, frames, pulled),
        Lever("side_lean", pulled.side_lean, 0.0, proportion("armhole.most_side_lean"), 0.0),
        Lever("front_hollower", pulled.hollower, 0.0, proportion("armhole.most_hollower"), 0.0, ""),
        Lever("front_evened", pulled.front_evened, 0.0, 1.0, 0.0, ""),
        Lever("back_evened", pulled.back_evened, 0.0, 1.0, 0.0, ""),
        _side_tilt(frames),
        *_bust(given, frames),
        *_waist_darts(frames),
    )


def _ruled(name: str, value: float, rows: str, unit: str) -> Lever:
    least, most, usual = (proportion(rows.format(word)) for word in ("least", "most", "usual"))
    return Lever(name, value, least, most, usual, unit)


def _across(name: str, change: float) -> Lever:
    """How much wider the whole across width is drafted than given, mm."""
    least, most = proportion("armhole.most_narrowing"), proportion("armhole.most_widening")
    return Lever(name, 2.0 * change, -2.0 * least, 2.0 * most, 0.0)


def _shoulder_tilt(tilt: float) -> Lever:
    most = proportion("shoulder.most_tilt")
    return Lever("shoulder_tilt", tilt, -most, most, 0.0, "deg")


def _armhole_width(given: BodiceGiven, frames: Frames, pulled: Pulled) -> Lever:
    drafted = frames.arm_width - pulled.front_change - pulled.back_change
    half = given.bust / 2.0
    least, most, usual = (
        proportion(f"armhole.{word}_width_share") * half for word in ("least", "flagged", "usual")
    )
    return Lever("armhole_width", drafted, least, most, usual)


def _side_tilt(frames: Frames) -> Lever:
    least, most = proportion("waist.least_tilt"), proportion("waist.most_tilt")
    return Lever("side_tilt", degrees(frames.waists.tilt), least, most, 0.0, "deg")


def _bust(given: BodiceGiven, frames: Frames) -> tuple[Lever, ...]:
    least, most = proportion("bust.least_balance"), proportion("bust.most_balance")
    if given.bust_shape is None:
        return (Lever("balance", frames.balance, least, most, proportion("bust.balance_without_bust"), ""),)
    dart = Lever(
        "bust_dart",
        frames.turned.raw,
        proportion("bust.least_dart"),
        proportion("bust.flagged_dart"),
        proportion("bust.usual_dart"),
        "deg",
    )
    balance = Lever("balance", frames.balance, least, most, proportion("bust.balance"), "")
    return balance, dart, *_upper_bust(given, frames)


def _upper_bust(given: BodiceGiven, frames: Frames) -> tuple[Lever, ...]:
    """How far the upper bust turned the dart, and how much the drafted girth under the arms is over it."""
    if given.upper_bust is None:
        return ()
    turn, gap = proportion("bust.most_upper_turn"), proportion("bust.most_upper_gap")
    over = 2.0 * frames.under_arms - given.upper_bust
    return (
        Lever("upper_bust_turn", frames.turned.by_upper, -turn, turn, 0.0, "deg"),
        Lever("upper_bust", over, -gap, gap, 0.0),
    )


def _waist_darts(frames: Frames) -> tuple[Lever, ...]:
    """The widest waist dart of each panel that has one."""
    most = proportion("waist.most_dart")
    panels = (("front_waist_dart", frames.waists.front), ("back_waist_dart", frames.waists.back))
    return tuple(
        Lever(name, max(2.0 * dart.half for dart in chain.darts), 0.0, most, most / 2.0)
        for name, chain in panels
        if chain.darts
    )
