"""Front and back neck: as wide as the neck base asks, each half one curve."""

from dataclasses import dataclass
from math import atan2, degrees

from notchbook.blocks.upper.front_heights import FrontHeights
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.proportions import proportion
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Cubic, Point, curve_between
from notchbook.geometry.solve import solve_rising

_PIT_PULL = 1.2
"""How much longer than a batten the front neck keeps level at the pit: hollow low. Set by eye."""

_STEEPEST = 4.0
"""Degrees that a neck curve must still turn at its upper end, so that it never bends back."""


@dataclass(frozen=True, slots=True)
class Slopes:
    """Slopes of the shoulder seams below the horizontal, degrees."""

    front: float
    back: float


@dataclass(frozen=True, slots=True)
class Necks:
    """Both half necks, from the center to the side-neck point; mm.

    ``contour`` is by how much the front center is longer than measured (shorter below 0) so that the neck
    is not too deep (too shallow).
    ``lean`` is how much (degrees) the front neck meets the shoulder less than square.
    """

    front: Cubic
    back: Cubic
    contour: float
    lean: float

    @property
    def width(self) -> float:
        """The back neck width, mm."""
        return self.back.end.x


def draw_necks(given: BodiceGiven, slopes: Slopes, heights: FrontHeights, start: float | None) -> Necks:
    """The necks whose lengths sum to half the neck; ``start`` is a width to begin the search with, mm.

    DraftRefused: ``bodice-neck-unreachable``, ``bodice-neck-depth``, ``bodice-bust-point-far``.
    """
    girth = given.neck

    def over(width: float) -> float:
        necks = _drawn(given, slopes, heights, width)
        return necks.back.length + necks.front.length - girth / 2.0

    begin = start if start is not None else proportion("neck.usual_width_share") * girth
    try:
        width = solve_rising(over, begin, 0.5, 0.10 * girth, 0.28 * girth)
    except GeometryError as error:
        raise DraftRefused("bodice-neck-unreachable", neck=girth) from error
    return _drawn(given, slopes, heights, width)


def _drawn(given: BodiceGiven, slopes: Slopes, heights: FrontHeights, width: float) -> Necks:
    nape = Point(0.0, given.back_length)
    back_end = Point(width, given.back_length + proportion("neck.back_rise_share") * width)
    front_width = width - proportion("neck.front_narrower")
    front_end = Point(front_width, heights.side_neck_y(front_width))
    pit_y, contour = heights.pit(front_width, front_end.y)
    pit = Point(0.0, pit_y)
    lean = _lean(slopes, pit, front_end)
    front = curve_between(pit, 0.0, front_end, 90.0 - slopes.front + lean, _PIT_PULL)
    back = curve_between(nape, 0.0, back_end, 90.0 - slopes.back - lean)
    return Necks(front, back, contour, lean)


def _lean(slopes: Slopes, pit: Point, end: Point) -> float:
    """How much the front neck leans: more at steep shoulders, where it would else bend back."""
    chord = degrees(atan2(end.y - pit.y, end.x))
    wanted = chord + _STEEPEST - (90.0 - slopes.front)
    return min(max(wanted, proportion("neck.lean")), proportion("neck.most_lean"))
