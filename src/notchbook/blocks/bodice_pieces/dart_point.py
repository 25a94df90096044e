"""The drawn dart point, short of the bust point, and the edge trued across the closed dart.

A dart is opened about the bust point but sewn to a point short of it. Its legs then lean a little more,
and with the dart closed the edge has a dip at the mouth. As at the table, the dart is folded and the
edge is drawn anew across it; unfolded, both legs end on the new line and are equally long.
"""

from collections.abc import Mapping
from math import asin, degrees, radians, sin

from notchbook.blocks.bodice_pieces.panel import Opening, Run
from notchbook.geometry import Cubic, Path, Point, Transform, curve_between
from notchbook.geometry.roots import unit_roots

MOST_SHORTENED = 0.3
"""Share of the leg by which the point may be drawn back at most. Own judgment: a dart that is shorter no
longer shapes the bust."""

MOST_OF_ALL = 0.8
"""Share of its middle by which any dart may be drawn back: some of it must be left to sew."""

TRUED = 12.0
"""mm on each side of the mouth along which the edge is drawn anew. Own judgment: half the width of a
finger, so that level lines and notches stay clear of it."""

LOST_LENGTH = 0.04
"""mm of edge that truing may cost; a sharper dip is trued along a shorter stretch."""

MOVED_MOUTH = 0.05
"""mm by which truing may move the mouth of a waist dart, for the front length ends there."""

_NO_DIP = 0.02
"""Degrees below which the edge runs on as it is."""


def shortened(opening: Opening, by: float) -> Opening:
    """The dart with its point drawn back by mm along its middle."""
    middle = opening.first.lerp(opening.second, 0.5)
    depth = opening.point.distance_to(middle)
    if depth == 0.0:
        return opening
    point = opening.point.lerp(middle, min(by / depth, MOST_OF_ALL))
    return Opening(opening.dart, opening.first, point, opening.second)


def drawn_back(by: float, leg: float) -> float:
    """How far the point of a dart over the bust is drawn back: by mm, at most by its share of the leg."""
    return min(by, MOST_SHORTENED * leg)


def with_short_points(runs: tuple[Run, ...], short_by: Mapping[str, float]) -> tuple[Run, ...]:
    """The runs with the points of these darts drawn back by so many mm, and their edges trued."""
    return tuple(_short(run, short_by) if run.openings else run for run in runs)


def _short(run: Run, short_by: Mapping[str, float]) -> Run:
    parts, openings = list(run.parts), list(run.openings)
    moved = MOVED_MOUTH if run.edge == "waist" else None
    for index, opening in enumerate(openings):
        if opening.dart not in short_by:
            continue
        short = shortened(opening, short_by[opening.dart])
        parts[index], openings[index], parts[index + 1] = trued(parts[index], short, parts[index + 1], moved)
    return Run(run.edge, tuple(parts), tuple(openings))


def trued(
    before: Path, opening: Opening, after: Path, most_moved: float | None = None
) -> tuple[Path, Opening, Path]:
    """The two parts of an edge and the dart between them, drawn anew where they do not run on."""
    if opening.width == 0.0:
        return before, opening, after
    first = (opening.first - opening.point).direction()
    closing = Transform.rotation(first - (opening.second - opening.point).direction(), opening.point)
    closed = after.transformed(closing)
    dip = _turn(before.tangent_at(before.length), closed.tangent_at(0.0))
    reach = _reach(abs(dip), before.length, after.length, most_moved)
    if abs(dip) < _NO_DIP or reach <= 0.5:
        return before, opening, after
    stop = before.length - reach
    bridge = curve_between(
        before.point_at(stop),
        before.tangent_at(stop).direction(),
        closed.point_at(reach),
        closed.tangent_at(reach).direction(),
    )
    place = _on_fold(bridge, opening.point, opening.first)
    inner, outer = bridge.split(place)
    opened = closing.inverse()
    new_before = before.between(0.0, stop).joined(Path.of(inner))
    new_after = Path.of(outer).transformed(opened).joined(after.between(reach, after.length))
    return new_before, Opening(opening.dart, new_before.end, opening.point, new_after.start), new_after


def _reach(dip: float, before: float, after: float, most_moved: float | None) -> float:
    """How far from the mouth the edge is drawn anew, mm: see the constants."""
    turn = max(radians(dip), 1e-6)
    reach = min(TRUED, 0.45 * before, 0.45 * after, 6.0 * LOST_LENGTH / turn**2)
    return reach if most_moved is None else min(reach, 4.0 * most_moved / turn)


def _turn(arriving: Point, leaving: Point) -> float:
    return Point(arriving.dot(leaving), arriving.cross(leaving)).direction()


def _on_fold(bridge: Cubic, point: Point, mouth: Point) -> float:
    """The parameter at which the line from the dart point through the mouth meets the trued edge."""
    up = (mouth - point).unit()
    (x1, x2, x3), (y1, y2, y3) = bridge.powers
    beside = (
        up.cross(bridge.start - point),
        up.x * y1 - up.y * x1,
        up.x * y2 - up.y * x2,
        up.x * y3 - up.y * x3,
    )
    return next(iter(unit_roots(beside)), 0.5)


def dart_angle(intake: float, leg: float) -> float:
    """The angle of a dart in degrees from its intake straight across and its leg, mm."""
    return degrees(2.0 * asin(min(intake / 2.0 / leg, 1.0)))


def dart_intake(angle: float, leg: float) -> float:
    """The intake straight across of a dart of this angle (degrees) on legs of this length, mm."""
    return 2.0 * leg * sin(radians(angle) / 2.0)
