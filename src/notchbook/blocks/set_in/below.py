"""The sleeve below the biceps line: underarm seams of equal length, hem, and the bend at the elbow.

The hem is a piece of a circle square to both seams. For an elbow the part below it is turned forward
as it is, so that hem and widths stay: the front seam bends without changing its length, and the back seam
opens by what the elbow takes, as a dart or as ease.
"""

import math
from dataclasses import dataclass

from notchbook.blocks.set_in.cap import Cap
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.taper import elbow_depth
from notchbook.blocks.upper.shapes import OpenDart
from notchbook.errors import DraftRefused
from notchbook.geometry import Cubic, Line, Path, Point, Transform, curve_between
from notchbook.geometry.solve import solve_rising

_UNSEEN = 0.01
"""mm; less ease at the elbow cannot be sewn."""
_SWELLINGS = 4
"""Rounds in which the seam beside an elbow dart is shaped; each leaves a hundredth of the miss before."""
_STRAIGHT = 1e-9
"""Radians; a hem whose seams lean less is straight."""


@dataclass(frozen=True)
class Below:
    """What lies below the biceps line; paths run as in ``SleeveHalf``.

    ``lift`` is how much higher the bend brings the middle of the hem than it would lie without, mm.
    """

    front_seam: Path
    back_seam: tuple[Path, ...]
    hem: Path
    hem_girth: float
    elbow_dart: OpenDart | None
    elbow_line: Path | None
    elbow_width: float | None
    elbow_down: float | None
    hem_middle: Point
    lift: float


@dataclass(frozen=True, slots=True)
class _Straight:
    """The sleeve without a bend: the underarms, the directions of the seams (degrees) and their length."""

    front: Point
    back: Point
    tilt: float
    length: float

    @property
    def front_way(self) -> float:
        return -90.0 - math.degrees(self.tilt)

    @property
    def back_way(self) -> float:
        return -90.0 + math.degrees(self.tilt)

    def on_front(self, distance: float) -> Point:
        return _along(self.front, self.front_way, distance)

    def on_back(self, distance: float) -> Point:
        return _along(self.back, self.back_way, distance)


def draft_below(given: SleeveGiven, cap: Cap) -> Below:
    """Seams, hem and elbow under a solved cap; DraftRefused ``sleeve-too-short`` where no seam is left."""
    straight = _straight(given, cap)
    hem = _hem(straight)
    depth = elbow_depth(given, cap.height)
    down = None if depth is None else depth / math.cos(straight.tilt)
    bent = _bend(given, straight, down) if down is not None and given.back_ease > _UNSEEN else None
    middle = hem.point_at(hem.length / 2.0)
    line = _elbow_line(straight, down)
    width = None if line is None else line.length
    if bent is None:
        front = Path.line(straight.front, straight.on_front(straight.length))
        back = (Path.line(straight.back, straight.on_back(straight.length)),)
        return Below(front, back, hem, hem.length, None, line, width, down, middle, 0.0)
    moved = bent.motion.apply(middle)
    return Below(
        front_seam=bent.front,
        back_seam=bent.back,
        hem=hem.transformed(bent.motion),
        hem_girth=hem.length,
        elbow_dart=bent.dart,
        elbow_line=line if bent.line is None else bent.line,
        elbow_width=width if bent.dart is None else bent.width,
        elbow_down=down,
        hem_middle=moved,
        lift=moved.y - middle.y,
    )


def _straight(given: SleeveGiven, cap: Cap) -> _Straight:
    down = given.down(cap.height)
    if abs(cap.tilt) > _STRAIGHT:
        # About the point where both seams would meet: the middle of the hem lies ``down`` below the biceps.
        from_apex = cap.biceps / 2.0 / math.sin(cap.tilt)
        length = from_apex - (cap.biceps / 2.0 / math.tan(cap.tilt) - down)
    else:
        length = down
    least = figure("below.least_seam")
    if length < least:
        raise DraftRefused(
            "sleeve-too-short",
            length=cap.height + down,
            cap_height=cap.height,
            seam=length,
            least=cap.height + down + least - length,
        )
    return _Straight(Point(cap.front_width, 0.0), Point(-cap.back_width, 0.0), cap.tilt, length)


def _hem(straight: _Straight) -> Path:
    """The arc from the back seam to the front seam, square to both."""
    start, end = straight.on_back(straight.length), straight.on_front(straight.length)
    if abs(straight.tilt) <= _STRAIGHT:
        return Path.line(start, end)
    return Path((_arc(start, end, math.degrees(straight.tilt), -math.degrees(straight.tilt)),))


def _arc(start: Point, end: Point, leaving: float, arriving: float) -> Cubic:
    """The cubic along a circle between two places with these directions, degrees."""
    turn = math.radians(abs(arriving - leaving))
    chord = start.distance_to(end)
    handle = (
        chord / 3.0 if turn < _STRAIGHT else chord * 2.0 / 3.0 * math.tan(turn / 4.0) / math.sin(turn / 2.0)
    )
    return Cubic(start, _along(start, leaving, handle), _along(end, arriving, -handle), end)


