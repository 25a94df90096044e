"""The lines of a slanted pocket: its opening, the waist raised for the ease of it, the bag behind it."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Line, Path, Point, curve_between, fair_curve
from notchbook.pattern import spoken
from notchbook.style.pockets.corner_walks import CornerWalks

_RAMP = 60.0
"""mm of the waist over which it rises to the opening. Own judgment."""

_LEAST_RAMP = 15.0
"""mm; over less, the waist would have a corner. Own judgment."""

_STEEPEST = 0.4
"""Cosine of the angle between opening and the way off the waist: a flatter one is no slanted opening."""

_STRAIGHT = 0.5
"""Share of its depth over which the bag's inner edge comes down straight from the waist. Own judgment."""

_LOWEST = 0.4
"""Share of its width at which the bag is deepest, from the side. Own judgment."""


@dataclass(frozen=True, slots=True)
class SlantAsked:
    """A slanted pocket as asked for, mm: where its opening begins along the waist and ends down the side, how
    far it bows toward the center, its ease, how far the facing reaches beyond it, how far the bag reaches
    along the waist, below the waist, and below the opening at the side."""

    along_waist: float
    down_side: float
    bow: float
    ease: float
    facing: float
    bag_width: float
    bag_depth: float
    bag_below: float


@dataclass(frozen=True, slots=True)
class SlantShape:
    """The lines, from the waist down and away from the corner.

    ``line``: where the edge of the opening comes to lie; ``opening``: that edge itself, longer by its ease;
    ``raised``: the waist from the end of the opening away from the corner, darts closed; ``ramp``: the part
    of it that was drawn anew, and ``ramp_end`` how far from the corner that ends. ``bag``: from the side
    round below and up to the waist. ``facing_corner``: the inner lower corner of the facing.
    """

    line: Path
    opening: Path
    raised: Path
    ramp: Path
    ramp_end: float
    bag: Path
    facing_corner: Point


_NEAR_JOINT = 3.0
"""mm from a joint of the waist within which nothing ends beside it: the scrap could not be drawn. Own
judgment."""


def off_joints(walks: CornerWalks, asked: SlantAsked) -> SlantAsked:
    """As asked for, with the ends of facing and bag on a joint of the waist, a closed dart, where one is
    near."""

    def moved(reach: float) -> float:
        joint = min(walks.waist.distances, key=lambda at: abs(at - reach))
        return joint if abs(joint - reach) < _NEAR_JOINT else reach

    facing = moved(asked.along_waist + asked.facing) - asked.along_waist
    return replace(asked, facing=facing, bag_width=moved(asked.bag_width))


def slant_shape(walks: CornerWalks, asked: SlantAsked) -> SlantShape:
    """The lines on this piece; StepRefused ``slant-past-part``, ``slant-past-center``, ``slant-flat``,
    ``pocket-too-shallow``."""
    _require_room(walks, asked)
    top, end = walks.waist.point_at(asked.along_waist), walks.side.point_at(asked.down_side)
    line = bowed(top, end, asked.bow, away_from=walks.waist.start)
    ramp_end = min(asked.along_waist + _RAMP, walks.waist_edge.length)
    raised_top = _raised_top(walks, asked, line, ramp_end)
    ramp = _ramp(walks, raised_top, ramp_end)
    rest = walks.waist.split_at(ramp_end)[1]
    return SlantShape(
        line,
        bowed(raised_top, end, asked.bow, away_from=walks.waist.start),
        ramp.joined(rest.with_start(ramp.end)),
        ramp,
        ramp_end,
        _bag(walks, asked),
        _facing_corner(walks, asked),
    )


def bowed(start: Point, end: Point, bow: float, *, away_from: Point) -> Path:
    """The line between two points, bowed by so much (mm) away from a third one."""
    if bow == 0.0:
        return Path.line(start, end)
    middle = start.lerp(end, 0.5)
    square = (end - start).unit().perpendicular()
    square = square if square.dot(middle - away_from) > 0.0 else -square
    return fair_curve([start, middle + square * bow, end]).path


