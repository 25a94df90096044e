"""The whole cap: front and back of given lengths that meet at one crown over a given biceps."""

from dataclasses import dataclass

from notchbook.blocks.set_in.cap_line import CapLine
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.half_cap import LAID, LEAST, MOST, USUAL, HalfCap, half_cap
from notchbook.blocks.set_in.lower_armhole import lower_armhole
from notchbook.blocks.set_in.taper import taper_tilt
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry.solve import solve_rising

_EXACT = 1e-7
"""mm; how exactly both halves meet and the width comes out."""
_NEWTON_ROUNDS = 16
_USUAL_SHARE = 0.32
"""Usual cap height over the armhole, from which what is solved is begun."""
_UNEVEN = 1e-4
"""mm; halves that differ more in height do not meet."""


@dataclass(frozen=True, slots=True)
class CapLengths:
    """How long the cap is on either side of the shoulder seam, and how far behind it the crown lies, mm."""

    front: float
    back: float
    behind: float


@dataclass(frozen=True, slots=True)
class Cap:
    """A solved cap: its halves as lines to the crown, their levers, and the tilt of the seams (radians)."""

    front: CapLine
    back: CapLine
    front_lever: float
    back_lever: float
    tilt: float

    @property
    def height(self) -> float:
        """The height of the cap, mm."""
        return self.front.end[1]

    @property
    def front_width(self) -> float:
        """From the crown to the front underarm, mm."""
        return self.front.end[0]

    @property
    def back_width(self) -> float:
        """From the crown to the back underarm, mm."""
        return self.back.end[0]

    @property
    def biceps(self) -> float:
        """The whole width, mm."""
        return self.front_width + self.back_width

    @property
    def is_laid(self) -> bool:
        """Whether both halves follow the armhole as far as they should."""
        return min(self.front_lever, self.back_lever) >= LAID


def low_share(given: SleeveGiven) -> float:
    """Cap height over armhole below which the cap is low: lower with less ease, down to the least."""
    less = max(figure("cap.usual_ease") - given.cap_ease, 0.0) * figure("cap.height_to_ease")
    return max(figure("cap.low_share") - less / given.armhole.girth, figure("cap.least_share"))


def cap_lengths(given: SleeveGiven) -> CapLengths:
    """The lengths of the two sides of the cap, and where the crown lies."""
    front = given.armhole.front.length + given.front_ease_share * given.cap_ease
    back = given.armhole.back.length + (1.0 - given.front_ease_share) * given.cap_ease
    if given.pitch is not None:
        return CapLengths(front, back, given.armhole.girth * given.pitch / 360.0)
    behind = (back - front) / 2.0 - figure("crown.short_of_balance")
    least = given.armhole.girth * figure("crown.least_pitch") / 360.0
    return CapLengths(front, back, max(min(behind, figure("crown.most_behind")), least))


def cap_halves(given: SleeveGiven, lengths: CapLengths, farther: float = 0.0) -> tuple[HalfCap, HalfCap]:
    """Front and back of the cap with all their shapes; ``farther`` is how much farther than usual the front
    follows its armhole, a share of the way that is left."""
    tilt = taper_tilt(given, given.biceps, _USUAL_SHARE * given.armhole.girth)
    lower = lower_armhole(given.armhole.front, 1.0)
    front = half_cap("front", lower, lengths.front + lengths.behind, tilt, farther)
    back = half_cap("back", lower_armhole(given.armhole.back, -1.0), lengths.back - lengths.behind, tilt)
    return front, back


def cap_of_biceps(given: SleeveGiven, front: HalfCap, back: HalfCap) -> Cap | None:
    """The cap of this biceps; the narrowest one, which is wider, where that is too narrow.

    None where even the widest is too narrow, or front and back are never equally high.
    """
    return _met(given, front, back) or _sought(given, front, back)


def are_uneven(given: SleeveGiven, front: HalfCap, back: HalfCap) -> bool:
    """Whether no height serves both halves: front and back armhole differ too much in length."""
    low, high = _heights(given, front, back)
    return low >= high


def is_as_high(given: SleeveGiven, share: float, *, is_to_lie: bool) -> bool:
    """Whether the cap of this biceps is as high as this share of the armhole (and lies on it).

    The higher a cap, the narrower: so it is that high where the cap of just that height is wide enough.
    """
    front, back = cap_halves(given, cap_lengths(given))
    low, high = _heights(given, front, back)
    tilt = taper_tilt(given, given.biceps, share * given.armhole.girth)
    laid = max(half.line(LAID, tilt).end[1] for half in (front, back)) if is_to_lie else 0.0
    height = max(share * given.armhole.girth, laid, low)
    return height <= high and _cap(given, front, back, height, given.biceps).biceps >= given.biceps


