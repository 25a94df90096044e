"""The side seam below a bust dart that opens low: drawn anew from the hem, joined to what the dart trued."""

import pytest

from notchbook.blocks.bodice_pieces.below_waist import HipPanel
from notchbook.blocks.bodice_pieces.hip_panel import _side_run
from notchbook.blocks.bodice_pieces.panel import Opening, Run
from notchbook.errors import GeometryError
from notchbook.geometry import Path, Point

SIDE = Path.line(Point(260.0, -200.0), Point(260.0, 150.0))
BELOW = HipPanel(SIDE, Point(260.0, 0.0), 0.0, 200.0, -200.0, -200.0, ())


def beside(off: float) -> Run:
    """The side seam from the waist over a dart, its lower part so far beside the line drawn anew, mm."""
    lower = Path.line(Point(260.0 + off, 0.0), Point(260.0 + off, 40.0))
    upper = Path.line(Point(262.0, 90.0), Point(260.0, 150.0))
    dart = Opening("bust_dart", lower.end, Point(120.0, 70.0), upper.start)
    return Run("side_seam", (lower, upper), (dart,))


@pytest.mark.parametrize("off", [0.0, 1e-7, 0.001, 0.05])
def test_a_line_that_strays_by_less_than_a_pencil_line_is_joined(off: float) -> None:
    lowest = _side_run(beside(off), BELOW).parts[0]
    assert (lowest.start, lowest.end) == (SIDE.start, Point(260.0 + off, 40.0))
    assert lowest.corners(0.1) == ()


def test_lines_that_lie_apart_are_not() -> None:
    with pytest.raises(GeometryError, match="path-broken"):
        _side_run(beside(0.5), BELOW)
