"""One armhole curve: from the shoulder point over the across level to the underarm."""

from dataclasses import dataclass
from math import atan2, degrees, sqrt

from notchbook.blocks.upper.across import UpperArmhole
from notchbook.blocks.upper.proportions import proportion
from notchbook.geometry import Cubic, Path, Point, curve_between, direction

_LEAST_TURN = 2.5
"""Degrees that the upper half still turns at its lower end. Set by eye."""

_TURN_SHARE = 0.25
"""The same as a share of the turn at its upper end. Set by eye."""

_LANDING_SHARE = 0.12
"""How long an armhole has at least to turn to the underarm, over the straight way of its lower half: where it
would have less, the upper half turns less. Set by eye."""

_MOST_HOLLOW = 0.86
"""How far the lower half keeps the direction of the across level at most: share of its side of the tangent
triangle. Set by eye."""

_WIDTHS = (0.8, 1.5)
"""Width over height of the lower half at which the bottom begins to flatten, and where it is flattest."""


@dataclass(frozen=True, slots=True)
class Landing:
    """How an armhole ends: the underarm, the direction in which it arrives there (degrees, square to the
    side seam), how long it stays square, over its side of the tangent triangle, and how far it keeps the
    direction of the across level at least, over the other side."""

    underarm: Point
    arrival: float
    bottom: float
    hollow: float


def draw_armhole(upper: UpperArmhole, lean: float, width: float, landing: Landing) -> Path:
    """The armhole through the across width in use (half, mm).

    ``lean`` is the inward lean of the start, degrees. Upright at the across level wherever the shoulder
    point lies outside of it; else leaning out as much as it must.
    """
    across = Point(width, upper.across_y)
    outward = degrees(atan2(width - upper.tip.x, upper.tall))
    turn = max(_LEAST_TURN, _TURN_SHARE * (lean + outward))
    turn = max(_LEAST_TURN, min(turn, _steepest(across, landing) - outward))
    heading = -90.0 + max(outward + turn, 0.0)
    top = curve_between(upper.tip, -90.0 - lean, across, heading)
    return Path.of(top, _lower(across, heading, landing, _end_curvature(top)))


def _steepest(across: Point, landing: Landing) -> float:
    """The outward heading at the across level, degrees, that leaves enough way to turn to the underarm."""
    chord = landing.underarm - across
    aim = landing.underarm - direction(landing.arrival) * (_LANDING_SHARE * chord.norm()) - across
    return degrees(atan2(aim.x, -aim.y))


def _end_curvature(top: Cubic) -> float:
    handle = top.end - top.end_handle
    size = handle.norm()
    if size == 0.0:
        return 0.0
    return 2.0 / 3.0 * abs(handle.cross(top.start_handle - top.end)) / size**3


def _lower(across: Point, heading: float, landing: Landing, curvature: float) -> Cubic:
    """The lower half; it begins as curved as the upper half ends, as far as its hollow allows."""
    leaving, arriving = direction(heading), direction(landing.arrival)
    chord = landing.underarm - across
    turn = leaving.cross(arriving)
    down = chord.cross(arriving) / turn
    along = leaving.cross(chord) / turn
    bottom = landing.bottom + _flatter(along / down if down > 0.0 else 1.0)
    end_handle = landing.underarm - arriving * (bottom * along)
    beside = abs(leaving.cross(end_handle - across))
    bends = curvature > 0.0 and down > 0.0
    wanted = sqrt(2.0 / 3.0 * beside / curvature) / down if bends else _MOST_HOLLOW
    share = min(max(wanted, landing.hollow), _MOST_HOLLOW)
    return Cubic(across, across + leaving * (share * down), end_handle, landing.underarm)


def _flatter(wide: float) -> float:
    """How much longer a wide armhole stays square to the side seam; ``wide`` is its width over its height."""
    low, high = _WIDTHS
    return proportion("armhole.wide_bottom") * min(max((wide - low) / (high - low), 0.0), 1.0)
