"""Front and back neck: as long as asked at the neck base, then opened and lowered."""

from dataclasses import dataclass
from math import atan2, degrees, radians, tan

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.blocks.stretch.round_curve import round_curve
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Path, Point, curve_between, direction
from notchbook.geometry.solve import solve_rising

_LEAST_TURN = 2.0
"""Degrees by which a neck line in one curve still turns at the shoulder."""


@dataclass(frozen=True, slots=True)
class Necks:
    """Both half necks from the center to where the shoulder seam starts, and the side-neck point ``base``
    of the neck base, from which the shoulder seam is measured."""

    front: Path
    back: Path
    base: Point


def draw_necks(given: TorsoGiven) -> Necks:
    """The necks: those of the neck base sum to half of ``given.neck``, before they are opened.

    DraftRefused ``stretch-neck-unreachable``.
    """
    girth = given.neck

    def over(width: float) -> float:
        base = _base(given, width)
        return base.front.length + base.back.length - girth / 2.0

    usual = figure("neck.usual_width_share") * girth
    try:
        width = solve_rising(over, usual, 0.5, 0.5 * usual, 1.6 * usual)
    except GeometryError as error:
        raise DraftRefused("stretch-neck-unreachable", neck=girth) from error
    return _opened(given, _base(given, width))


def _base(given: TorsoGiven, width: float) -> Necks:
    nape = Point(0.0, given.back_length)
    end = Point(width, nape.y + figure("neck.back_rise_share") * width)
    depth = given.front_neck_depth
    if depth is None:
        depth = width + figure("neck.depth_over_width")
    return _drawn(given, nape, Point(0.0, end.y - depth), end, 0.0)


def _opened(given: TorsoGiven, base: Necks) -> Necks:
    if given.neck_opened == given.front_neck_lower == given.back_neck_lower == 0.0:
        return base
    end = base.base + direction(-given.front_slope) * given.neck_opened
    pit = Point(0.0, base.front.start.y - given.front_neck_lower)
    nape = Point(0.0, base.back.start.y - given.back_neck_lower)
    if max(pit.y, nape.y) >= end.y:
        raise DraftRefused("stretch-neck-wide", wider=given.neck_opened, lower=given.back_neck_lower)
    return _drawn(given, nape, pit, base.base, given.neck_opened)


def _drawn(given: TorsoGiven, nape: Point, pit: Point, base: Point, opened: float) -> Necks:
    """Both lines to where they end on their shoulder seams, ``opened`` mm from the side-neck point; there
    together they run straight across."""
    front_end = base + direction(-given.front_slope) * opened
    back_end = base + direction(-given.back_slope) * opened
    square = 90.0 - given.shoulder_slope
    lean = _lean(square, _rise(pit, front_end), _rise(nape, back_end), given.shoulder_slope)
    return Necks(
        _line(pit, front_end, 90.0 - given.front_slope + lean),
        _line(nape, back_end, 90.0 - given.back_slope - lean),
        base,
    )


def _lean(square: float, front_rise: float, back_rise: float, most: float) -> float:
    """By how much more upright than square the front neck meets the shoulder, and the back less, degrees:
    both nearly square. Both lines must still turn where they meet it; where both are steep they share what
    there is.
    """
    shared = max((2.0 * square - front_rise - back_rise) / 2.0, 0.0)
    front_turn = min(figure("neck.least_turn"), shared)
    back_turn = min(figure("neck.scoop_turn"), 2.0 * shared - front_turn)
    lean = max(figure("neck.lean"), min(front_rise + front_turn - square, most))
    return max(min(lean, square - back_rise - back_turn), -most)


def _line(center: Point, end: Point, arrival: float) -> Path:
    """Level at the center; one so deep that it would bend back goes up steeply and turns square to the
    shoulder at its end."""
    if _rise(center, end) + _LEAST_TURN <= arrival:
        return Path.of(round_curve(center, 0.0, end, arrival))
    steep = max(figure("neck.deep_upright"), arrival)
    depth = end.y - center.y
    low = figure("neck.deep_from") * depth
    chord = radians((steep + arrival) / 2.0)
    x = max(end.x - (depth - low) / tan(chord), figure("neck.deep_inner") * end.x)
    place = Point(x, center.y + low)
    return Path.of(curve_between(center, 0.0, place, steep), curve_between(place, steep, end, arrival))


def _rise(start: Point, end: Point) -> float:
    return degrees(atan2(end.y - start.y, end.x - start.x))
