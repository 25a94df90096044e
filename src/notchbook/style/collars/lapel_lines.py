"""Lapel and collar drawn on the front: roll line, gorge, lapel edge, and the collar swung at the shoulder.

Everything is drawn as the front lies, the lapel turned out; up the roll line the garment is on the left.
"""

import math
from dataclasses import dataclass

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, Transform, curve_between, fair_curve, offset
from notchbook.style.collars.curves import bent_edge
from notchbook.style.collars.lapel_given import LapelFront

_ROLL_BELOW_STAND = 5.0
"""mm by which the roll line passes the side-neck point nearer than the collar stands (common practice, no
source)."""

_BELLY = 4.0
"""Degrees by which the lapel edge leaves and meets its chord: a soft belly. Own judgment."""

_STRAIGHT = 0.35
"""Share of the back neck that the collar's neck edge keeps straight. Own judgment."""

_BEHIND = 0.6
"""Share of the back neck along which the outer edge lies parallel to it. Own judgment."""


@dataclass(frozen=True, slots=True)
class LapelSize:
    """mm and degrees: the collar's ``stand`` and ``fall`` behind, the ``lapel`` square to the roll line, how
    far below the shoulder the ``gorge`` turns and how much it ``slopes``; the free ``top`` of the lapel, the
    collar's ``end`` and the angle of the ``notch`` between them; ``back``: the back neck; ``swing``: by how
    many degrees the collar is swung at the shoulder."""

    stand: float
    fall: float
    lapel: float
    gorge: float
    slope: float
    top: float
    end: float
    notch: float
    back: float
    swing: float

    @property
    def width(self) -> float:
        """The whole width of the collar at the center back."""
        return self.stand + self.fall


@dataclass(frozen=True, slots=True)
class Roll:
    """The roll line: where it begins, its direction upward, and the direction out of the garment."""

    foot: Point
    up: Point
    out: Point

    def reach(self, place: Point) -> float:
        """How far outside the roll line a place lies, mm."""
        return (place - self.foot).dot(self.out)


def roll_of(front: LapelFront, stand: float) -> Roll:
    """From the break point to the shoulder carried on by the stand."""
    top = front.neck_point + front.up_shoulder * max(stand - _ROLL_BELOW_STAND, 0.0)
    up = (top - front.break_point).unit()
    return Roll(front.break_point, up, -up.perpendicular())


@dataclass(frozen=True, slots=True)
class NotchedLines:
    """The lines of a notched lapel on the front: its ``edge`` up to the tip, its ``top`` to the notch, the
    ``gorge`` to its corner, ``inner`` on to the side-neck point; where it rolls."""

    edge: Path
    top: Path
    gorge: Path
    inner: Path
    roll: Path


def notched_lines(front: LapelFront, roll: Roll, size: LapelSize, turn: float = 0.0) -> NotchedLines:
    """The lapel; ``turn`` mm are added on its edge and top, for the facing.

    StepRefused ``lapel-narrow`` where the gorge does not reach the tip, ``lapel-tip-low`` where it comes down
    to the break point.
    """
    corner = front.neck_point - roll.up * size.gorge
    slope = math.radians(size.slope)
    along = roll.out * math.cos(slope) - roll.up * math.sin(slope)
    long = (size.lapel - roll.reach(corner)) / math.cos(slope)
    if long <= size.top or roll.reach(corner) >= size.lapel:
        raise StepRefused("lapel-narrow", lapel=size.lapel, top=size.top)
    notch = corner + along * (long - size.top)
    tip = corner + along * long
    if (tip - roll.foot).dot(roll.up) <= size.top:
        raise StepRefused("lapel-tip-low", gorge=size.gorge)
    tip = tip + (along + along.perpendicular()) * turn
    edge = bellied(front.break_point, tip)
    crossing = corner + along * (-roll.reach(corner) / math.cos(slope))
    return NotchedLines(
        edge,
        Path.line(tip, notch),
        Path.line(notch, corner),
        _inner(front, roll, corner),
        Path.line(roll.foot, crossing),
    )


