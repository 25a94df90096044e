"""Lines and cubics: length, places, directions, curvature; degenerate ones too."""

import math
from itertools import pairwise

import numpy as np
import pytest
from fontTools.misc.bezierTools import (
    approximateCubicArcLengthC,
    calcCubicBounds,
    cubicPointAtT,
)
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from svgpathtools import CubicBezier

from notchbook.errors import GeometryError
from notchbook.geometry import Cubic, Line, Point, Segment
from notchbook.geometry.length import GAUSS_LEGENDRE_16
from support.geometry_shapes import ARMHOLE, CAP, COAT, CROTCH, DEGENERATE, HIP

CURVES: dict[str, Cubic] = {"hip": HIP, "armhole": ARMHOLE, "crotch": CROTCH} | {
    f"{name} {index}": segment
    for name, path in (("cap", CAP), ("coat", COAT))
    for index, segment in enumerate(path.segments)
    if isinstance(segment, Cubic)
}
ALL = CURVES | DEGENERATE


def complex_of(point: Point) -> complex:
    return complex(point.x, point.y)


def judge_of(cubic: Cubic) -> CubicBezier:
    points = (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end)
    return CubicBezier(*(complex_of(point) for point in points))


def quadrature(cubic: Cubic) -> float:
    """The arc length by scipy's adaptive quadrature, broken at the slowest places."""

    def speed(t: float) -> float:
        return cubic.derivative(t).norm()

    places = np.linspace(0.0, 1.0, 2001)
    speeds = [speed(t) for t in places]
    slow = [places[i] for i in range(1, 2000) if speeds[i] <= min(speeds[i - 1], speeds[i + 1])]
    stops = [0.0, *slow, 1.0]
    parts = [quad(speed, a, b, epsabs=1e-10, epsrel=1e-13, limit=400)[0] for a, b in pairwise(stops)]
    return float(sum(parts))


def test_the_rule_of_the_table_is_that_of_numpy() -> None:
    places, weights = np.polynomial.legendre.leggauss(16)
    ours = np.array(GAUSS_LEGENDRE_16)
    assert np.allclose(ours[:, 0], places[8:], atol=1e-15)
    assert np.allclose(ours[:, 1], weights[8:], atol=1e-15)


@pytest.mark.parametrize("name", ALL)
def test_lengths_agree_with_scipy(name: str) -> None:
    assert ALL[name].length == pytest.approx(quadrature(ALL[name]), abs=1e-6)


@pytest.mark.parametrize("name", CURVES)
def test_lengths_agree_with_svgpathtools(name: str) -> None:
    assert CURVES[name].length == pytest.approx(judge_of(CURVES[name]).length(error=1e-9), abs=1e-6)


@pytest.mark.parametrize("name", CURVES)
def test_lengths_agree_with_fonttools_as_far_as_its_fixed_rule_goes(name: str) -> None:
    cubic = CURVES[name]
    points = [complex_of(p) for p in (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end)]
    assert cubic.length == pytest.approx(approximateCubicArcLengthC(*points), rel=2e-3)


@pytest.mark.parametrize("name", ALL)
def test_places_and_parameters_are_inverse(name: str) -> None:
    cubic = ALL[name]
    for share in (0.0, 1e-6, 0.1, 0.5, 0.77, 0.999, 1.0):
        distance = cubic.length * share
        assert cubic.distance_at(cubic.parameter_at(distance)) == pytest.approx(distance, abs=1e-7)
    first, second = cubic.split_at(cubic.length / 3.0)
    assert first.length == pytest.approx(cubic.length / 3.0, abs=1e-6)
    assert first.length + second.length == pytest.approx(cubic.length, abs=1e-6)


@pytest.mark.parametrize("name", CURVES)
def test_points_tangents_and_curvature_agree_with_svgpathtools(name: str) -> None:
    cubic, judge = CURVES[name], judge_of(CURVES[name])
    for t in (0.0, 0.2, 0.5, 0.9, 1.0):
        assert abs(complex_of(cubic.at(t)) - judge.point(t)) < 1e-9
        assert abs(complex_of(cubic.tangent(t)) - judge.unit_tangent(t)) < 1e-9
        assert abs(cubic.curvature(t)) == pytest.approx(judge.curvature(t), abs=1e-9)


@pytest.mark.parametrize("name", ALL)
def test_points_and_bounds_agree_with_fonttools(name: str) -> None:
    cubic = ALL[name]
    points = [(p.x, p.y) for p in (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end)]
    box = cubic.bounds()
    assert (box.min_x, box.min_y, box.max_x, box.max_y) == pytest.approx(calcCubicBounds(*points), abs=1e-9)
    assert tuple(cubicPointAtT(*points, 0.3)) == pytest.approx((cubic.at(0.3).x, cubic.at(0.3).y), abs=1e-9)