def _arc_along(start: Point, leaving: float, turn: float, length: float) -> Cubic:
    """The cubic along a circle of a given length that turns by so many degrees, left positive."""
    radians = math.radians(turn)
    chord = length * (1.0 if abs(radians) < _STRAIGHT else math.sin(radians / 2.0) / (radians / 2.0))
    return _arc(start, _along(start, leaving + turn / 2.0, chord), leaving, leaving + turn)


@dataclass(frozen=True)
class _Bend:
    """The bent seams, the motion of the part below the elbow, and the dart where there is one."""

    motion: Transform
    front: Path
    back: tuple[Path, ...]
    dart: OpenDart | None
    line: Path | None
    width: float | None


def _bend(given: SleeveGiven, straight: _Straight, elbow: float) -> _Bend:
    """The bend whose opening in the back seam is what the elbow takes; ``elbow`` is mm down the seams."""
    drawn = _with_dart if given.elbow_dart else _with_ease
    width = straight.on_front(elbow).distance_to(straight.on_back(elbow))
    usual = math.degrees(given.back_ease / width)

    def over(turn: float) -> float:
        return drawn(straight, elbow, turn)[1] - given.back_ease

    turn = solve_rising(over, usual, usual / 4.0, 0.0, 30.0)
    return drawn(straight, elbow, turn)[0]


def _front_bent(straight: _Straight, elbow: float, turn: float) -> tuple[Path, Transform]:
    """The front seam turned forward by ``turn`` degrees round the elbow, and the motion of what is below."""
    reach, way = figure("below.bend_reach"), straight.front_way
    begin = straight.on_front(elbow - reach)
    bend = _arc_along(begin, way, turn, 2.0 * reach)
    before = straight.on_front(elbow + reach)
    motion = Transform.rotation(turn, before).then(
        Transform.translation(bend.end.x - before.x, bend.end.y - before.y)
    )
    last = motion.apply(straight.on_front(straight.length))
    return Path((Line(straight.front, begin), bend, Line(bend.end, last))), motion


def _with_dart(straight: _Straight, elbow: float, turn: float) -> tuple[_Bend, float]:
    """The bend with a dart, and how wide its mouth is, mm.

    The back seam swells a little toward the dart, as much as makes it smooth when the dart is sewn.
    """
    front, motion = _front_bent(straight, elbow, turn)
    reach, way = figure("below.bend_reach"), straight.back_way
    inside = front.point_at(elbow)
    leg = figure("below.elbow_dart_share") * straight.on_back(elbow).distance_to(inside)
    above, below = straight.on_back(elbow - reach), motion.apply(straight.on_back(elbow + reach))
    swell = 0.0
    for _ in range(_SWELLINGS):
        upper = _arc_along(above, way, -swell, reach)
        lower = _arc_along(below, way + turn + 180.0, swell, reach)
        mouth = upper.end.distance_to(lower.end)
        swell = (2.0 * math.degrees(math.asin(min(mouth / 2.0 / leg, 1.0))) - turn) / 2.0
    middle = upper.end.lerp(lower.end, 0.5)
    # On the line that halves the mouth, so that both legs are equally long.
    depth = math.sqrt(max(leg * leg - mouth * mouth / 4.0, 0.0))
    point = middle + (inside - middle).unit() * depth
    if mouth > 0.0:
        square = (lower.end - upper.end).perpendicular().unit()
        point = middle + square * math.copysign(depth, square.dot(inside - middle))
    last = motion.apply(straight.on_back(straight.length))
    back = (
        Path((Line(straight.back, above), upper)),
        Path((lower.reversed(), Line(below, last))),
    )
    line = Path.line(point, _level_with(front, elbow, point))
    dart = OpenDart(upper.end, point, lower.end)
    return _Bend(motion, front, back, dart, line, leg + line.length), mouth


def _level_with(front: Path, elbow: float, point: Point) -> Point:
    """The place of the front seam that lies as high as a point near the elbow."""
    down = elbow
    for _ in range(_SWELLINGS):
        way = front.tangent_at(down)
        down += (point.y - front.point_at(down).y) / way.y
    return front.point_at(down)


def _with_ease(straight: _Straight, elbow: float, turn: float) -> tuple[_Bend, float]:
    """The bend with an eased back seam, and how much longer that is, mm."""
    front, motion = _front_bent(straight, elbow, turn)
    reach, way = figure("below.bend_reach"), straight.back_way
    begin, end = straight.on_back(elbow - reach), motion.apply(straight.on_back(elbow + reach))
    curve = curve_between(begin, way, end, way + turn)
    last = motion.apply(straight.on_back(straight.length))
    back = Path((Line(straight.back, begin), curve, Line(end, last)))
    return _Bend(motion, front, (back,), None, None, None), back.length - straight.length


def _elbow_line(straight: _Straight, down: float | None) -> Path | None:
    return None if down is None else Path.line(straight.on_back(down), straight.on_front(down))


def _along(start: Point, degrees: float, distance: float) -> Point:
    radians = math.radians(degrees)
    return Point(start.x + distance * math.cos(radians), start.y + distance * math.sin(radians))
