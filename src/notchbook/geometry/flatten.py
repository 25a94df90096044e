"""Polylines that stay within a tolerance of a segment."""

import math

from notchbook.errors import GeometryError
from notchbook.geometry.line import Line
from notchbook.geometry.point import Point
from notchbook.geometry.segment import Segment


def flattened_segment(segment: Segment, tolerance_mm: float) -> list[Point]:
    """Points on the segment after its start, up to its end.

    The chord of a piece of parameter width h strays by at most h²/8 of the greatest second derivative,
    which for a cubic stands at one of its ends (a linear function): enough equal pieces are taken.
    """
    if not tolerance_mm > 0.0:
        raise GeometryError("tolerance-not-positive", value=tolerance_mm)
    if isinstance(segment, Line):
        return [segment.end]
    bend = max(segment.second_derivative(0.0).norm(), segment.second_derivative(1.0).norm())
    pieces = max(1, math.ceil(math.sqrt(bend / (8.0 * tolerance_mm))))
    return [*(segment.at(index / pieces) for index in range(1, pieces)), segment.end]
