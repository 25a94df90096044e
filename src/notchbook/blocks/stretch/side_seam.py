"""The side seam of the stretch blocks: one line for front and back, upright at waist and hip."""

from dataclasses import dataclass, replace
from math import atan2, degrees

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Line, Path, Point, Segment, curve_between
from notchbook.geometry.solve import solve_rising

_LEVEL = 1e-6
"""mm; levels that lie closer are one."""


@dataclass(frozen=True, slots=True)
class SideSeam:
    """The line from the underarm down to ``low`` at least, and how much it leans inward (degrees) at the
    underarm."""

    path: Path
    lean: float

    @property
    def arrival(self) -> float:
        """The direction in which an armhole reaches the underarm square to the seam, degrees."""
        return -self.lean


def side_seam(given: TorsoGiven, underarm_y: float, low: float) -> SideSeam:
    """The side seam from the underarm down to the height ``low`` (0 or below), or to the hip if that is
    lower. DraftRefused ``stretch-side-short``."""
    if underarm_y < figure("side.least_length"):
        raise DraftRefused("stretch-side-short", side=underarm_y, least=figure("side.least_length"))
    underarm = Point(given.bust / 4.0, underarm_y)
    hip = Point(given.hip / 4.0, -given.hip_depth)
    below: tuple[Segment, ...] = ()
    if low < hip.y - _LEVEL:
        below = (Line(hip, Point(hip.x, low)),)
    if given.waist is None:
        lean = _start_lean(underarm, hip)
        return SideSeam(Path((_upright(underarm, lean, hip), *below)), lean)
    waist = Point(given.waist / 4.0, 0.0)
    lean = _start_lean(underarm, waist)
    parts = (_upright(underarm, lean, waist), _waist_to_hip(waist, hip), *below)
    return SideSeam(Path(parts), lean)


def with_loosened_waist(given: TorsoGiven, low: float) -> TorsoGiven:
    """What is given with its waist so much wider that the side seam leans no more to the hip than sews
    quietly; no wider than ``loosest_waist``. A seam that ends at the waist (``low``) leans nowhere."""
    if given.waist is None or given.loosest_waist is None or low > -_LEVEL:
        return given
    if given.loosest_waist <= given.waist:
        return given

    def over(waist: float) -> float:
        return _lean_to_hip(given, waist) - figure("side.most_lean")

    if over(given.waist) <= 0.0:
        return given
    if over(given.loosest_waist) >= 0.0:
        return replace(given, waist=given.loosest_waist)
    waist = solve_rising(over, given.waist, 10.0, given.waist, given.loosest_waist)
    return replace(given, waist=waist)


def _lean_to_hip(given: TorsoGiven, waist: float) -> float:
    """How much the seam leans outward between a waist so wide and the hip, at its steepest, degrees."""
    hip = Point(given.hip / 4.0, -given.hip_depth)
    steepest = _waist_to_hip(Point(waist / 4.0, 0.0), hip).tangent(0.5)
    return degrees(atan2(steepest.x, -steepest.y))


def _waist_to_hip(waist: Point, hip: Point) -> Cubic:
    """Upright at both ends; it leans most at its middle."""
    pull = figure("side.hip_pull")
    return curve_between(waist, -90.0, hip, -90.0, pull, pull)


def cut_at(side: Path, height: float) -> Path:
    """The seam down to this height; it falls all the way, so there is one such place."""
    low, high = 0, len(side.segments) - 1
    while low < high and side.segments[low].end.y > height + _LEVEL:
        low += 1
    segment = side.segments[low]
    start, end = 0.0, 1.0
    for _ in range(60):
        middle = (start + end) / 2.0
        if segment.at(middle).y > height:
            start = middle
        else:
            end = middle
    before = side.segments[:low]
    if end >= 1.0:
        return Path((*before, segment))
    return Path((*before, segment.split(end)[0]))


def _start_lean(start: Point, end: Point) -> float:
    """Degrees inward; below 0 outward."""
    chord = degrees(atan2(start.x - end.x, start.y - end.y))
    most = figure("side.most_start")
    return min(max(figure("side.start_share") * chord, -most), most)


def _upright(start: Point, lean: float, end: Point) -> Segment:
    """From the start, leaning inward, to the end, where it is upright."""
    return curve_between(start, -90.0 - lean, end, -90.0)