def _require_room(walks: CornerWalks, asked: SlantAsked) -> None:
    if asked.along_waist + _LEAST_RAMP > walks.waist_edge.length:
        edge, length = spoken(walks.waist_edge.name), walks.waist_edge.length
        raise StepRefused("slant-past-part", edge=edge, at=asked.along_waist, length=length)
    lowest = asked.down_side + asked.bag_below
    if lowest >= walks.side_edge.length:
        edge, length = spoken(walks.side_edge.name), walks.side_edge.length
        raise StepRefused("slant-past-part", edge=edge, at=lowest, length=length)
    most = walks.waist.length
    for reach in (asked.bag_width, asked.along_waist + asked.facing):
        if reach >= most:
            raise StepRefused("slant-past-center", piece=spoken(walks.piece.name), reach=reach, most=most)
    if asked.bag_width <= asked.along_waist + asked.facing:
        raise StepRefused("slant-bag-narrow", width=asked.bag_width, least=asked.along_waist + asked.facing)
    if asked.bag_depth <= lowest:
        raise StepRefused("pocket-too-shallow", depth=asked.bag_depth, opening=lowest)


def _raised_top(walks: CornerWalks, asked: SlantAsked, line: Path, ramp_end: float) -> Point:
    """Where the edge of the opening ends at the waist: raised until it has its ease, and moved along the
    waist until that is as long as before."""
    travel = walks.waist.tangent_at(asked.along_waist)
    off = walks.off(travel)
    steep = -line.tangent_at(0.0).dot(off)
    if steep < _STEEPEST:
        raise StepRefused(
            "slant-flat", waist=spoken(walks.waist_edge.name), side=spoken(walks.side_edge.name)
        )
    wanted = line.length + asked.ease
    rise = aside = 0.0
    top = line.start
    for _ in range(30):
        opening = bowed(top, line.end, asked.bow, away_from=walks.waist.start)
        short = wanted - opening.length
        over = _ramp(walks, top, ramp_end).length - (ramp_end - asked.along_waist)
        rise, aside = rise + short / steep, aside + over
        top = line.start + off * rise + travel * aside
        if abs(short) + abs(over) < 1e-9:
            break
    return top


def _ramp(walks: CornerWalks, top: Point, ramp_end: float) -> Path:
    """The waist from the raised end of the opening until it runs as before."""
    joint = walks.waist.point_at(ramp_end)
    arriving = walks.waist.tangent_at(ramp_end).direction()
    leaving = 2.0 * (joint - top).direction() - arriving
    return Path.of(curve_between(top, leaving, joint, arriving))


def _bag(walks: CornerWalks, asked: SlantAsked) -> Path:
    begin = walks.side.point_at(asked.down_side + asked.bag_below)
    upper = walks.waist.point_at(asked.bag_width)
    down = walks.side.tangent_at(asked.down_side + asked.bag_below)
    up = walks.off(walks.waist.tangent_at(asked.bag_width))
    aside = Point(1.0 if upper.x > begin.x else -1.0, 0.0)
    lowest = Point(
        begin.x + (upper.x - begin.x) * _LOWEST, min(walks.waist.start.y, upper.y) - asked.bag_depth
    )
    straight = upper - up * (asked.bag_depth * _STRAIGHT)
    return Path.of(
        curve_between(begin, down.direction(), lowest, aside.direction()),
        curve_between(lowest, aside.direction(), straight, up.direction()),
        Line(straight, upper),
    )


def _facing_corner(walks: CornerWalks, asked: SlantAsked) -> Point:
    """So far square to the side as the facing is wide, where it ends there."""
    at = asked.down_side + facing_below(asked)
    square = walks.side.tangent_at(at).perpendicular() * (1.0 if walks.runs_to_side else -1.0)
    return walks.side.point_at(at) + square * asked.facing


def facing_below(asked: SlantAsked) -> float:
    """How far below the opening the facing ends at the side, mm: well above the end of the bag."""
    return 0.6 * asked.bag_below
