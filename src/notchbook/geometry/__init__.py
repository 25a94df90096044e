"""Exact planar geometry: points, lines, cubics and paths in mm, y up. It knows no clothes.

A path is a chain of straight and cubic segments, addressed by the distance from its start. Closed
outlines run counter-clockwise when their area is positive. Everything is frozen; operations return
new things. What cannot be made is refused with a :class:`~notchbook.errors.GeometryError`.
"""

from notchbook.geometry.box import Box
from notchbook.geometry.compare import assert_paths_close, greatest_gap
from notchbook.geometry.crossings import Crossing
from notchbook.geometry.cubic import Cubic
from notchbook.geometry.curvature import CurvatureSample, curvature_extrema, curvature_profile, inflections
from notchbook.geometry.fair import FairCurve, FairKind, FairViolation, fair_curve
from notchbook.geometry.line import Line
from notchbook.geometry.nearest import Nearest
from notchbook.geometry.offset import MITRE_LIMIT, offset
from notchbook.geometry.offset_join import Join
from notchbook.geometry.path import Path, Side
from notchbook.geometry.point import Point, direction
from notchbook.geometry.run_on import run_on
from notchbook.geometry.segment import Segment
from notchbook.geometry.tolerance import TOLERANCE, Tolerances
from notchbook.geometry.transform import Transform
from notchbook.geometry.velocity import curve_between

__all__ = [
    "MITRE_LIMIT",
    "TOLERANCE",
    "Box",
    "Crossing",
    "Cubic",
    "CurvatureSample",
    "FairCurve",
    "FairKind",
    "FairViolation",
    "Join",
    "Line",
    "Nearest",
    "Path",
    "Point",
    "Segment",
    "Side",
    "Tolerances",
    "Transform",
    "assert_paths_close",
    "curvature_extrema",
    "curvature_profile",
    "curve_between",
    "direction",
    "fair_curve",
    "greatest_gap",
    "inflections",
    "offset",
    "run_on",
]
