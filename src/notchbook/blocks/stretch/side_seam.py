"""The side seam of the stretch blocks: one line for front and back, upright at waist and hip."""

from dataclasses import dataclass
from math import atan2, degrees

from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.given import TorsoGiven
from notchbook.errors import DraftRefused
from notchbook.geometry import Line, Path, Point, Segment, curve_between

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
    parts = (_upright(underarm, lean, waist), curve_between(waist, -90.0, hip, -90.0), *below)
    return SideSeam(Path(parts), lean)


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
