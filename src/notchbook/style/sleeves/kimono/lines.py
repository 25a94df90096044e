"""The lines of a sleeve that is cut on: over the arm, round the wrist, under the arm to the side seam."""

import math
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, Segment, curve_between
from notchbook.geometry.solve import solve_rising
from notchbook.pattern import spoken
from notchbook.style.sleeves.kimono.panel import ArmPanel

_SHOULDER = 30.0
"""mm beyond the end of the shoulder at which the line over the arm turns down, for the bone. Own judgment."""

_TURN = 50.0
"""mm over which it has turned. Own judgment."""

_SLASH = 6.0
"""mm of cloth beside the slash of a gusset where it begins, running to nothing at its point: 1/4 in. Common
practice, no source."""

_CLOSEST = 30.0
"""Degrees between the lines under the arm and down the side below which no gusset can be set in. Own
judgment."""

_LEAST_SLASH = 20.0
"""mm that the slash of a gusset is deep at the least; trade sizes are four times as deep. Own judgment."""

_ROUNDS = 8
"""Rounds in which the lean of the hem settles: each leaves less than a tenth of the miss before."""

_MOST = 20.0
"""Degrees by which front and back may hang differently."""


@dataclass(frozen=True, slots=True)
class ArmSize:
    """Length over the arm from the shoulder point, half of the hem, how far below the underarm the sleeve
    meets the side seam, the size of the curve there, how long the sides of a gusset are (0: none), and how
    far from the corner they begin; mm."""

    length: float
    hem: float
    depth: float
    curve: float
    gusset: float = 0.0
    aside: float = 0.0


@dataclass(frozen=True, slots=True)
class ArmLines:
    """The three lines from the shoulder point round to the side seam, how far down the side seam they reach
    it, mm, and with a gusset the point of its slash."""

    over: Path
    hem: Path
    under: Path
    reached: float
    slash: Point | None = None


def arm_lines(panel: ArmPanel, angle: float, size: ArmSize) -> ArmLines:
    """The lines of a sleeve that hangs ``angle`` degrees below the run of the shoulder; StepRefused
    ``kimono-side-short`` where they would reach past the first part of the side seam,
    ``kimono-sleeve-short``."""
    sign = panel.outward
    down = panel.shoulder.rotated(-sign * angle)
    turned = panel.tip + panel.shoulder * _SHOULDER + down * _TURN
    bend = curve_between(panel.tip, panel.shoulder.direction(), turned, down.direction())
    if size.length < bend.length + _TURN:
        raise StepRefused("kimono-sleeve-short", length=size.length)
    end = turned + down * (size.length - bend.length)
    meets = _on_side(panel, size.depth)
    low, back = _lower_end(end, down, meets, -sign * size.hem)
    turn = 90.0 * sign
    hem = Path.of(curve_between(end, down.direction() - turn, low, back.direction() + turn))
    over = Path.of(bend, Line(turned, end))
    if size.gusset > 0.0:
        under, reached, slash = _slit(panel, low, meets, size)
        return ArmLines(over, hem, under, reached, slash)
    begin, reached = meets - back * size.curve, size.depth + size.curve
    rounded = _rounded(begin, back, _on_side(panel, reached), panel.side.tangent_at(reached))
    return ArmLines(over, hem, Path((Line(low, begin), *rounded)), reached)


def _rounded(begin: Point, leaving: Point, end: Point, arriving: Point) -> tuple[Segment, ...]:
    """The curve under the arm in two halves of one roundness."""
    chord = end - begin
    turn = math.degrees(math.atan2(leaving.cross(arriving), leaving.dot(arriving)))
    rise = chord.norm() / 2.0 * math.tan(math.radians(turn) / 4.0)
    middle = begin.lerp(end, 0.5) - chord.unit().perpendicular() * rise
    way = leaving.rotated(turn / 2.0).direction()
    return (
        curve_between(begin, leaving.direction(), middle, way),
        curve_between(middle, way, end, arriving.direction()),
    )


def _lower_end(end: Point, down: Point, meets: Point, across: float) -> tuple[Point, Point]:
    """The lower end of the hem and the direction from there to the body: the hem leans as much to the line
    over the arm as to the one under it, so that it can meet both squarely."""
    square = down.perpendicular() * across
    lean = 0.0
    for _ in range(_ROUNDS):
        low = end + square.rotated(lean / 2.0)
        back = (meets - low).unit()
        lean = math.degrees(math.asin(max(-1.0, min(1.0, down.cross(-back)))))
    return low, back


def slash_aside(panel: ArmPanel, angle: float, size: ArmSize) -> float:
    """How far from the corner under the arm the sides of a slash begin on arm and side, so that there is
    cloth to sew the gusset by, mm. StepRefused ``kimono-gusset-small`` where the gusset ends in that cloth,
    ``kimono-gusset-close`` where arm and side lie too close."""
    least = math.hypot(_SLASH, _LEAST_SLASH)
    if size.gusset < least:
        raise StepRefused("kimono-gusset-small", gusset=size.gusset, least=least)
    lines = arm_lines(panel, angle, replace(size, gusset=0.0, curve=_SLASH))
    low, meets = lines.hem.end, _on_side(panel, size.depth)
    out, down = (low - meets).unit(), panel.side.tangent_at(size.depth, "after")
    between = math.degrees(math.acos(max(-1.0, min(1.0, out.dot(down)))))
    if between < _CLOSEST:
        raise StepRefused("kimono-gusset-close", angle=between, least=_CLOSEST)
    return _SLASH / math.sin(math.radians(between) / 2.0)


def _slit(panel: ArmPanel, low: Point, meets: Point, size: ArmSize) -> tuple[Path, float, Point]:
    """The line under the arm up to the slash of a gusset, how far down the side seam the slash ends, and its
    point: inside the body, as far from the arm as from the side, its two sides as long as the gusset's."""
    out, down = (low - meets).unit(), panel.side.tangent_at(size.depth, "after")
    inward, reached = -(out + down).unit(), size.depth + size.aside
    _on_side(panel, reached)
    beside, along = size.aside * abs(inward.cross(out)), size.aside * abs(inward.dot(out))
    deep = math.sqrt(max(size.gusset**2 - beside**2, 0.0)) - along
    return Path.line(low, meets + out * size.aside), reached, meets + inward * deep


def _on_side(panel: ArmPanel, distance: float) -> Point:
    if distance >= panel.side.length - 1.0:
        raise StepRefused(
            "kimono-side-short", seam=spoken(panel.side_edge.name), reached=distance, length=panel.side.length
        )
    return panel.side.point_at(distance)


def even_angle(front: ArmPanel, back: ArmPanel, angle: float, size: ArmSize) -> float:
    """The angle of the back at which its line under the arm is as long as that of the front, degrees.

    GeometryError ``no-solution`` where no angle within 20 degrees does it.
    """
    wanted = arm_lines(front, angle, size).under.length
    return solve_rising(
        lambda at: arm_lines(back, at, size).under.length - wanted, angle, 1.0, angle - _MOST, angle + _MOST
    )
