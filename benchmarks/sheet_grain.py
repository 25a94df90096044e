"""The grain line of a piece on a block sheet: an arrow inside the piece, clear of darts and crease."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from shapely.geometry import LineString, Polygon

from support.skirt_judge import Points

SHARES: Final = (0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72)
"""Where the arrow may stand, as shares of the width of the piece; the first that is clear is taken."""

CLEAR: Final = 8.0
"""mm between the arrow and an edge, a dart or a crease line; less only where no place has as much."""

LONGEST: Final = 260.0
PART: Final = 0.45
"""The arrow is this part of the cloth along it, and ``LONGEST`` mm at most."""

HEAD: Final = 7.0


def grain_arrow(outline: Polygon, degrees: float, marks: Sequence[Points]) -> list[Points]:
    """Shaft and heads of the arrow, mm; ``marks`` are lines that it keeps clear of, as of the outline."""
    along = np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    shafts = [_shaft(outline, along, share) for share in SHARES]
    lines = [outline.exterior, *(LineString(mark) for mark in marks if len(mark) > 1)]
    room = [min(LineString(shaft).distance(line) for line in lines) for shaft in shafts]
    enough = next((place for place, clear in enumerate(room) if clear > CLEAR), int(np.argmax(room)))
    shaft = shafts[enough]
    return [shaft, _head(shaft[0], along), _head(shaft[1], -along)]


def _shaft(outline: Polygon, along: Points, share: float) -> Points:
    """The middle part of the longest chord that runs ``along`` the grain at a share of the width."""
    across = np.array([along[1], -along[0]])
    corners = np.array(outline.exterior.coords)
    widths, heights = corners @ across, corners @ along
    at = across * (widths.min() + share * np.ptp(widths))
    chord = LineString([at + along * (heights.min() - 1.0), at + along * (heights.max() + 1.0)])
    cut = outline.intersection(chord)
    longest = max(getattr(cut, "geoms", [cut]), key=lambda part: part.length)
    low, high = np.array(longest.coords)[[0, -1]]
    half = min(PART * float(np.linalg.norm(high - low)), LONGEST) / 2.0
    middle = (low + high) / 2.0
    return np.array([middle - half * along, middle + half * along])


def _head(tip: Points, inward: Points) -> Points:
    """The two strokes of an arrow head as one line."""
    across = np.array([inward[1], -inward[0]])
    foot = tip + HEAD * inward
    return np.array([foot + 0.4 * HEAD * across, tip, foot - 0.4 * HEAD * across])
