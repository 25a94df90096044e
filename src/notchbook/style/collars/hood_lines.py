"""The lines of half a hood: the neck edge, the face edge, and the seam over the crown."""

from dataclasses import dataclass

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, Point, curve_between, fair_curve, offset
from notchbook.style.collars.curves import bend_for_rise, bent_edge

_DROP = 0.1
"""Share of its length by which the neck edge drops to the front. Own judgment."""

_STRAIGHT = 0.4
"""Share of its length that the neck edge stays straight behind, so that a middle panel meets it square. Own
judgment."""

_FORWARD, _LOW = 0.74, 0.07
"""Shares of the depth by which the upper end of the face edge lies before the nape, and by which its height
is counted from below it: where the neck edge of an ordinary body ends. So the seam over the head is alike on
both sides of a body whose necks are not. Own judgment."""

_BULGE, _SHOULDER = 0.55, 0.9
"""Shares of the height at which the hood is deepest, and at which its back has rounded over. Own judgment."""

_ROUNDED = 0.72
"""Share of the depth, from the face edge, at which the back has rounded over. Own judgment."""


@dataclass(frozen=True, slots=True)
class HoodLines:
    """Half a hood, counter-clockwise: ``neck`` from the back to the front, ``face`` up, ``crown`` from the
    front over the head down to the neck."""

    neck: Path
    face: Path
    crown: Path


def hood_lines(neck: float, height: float, depth: float) -> HoodLines:
    """A hood ``height`` mm high and ``depth`` mm deep, on so many mm of neck.

    StepRefused ``hood-shallow`` where the neck edge is longer than the hood is deep.
    """
    straight = _STRAIGHT * neck
    edge = bent_edge(neck, straight, bend_for_rise(neck, straight, -_DROP * neck))
    if edge.end.x >= depth:
        raise StepRefused("hood-shallow", depth=depth, neck=edge.end.x)
    front, low = _FORWARD * depth, -_LOW * depth
    top = Point(front, low + height)
    points = [
        edge.start,
        Point(front - depth, low + _BULGE * height),
        Point(front - _ROUNDED * depth, low + _SHOULDER * height),
        top,
    ]
    try:
        crown = fair_curve(points, 90.0, 0.0, {1: 90.0}).path
    except GeometryError as error:
        raise StepRefused("hood-shallow", depth=depth, neck=edge.end.x) from error
    face = Path.of(curve_between(edge.end, 2.0 * (top - edge.end).direction() - 90.0, top, 90.0))
    return HoodLines(edge, face, crown.reversed())


def side_lines(whole: HoodLines, middle: float) -> HoodLines:
    """The side panel where a middle panel of ``middle`` mm lies over the crown: half of that is taken off.

    StepRefused ``hood-middle-wide``.
    """
    try:
        inner = offset(whole.crown, middle / 2.0)
    except GeometryError as error:
        raise StepRefused("hood-middle-wide", width=middle) from error
    low, high = whole.neck.nearest(inner.end), whole.face.nearest(inner.start)
    if max(low.gap, high.gap) > _BESIDE:
        raise StepRefused("hood-middle-wide", width=middle)
    crown = inner.with_start(high.point).with_end(low.point)
    neck = whole.neck.between(low.distance_along, whole.neck.length)
    face = whole.face.between(0.0, high.distance_along)
    return HoodLines(neck.with_start(low.point), face.with_end(high.point), crown)


_BESIDE = 5.0
"""mm by which the parallel of the seam may end beside neck and face edge, to be led there. Own judgment."""


def side_panel(neck: float, height: float, depth: float, middle: float) -> HoodLines:
    """The side panel of a hood of three: with half of the middle panel its neck edge is ``neck`` mm long, as
    that half is taken off where the edge is straight.

    StepRefused ``hood-middle-wide`` where it would reach farther.
    """
    if middle / 2.0 > _STRAIGHT * neck:
        raise StepRefused("hood-middle-wide", width=middle)
    return side_lines(hood_lines(neck, height, depth), middle)