def _sought(given: SleeveGiven, front: HalfCap, back: HalfCap) -> Cap | None:
    """The cap of this biceps, or the narrowest, between the lowest and the highest cap."""
    low, high = _heights(given, front, back)

    def over(height: float) -> float:
        return _cap(given, front, back, height, given.biceps).biceps - given.biceps

    if low >= high or over(low) < 0.0:
        return None
    if over(high) > 0.0:
        return cap_of_height(given, front, back, high)
    height = solve_rising(over, _USUAL_SHARE * given.armhole.girth, 0.02 * given.armhole.girth, low, high)
    cap = _cap(given, front, back, height, given.biceps)
    is_even = abs(cap.front.end[1] - cap.back.end[1]) <= _UNEVEN
    return cap if is_even else None


def _met(given: SleeveGiven, front: HalfCap, back: HalfCap) -> Cap | None:
    """Newton's steps on the two levers until both halves are equally high and together as wide as asked.

    None where they do not settle: at the ends of the levers.
    """
    levers = [USUAL + 0.5, USUAL + 0.5]
    height = _USUAL_SHARE * given.armhole.girth
    for _ in range(_NEWTON_ROUNDS):
        tilt = taper_tilt(given, given.biceps, height)
        lines = [half.line(lever, tilt) for half, lever in zip((front, back), levers, strict=True)]
        uneven = lines[0].end[1] - lines[1].end[1]
        wide = lines[0].end[0] + lines[1].end[0] - given.biceps
        if max(abs(uneven), abs(wide), abs(height - lines[0].end[1])) <= _EXACT:
            return Cap(lines[0], lines[1], levers[0], levers[1], tilt)
        slopes = [
            half.slopes(lever, line) for half, lever, line in zip((front, back), levers, lines, strict=True)
        ]
        size = slopes[0].up * slopes[1].inward + slopes[1].up * slopes[0].inward
        if size == 0.0:
            return None
        steps = (
            -(uneven * slopes[1].inward + wide * slopes[1].up) / size,
            -(wide * slopes[0].up - uneven * slopes[0].inward) / size,
        )
        levers = [
            min(max(lever + min(max(step, -1.0), 1.0), LEAST), MOST)
            for lever, step in zip(levers, steps, strict=True)
        ]
        height = lines[0].end[1] + slopes[0].up * steps[0] if abs(steps[0]) < 1.0 else lines[0].end[1]
    return None


def cap_of_height(given: SleeveGiven, front: HalfCap, back: HalfCap, height: float) -> Cap:
    """The cap of this height, with the biceps that comes out; DraftRefused ``sleeve-cap-not-reached``."""
    low, high = _heights(given, front, back)
    girth = given.armhole.girth

    def over(biceps: float) -> float:
        return _cap(given, front, back, height, biceps).biceps - biceps

    refused = DraftRefused("sleeve-cap-not-reached", cap_height=height, lowest=low, highest=high)
    if not low <= height <= high:
        raise refused
    try:
        biceps = solve_rising(over, 0.8 * girth, 10.0, 0.2 * girth, 2.0 * girth)
    except GeometryError as error:
        raise refused from error
    return _cap(given, front, back, height, biceps)


def _heights(given: SleeveGiven, front: HalfCap, back: HalfCap) -> tuple[float, float]:
    """The heights between which both halves can be drawn, mm."""
    girth = given.armhole.girth
    tilts = [taper_tilt(given, given.biceps, share * girth) for share in (0.1, 0.5)]
    low = max(half.line(LEAST, tilt).end[1] for half in (front, back) for tilt in tilts)
    high = min(half.line(MOST, tilt).end[1] for half in (front, back) for tilt in tilts)
    return low, high


def _cap(given: SleeveGiven, front: HalfCap, back: HalfCap, height: float, biceps: float) -> Cap:
    """The cap of this height, whatever its width."""
    tilt = taper_tilt(given, biceps, height)
    levers = [half.reaching(height, tilt) for half in (front, back)]
    return Cap(front.line(levers[0], tilt), back.line(levers[1], tilt), levers[0], levers[1], tilt)
