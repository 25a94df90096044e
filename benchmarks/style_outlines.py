"""The finished outlines of a style, handed to general-purpose libraries that do a part of the same work."""

from __future__ import annotations

from collections.abc import Sequence

import shapely
from svgpathtools import CubicBezier
from svgpathtools import Path as SvgPath

from notchbook.geometry import Cubic
from notchbook.geometry.segment import Segment
from notchbook.recipe import Replay
from timing import Row, median_ms

_LENGTH_ERROR = 1e-6
"""How exactly svgpathtools measures, mm: as exactly as the house promises."""

_FLATNESS = 0.01
"""How near the polyline given to shapely keeps to the outline, mm."""

_ALLOWANCE = 10.0
"""mm, round every piece."""


def outline_rows(run: Replay) -> list[Row]:
    """svgpathtools measures every edge and moves it; shapely lays an allowance round every piece."""
    curves = [_curves(edge.path.segments) for edge in run.pattern.edges.values()]
    polygons = [
        shapely.Polygon([(point.x, point.y) for point in piece.sew_line.flattened(_FLATNESS)])
        for piece in run.pattern.pieces.values()
    ]
    edges, steps = f"{len(curves)} edges measured and moved", len(run.states)

    def measured_and_moved() -> object:
        return [(path.length(error=_LENGTH_ERROR), path.translated(10j)) for path in curves]

    def with_allowance() -> object:
        return [polygon.buffer(_ALLOWANCE, join_style="mitre") for polygon in polygons]

    return [
        (f"{edges}, once for each of {steps} steps", "svgpathtools", steps * median_ms(measured_and_moved)),
        (f"{len(polygons)} pieces with an allowance", "shapely", median_ms(with_allowance)),
    ]


def _curves(segments: Sequence[Segment]) -> SvgPath:
    found = []
    for one in segments:
        ends = (one.start, one.end)
        handles = (one.start_handle, one.end_handle) if isinstance(one, Cubic) else ends
        found.append(CubicBezier(*(complex(p.x, p.y) for p in (ends[0], *handles, ends[1]))))
    return SvgPath(*found)
