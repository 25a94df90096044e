"""The back of a collar in the flat, as it is seen from the front inside the neck."""

from collections.abc import Iterator
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.output.flat.shapes import FlatShape

_TOP_SAGS, _SEAM_SAGS = 5.0, 14.0
"""mm by which the upper edge and the neck seam lie lower at the center back than at the shoulder. Own
judgment: a picture."""

_STEPS: Final = 12


def back_of_collar(seam_end: Point, top_end: Point) -> FlatShape:
    """Half of it: from the end of the neck seam at the shoulder and that of the upper edge to the center."""
    top = list(_sagging(top_end, _TOP_SAGS))
    seam = list(_sagging(seam_end, _SEAM_SAGS))
    fill = Path.polyline([*top, *reversed(seam)], closed=True)
    return FlatShape(fill, (Path.polyline(top), Path.polyline(seam)))


def _sagging(end: Point, sag: float) -> Iterator[Point]:
    """Places from the end to the center, level there."""
    for index in range(_STEPS + 1):
        share = 1.0 - index / _STEPS
        yield Point(end.x * share, end.y - sag * (1.0 - share * share))
