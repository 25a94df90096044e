"""One line runs on into another: from place to place, without a corner at either."""

import pytest

from notchbook.errors import GeometryError
from notchbook.geometry import Path, Point, run_on

ACROSS = Path.line(Point(0.0, 0.0), Point(100.0, 0.0))
UP = Path.line(Point(150.0, 40.0), Point(150.0, 140.0))


def test_the_curve_leaves_and_reaches_the_lines_in_their_directions() -> None:
    curve = Path.of(run_on(ACROSS, 70.0, UP, 30.0))
    assert curve.start == Point(70.0, 0.0)
    assert curve.end == Point(150.0, 70.0)
    assert curve.tangent_at(0.0).cross(Point(1.0, 0.0)) == pytest.approx(0.0, abs=1e-12)
    assert curve.tangent_at(curve.length).cross(Point(0.0, 1.0)) == pytest.approx(0.0, abs=1e-12)


def test_a_straight_line_runs_on_straight() -> None:
    curve = Path.of(run_on(ACROSS, 20.0, ACROSS, 80.0))
    assert curve.length == pytest.approx(60.0, abs=1e-9)


def test_no_curve_leads_from_a_place_to_itself() -> None:
    with pytest.raises(GeometryError, match="points-coincide"):
        run_on(ACROSS, 50.0, ACROSS, 50.0)