@given(st.lists(st.tuples(*[st.floats(-900.0, 900.0)] * 2), min_size=4, max_size=4), st.booleans())
def test_bounds_agree_with_fonttools_whether_or_not_the_handles_lie_between_the_ends(
    points: list[tuple[float, float]], between: bool
) -> None:
    if between:
        lows, highs = (tuple(map(pick, *(points[0], points[3]))) for pick in (min, max))
        shares = [tuple(0.5 + number / 1800.0 for number in point) for point in points[1:3]]
        points[1:3] = [
            (lows[0] + (highs[0] - lows[0]) * x, lows[1] + (highs[1] - lows[1]) * y) for x, y in shares
        ]
    box = Cubic(*(Point(x, y) for x, y in points)).bounds()
    assert (box.min_x, box.min_y, box.max_x, box.max_y) == pytest.approx(calcCubicBounds(*points), abs=1e-9)


def test_left_turns_are_positive() -> None:
    quarter = Cubic(Point(100, 0), Point(100, 55.22847), Point(55.22847, 100), Point(0, 100))
    assert quarter.curvature_at(quarter.length / 2.0) == pytest.approx(0.01, rel=0.02)
    assert quarter.reversed().curvature_at(50.0) < 0.0


@pytest.mark.parametrize(
    ("name", "start", "end"),
    [
        ("no start handle", (60, 40), (40, -40)),
        ("no end handle", (30, 50), (70, -50)),
        ("no handles", (1, 0), (1, 0)),
        ("both handles at the start", (100, 50), (100, 50)),
        ("cusp", (1, 1), (1, -1)),
    ],
)
def test_directions_stand_where_handles_have_no_length(
    name: str, start: tuple[float, float], end: tuple[float, float]
) -> None:
    cubic = DEGENERATE[name]
    assert cubic.tangent_at(0.0).distance_to(Point(*start).unit()) < 1e-9
    assert cubic.tangent_at(cubic.length).distance_to(Point(*end).unit()) < 1e-9


def test_curvature_without_a_handle_is_infinite_where_the_curve_turns() -> None:
    assert DEGENERATE["no start handle"].curvature_at(0.0) == -math.inf
    inner = DEGENERATE["no start handle"].curvature_at(1.0)
    assert -math.inf < inner < 0.0
    assert DEGENERATE["no end handle"].curvature(1.0) == -math.inf
    assert DEGENERATE["no handles"].curvature_at(0.0) == 0.0


def test_the_tip_of_a_cusp_points_on() -> None:
    """The curve is symmetric about x = 50 and comes to its tip from below: it leaves straight down."""
    assert DEGENERATE["cusp"].tangent(0.5).distance_to(Point(0.0, -1.0)) < 1e-9


def test_a_curve_of_one_point_has_no_direction() -> None:
    dot = Cubic(*[Point(3, 3)] * 4)
    assert dot.length == 0.0
    assert dot.point_at(0.0) == Point(3, 3)
    with pytest.raises(GeometryError, match="no-direction"):
        dot.tangent_at(0.0)


@pytest.mark.parametrize("segment", [Line(Point(0, 0), Point(30, 40)), HIP])
def test_places_outside_are_refused_and_small_overshoot_is_not(segment: Segment) -> None:
    assert segment.point_at(segment.length + 5e-7) == segment.end
    assert segment.point_at(-5e-7) == segment.start
    for distance in (-1e-5, segment.length + 1e-5, math.nan):
        for ask in (
            segment.point_at,
            segment.tangent_at,
            segment.curvature_at,
            segment.split_at,
            segment.parameter_at,
        ):
            with pytest.raises(GeometryError) as caught:
                ask(distance)
            assert caught.value.code == "place-outside"


def test_lines() -> None:
    line = Line(Point(0, 0), Point(30, 40))
    assert line.length == 50.0
    assert line.point_at(25.0) == Point(15, 20)
    assert line.tangent_at(10.0) == Point(0.6, 0.8)
    assert line.curvature_at(10.0) == line.curvature(0.5) == 0.0
    assert line.split_at(10.0)[1] == Line(Point(6, 8), Point(30, 40))
    assert line.reversed().start == line.end
    assert line.derivative(0.3) == Point(30, 40)
    dot = Line(Point(1, 1), Point(1, 1))
    assert dot.point_at(0.0) == Point(1, 1)
    with pytest.raises(GeometryError, match="no-direction"):
        dot.tangent_at(0.0)
