"""Corners of parallels: how two runs are joined on the outside of a corner."""

import math
from itertools import pairwise
from typing import Literal

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment

Join = Literal["mitre", "round", "square"]
"""Ways to join an outside corner: sharp, round about the corner, or cut off square."""

_ARC_DEGREES = 60.0
"""Greatest arc for one cubic: it strays from the circle by 2.4e-5 of the radius."""


def corner_segments(
    corner: Point, arriving: Point, leaving: Point, distance: float, join: Join, mitre_limit: float
) -> list[Segment]:
    """The segments around the outside of a corner, from one parallel to the next.

    ``arriving`` and ``leaving`` are the unit directions at the corner; a turn of 180 degrees is taken to
    the outside. A mitre reaches to its tip, but no farther than ``mitre_limit`` times the width from the
    corner: beyond that it is cut square to the middle of the corner. A square corner is cut at the width
    itself.
    """
    start = corner + arriving.perpendicular() * distance
    end = corner + leaving.perpendicular() * distance
    turn = abs(math.atan2(arriving.cross(leaving), arriving.dot(leaving)))
    width, half = abs(distance), turn / 2.0
    if join == "round":
        return arc_segments(corner, start, -math.copysign(math.degrees(turn), distance))
    limit = mitre_limit if join == "mitre" else 1.0
    if math.cos(half) * limit >= 1.0:
        reach = width * math.tan(half)
        tip = (start + arriving * reach).lerp(end - leaving * reach, 0.5)
        return [Line(start, tip), Line(tip, end)]
    reach = width * (limit - math.cos(half)) / math.sin(half)
    first, last = start + arriving * reach, end - leaving * reach
    return [Line(start, first), Line(first, last), Line(last, end)]


def arc_segments(center: Point, start: Point, degrees: float) -> list[Segment]:
    """Cubics along the circle about ``center`` from ``start``, counter-clockwise when positive."""
    count = max(1, math.ceil(abs(degrees) / _ARC_DEGREES))
    step = degrees / count
    handle = 4.0 / 3.0 * math.tan(math.radians(step) / 4.0)
    spokes = [(start - center).rotated(step * index) for index in range(count + 1)]
    return [
        Cubic(
            center + a,
            center + a + a.perpendicular() * handle,
            center + b - b.perpendicular() * handle,
            center + b,
        )
        for a, b in pairwise(spokes)
    ]
