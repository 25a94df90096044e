"""Arcs and level lines of skirts: against the circle's own formulas."""

from math import pi, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.skirts.arc import arc, arc_over_chord, level_line
from notchbook.geometry import Point


@given(
    radius=st.floats(5.0, 3000.0),
    start=st.floats(-180.0, 180.0),
    span=st.floats(1.0, 315.0),
    way=st.sampled_from([1.0, -1.0]),
)
def test_an_arc_is_as_long_as_the_formula_says_and_lies_on_its_circle(
    radius: float, start: float, span: float, way: float
) -> None:
    center = Point(3.0, -7.0)
    path = arc(center, radius, start, start + way * span)
    assert path.length == pytest.approx(radius * radians(span), rel=1e-6)
    for share in (0.0, 0.1, 0.37, 0.5, 0.81, 1.0):
        assert path.point_at(share * path.length).distance_to(center) == pytest.approx(radius, rel=1e-6)


@given(x=st.floats(10.0, 800.0), lean=st.floats(-60.0, 60.0))
def test_a_level_line_is_square_to_the_middle_and_to_the_seam(x: float, lean: float) -> None:
    line = level_line(Point(x, 12.0), lean)
    assert line.start.x == pytest.approx(0.0, abs=1e-6)
    assert line.end.distance_to(Point(x, 12.0)) < 1e-6
    assert line.tangent_at(0.0).direction() == pytest.approx(0.0, abs=1e-6)
    assert line.tangent_at(line.length).direction() == pytest.approx(lean, abs=1e-6)
    assert line.length == pytest.approx(x * arc_over_chord(lean), rel=1e-6)


def test_the_length_over_the_chord_is_that_of_the_circle() -> None:
    assert arc_over_chord(0.0) == 1.0
    assert arc_over_chord(90.0) == pytest.approx(pi / 2.0)
    assert arc_over_chord(-30.0) == arc_over_chord(30.0) == pytest.approx(radians(30.0) / sin(radians(30.0)))


def test_a_fixed_middle_is_kept() -> None:
    line = level_line(Point(200.0, 0.0), 8.0, -10.0)
    assert line.start == Point(0.0, -10.0)
    assert line.tangent_at(line.length).direction() == pytest.approx(8.0)