def _inner(front: LapelFront, roll: Roll, corner: Point) -> Path:
    """From the corner of the gorge up to the shoulder, along the roll line, and on into the back neck."""
    neck = front.neck_point
    turn = _turned(front.down_neck, -roll.up)
    return Path.of(curve_between(neck, _down(roll) - turn, corner, _down(roll) + turn)).reversed()


def _turned(before: Point, after: Point) -> float:
    """The turn from one direction to another, degrees, left positive."""
    return Point(before.dot(after), before.cross(after)).direction()


def _down(roll: Roll) -> float:
    """The direction down the roll line, degrees."""
    return (-roll.up).direction()


def bellied(start: Point, end: Point) -> Path:
    """A line from the break point up, curved outward a little."""
    ahead = (end - start).direction()
    return Path.of(curve_between(start, ahead - _BELLY, end, ahead + _BELLY))


@dataclass(frozen=True, slots=True)
class Behind:
    """The collar behind the shoulder, in a frame of its own: the nape in the origin, the center back upward;
    ``neck`` from there to the shoulder, ``home`` brings lines of the front there."""

    neck: Path
    home: Transform


def behind_shoulder(front: LapelFront, roll: Roll, size: LapelSize) -> Behind:
    """The neck edge behind, turned by the swing from the roll line; it runs on into that of the front."""
    place, down = front.neck_point, front.down_neck
    neck = bent_edge(size.back, _STRAIGHT * size.back, -size.swing - _turned(down, -roll.up))
    home = Transform.carrying(place, place + down, neck.end, neck.end + neck.tangent_at(neck.length))
    return Behind(neck, home)


@dataclass(frozen=True, slots=True)
class LapelCollar:
    """The collar over a notched lapel in its own frame, counter-clockwise from the nape: ``neck``, ``inner``,
    ``gorge``, ``end``, ``outer``, ``center``; where it rolls."""

    neck: Path
    inner: Path
    gorge: Path
    end: Path
    outer: Path
    center: Path
    roll: Path


def lapel_collar(
    lines: NotchedLines, roll: Roll, behind: Behind, size: LapelSize, turn: float = 0.0
) -> LapelCollar:
    """The collar on the gorge; ``turn`` mm are added on its end and its outer edge, for the upper collar."""
    inner = lines.inner.reversed().transformed(behind.home)
    gorge = lines.gorge.reversed().transformed(behind.home)
    ahead = gorge.tangent_at(gorge.length)
    rising = ahead.rotated(size.notch)
    point = gorge.end + rising * (size.end + turn) - rising.perpendicular() * turn
    outer = outer_edge(behind.neck, size.width + turn, point)
    crossing = behind.home.apply(lines.roll.end)
    high = Point(0.0, size.stand)
    down = behind.home.apply(roll.foot - roll.up) - behind.home.apply(roll.foot)
    fold = Path.of(curve_between(high, 0.0, crossing, down.direction()))
    return LapelCollar(
        behind.neck,
        inner,
        gorge,
        Path.line(gorge.end, point),
        outer,
        Path.line(outer.end, behind.neck.start),
        fold,
    )


def outer_edge(neck: Path, width: float, point: Point) -> Path:
    """From the point of the collar back to its center: led to a parallel of the neck behind.

    StepRefused ``collar-crosses``.
    """
    try:
        parallel = offset(neck.between(0.0, neck.length * _BEHIND), width)
        begin, along = parallel.end, parallel.tangent_at(parallel.length)
        chord = (point - begin).unit()
        turn = Point(along.dot(chord), along.cross(chord)).direction()
        led = Path.of(curve_between(begin, along.direction(), point, chord.direction() + turn))
        points = [parallel.start, begin, led.point_at(led.length / 2.0), point]
        return fair_curve(points, parallel.tangent_at(0.0).direction()).path.reversed()
    except GeometryError as error:
        raise StepRefused("collar-crosses", width=width) from error
