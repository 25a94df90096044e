"""Fair curves, the spirals beneath them, and curves from two directions."""

import math

import numpy as np
import pytest
from scipy.special import fresnel

from notchbook.errors import GeometryError
from notchbook.geometry import (
    FairCurve,
    Path,
    Point,
    curvature_extrema,
    curvature_profile,
    curve_between,
    direction,
    fair_curve,
    inflections,
)
from notchbook.geometry.spiral import spiral_between
from notchbook.geometry.velocity import velocity


def kinds(curve: FairCurve) -> list[str]:
    return [violation.kind for violation in curve.violations]


def assert_through(curve: FairCurve, points: list[Point]) -> None:
    """The curve passes its points in order, without corners."""
    for place, point in zip(curve.point_places, points, strict=True):
        assert curve.path.point_at(place).distance_to(point) < 1e-6
    assert curve.path.corners(0.05) == ()


def test_points_of_a_circle_give_the_circle() -> None:
    points = [direction(angle) * 150.0 for angle in (0, 25, 70, 90, 140)]
    curve = fair_curve(points)
    assert curve.is_fair
    assert_through(curve, points)
    assert max(abs(point.norm() - 150.0) for point in curve.path.flattened(0.01)) < 0.005
    assert curve.path.length == pytest.approx(150.0 * math.radians(140), abs=0.01)
    assert all(s.curvature == pytest.approx(1 / 150, rel=0.01) for s in curvature_profile(curve.path, 10.0))


def test_points_of_a_line_give_a_line() -> None:
    curve = fair_curve([Point(0, 0), Point(40, 30), Point(80, 60)])
    assert curve.is_fair
    assert curve.path.length == pytest.approx(100.0)
    assert inflections(curve.path) == ()


def test_points_of_a_euler_spiral_give_the_spiral() -> None:
    """Judge: the Fresnel integrals of scipy, scaled to 400 mm."""

    def spot(share: float) -> Point:
        sine, cosine = fresnel(share)
        return Point(400.0 * float(cosine), 400.0 * float(sine))

    points = [spot(share) for share in (0.0, 0.3, 0.55, 0.8, 1.0)]
    curve = fair_curve(points, 0.0, math.degrees(math.pi / 2.0))
    assert curve.is_fair
    assert_through(curve, points)
    gaps = [curve.path.nearest(spot(share)).gap for share in np.linspace(0.0, 1.0, 101)]
    assert max(gaps) < 0.01
    assert curve.path.length == pytest.approx(400.0, abs=0.02)
    profile = curvature_profile(curve.path, 20.0)
    for sample in profile:
        assert sample.curvature == pytest.approx(math.pi * sample.distance / 400.0**2, abs=3e-4)


def test_one_spiral_stands_on_its_ends() -> None:
    """Judge: a sum of many small steps."""
    spiral = spiral_between(Point(10, 20), math.radians(-40), Point(110, 60), math.radians(65))
    steps = 20_000
    here = Point(10, 20)
    for index in range(steps):
        here = here + spiral.direction_at((index + 0.5) / steps) * (spiral.length / steps)
    assert here.distance_to(Point(110, 60)) < 1e-4
    assert spiral.point_at(1.0).distance_to(Point(110, 60)) < 1e-9
    assert spiral.curvature_at(0.0) != pytest.approx(spiral.curvature_at(1.0))


@pytest.mark.parametrize(
    "points",
    [
        pytest.param([Point(172, 0), Point(172, 100), Point(160, 205)], id="hip"),
        pytest.param([Point(0, 228), Point(-8, 90), Point(-62, 0)], id="crotch"),
        pytest.param([Point(260, 350), Point(215, 400), Point(198, 545)], id="armhole"),
    ],
)
def test_curves_of_the_trade_are_fair(points: list[Point]) -> None:
    curve = fair_curve(points)
    assert kinds(curve) == []
    assert_through(curve, points)
    assert inflections(curve.path) == ()
    greatest = max(abs(sample.curvature) for sample in curvature_profile(curve.path, 2.0))
    assert curvature_extrema(curve.path, 0.02 * greatest) == ()


def test_curvature_agrees_on_both_sides_of_each_point() -> None:
    curve = fair_curve([Point(0, 0), Point(60, 25), Point(100, 80), Point(110, 150)], 5.0, 92.0)
    for place in curve.point_places[1:-1]:
        before, after = curve.path.curvature_at(place, "before"), curve.path.curvature_at(place, "after")
        assert before == pytest.approx(after, rel=0.02)


def test_a_wanted_inflection_is_no_violation() -> None:
    ends = [Point(0, 0), Point(100, 100)]
    assert fair_curve(ends, 0.0, 0.0, inflections_allowed=1).is_fair
    refused = fair_curve(ends, 0.0, 0.0)
    assert kinds(refused) == ["inflection"]
    assert refused.violations[0].place_mm == pytest.approx(refused.path.length / 2.0, abs=1e-6)
    assert refused.violations[0].amount > 45.0


def test_an_inflection_is_reported_where_it_is() -> None:
    curve = fair_curve([Point(0, 0), Point(50, 12), Point(100, 0), Point(150, 9)])
    reported = [item.place_mm for item in curve.violations if item.kind == "inflection"]
    assert reported == pytest.approx(list(inflections(curve.path)), abs=0.5)
    assert len(reported) == 1


def test_a_bump_is_reported_at_its_point() -> None:
    """One mark of a hip curve stands 3 mm out."""
    points = [Point(0, 0), Point(4, 60), Point(16, 120), Point(30, 180), Point(60, 240)]
    bump = [*points[:2], points[2] + Point(-6, 0), *points[3:]]
    curve = fair_curve(bump)
    extrema = [item for item in curve.violations if item.kind == "curvature-extremum"]
    assert any(item.place_mm == pytest.approx(curve.point_places[2]) for item in extrema)
    assert all(item.amount > 0.0 for item in extrema)


def test_a_given_direction_that_breaks_the_curvature_is_reported() -> None:
    curve = fair_curve([Point(0, 0), Point(0, 200), Point(-20, 300)], 90.0, inner_directions={1: 90.0})
    assert kinds(curve) == ["curvature-jump"]
    assert curve.violations[0].place_mm == pytest.approx(200.0)
    assert curve.path.tangent_at(200.0, "after").direction() == pytest.approx(90.0)


@pytest.mark.parametrize("points", [[], [Point(0, 0)], [Point(0, 0), Point(0, 0)]])
def test_too_few_points_are_refused(points: list[Point]) -> None:
    with pytest.raises(GeometryError, match="curve-needs-points"):
        fair_curve(points)


def test_directions_for_points_that_are_not_inside_are_refused() -> None:
    with pytest.raises(GeometryError, match="curve-needs-points"):
        fair_curve([Point(0, 0), Point(1, 0)], inner_directions={1: 3.0})


def test_a_curve_that_must_run_backward_is_refused() -> None:
    with pytest.raises(GeometryError, match="curve-not-fair"):
        fair_curve([Point(0, 0), Point(100, 0)], 180.0, 0.0)


def test_the_velocity_of_an_arc() -> None:
    """The handle of a quarter circle is 4/3 (sqrt 2 - 1) of its radius, for a chord of sqrt 2."""
    expected = 4.0 / 3.0 * (math.sqrt(2.0) - 1.0) / math.sqrt(2.0)
    assert velocity(math.pi / 4.0, math.pi / 4.0) == pytest.approx(expected, rel=1e-9)
    assert velocity(0.0, 0.0) == pytest.approx(1.0 / 3.0)


def test_a_quarter_circle_from_two_directions() -> None:
    quarter = curve_between(Point(100, 0), 90.0, Point(0, 100), 180.0)
    for index in range(101):
        assert quarter.at(index / 100.0).norm() == pytest.approx(100.0, abs=0.03)


def test_pulls_lengthen_the_handles() -> None:
    plain = curve_between(Point(0, 0), 0.0, Point(100, 100), 90.0)
    pulled = curve_between(Point(0, 0), 0.0, Point(100, 100), 90.0, start_pull=1.2)
    assert (pulled.start_handle.x, pulled.end_handle) == (plain.start_handle.x * 1.2, plain.end_handle)


def test_convex_curves_stay_convex_and_others_may_bend_back() -> None:
    arguments = (Point(0, 0), 10.0, Point(100, 100), 88.0, 3.0, 3.0)
    held = curve_between(*arguments)
    assert min(held.curvature(i / 100) for i in range(1, 100)) > 0.0
    free = curve_between(*arguments, keep_convex=False)
    assert free.start_handle.norm() > held.start_handle.norm()
    tip_share = held.start_handle.norm() / math.dist((0, 0), (82.0, 14.5))
    assert tip_share < 1.0


def test_handles_take_at_most_eight_tenths_of_the_triangle() -> None:
    held = curve_between(Point(0, 0), 0.0, Point(100, 50), 90.0, 9.0, 9.0)
    assert held.start_handle == Point(80, 0)
    assert held.end_handle == Point(100, 10)


def test_an_s_is_not_cut() -> None:
    held, free = (
        curve_between(Point(0, 0), 40.0, Point(100, 0), 40.0, keep_convex=convex) for convex in (True, False)
    )
    assert held == free
    assert len(inflections(Path.of(held))) == 1


def test_curves_that_cannot_be_made() -> None:
    with pytest.raises(GeometryError, match="points-coincide"):
        curve_between(Point(1, 1), 0.0, Point(1, 1), 90.0)
    for pull in (0.0, -1.0, math.inf, math.nan):
        with pytest.raises(GeometryError, match="pull-not-positive"):
            curve_between(Point(0, 0), 0.0, Point(1, 1), 90.0, pull)
    with pytest.raises(GeometryError, match="place-not-finite"):
        curve_between(Point(0, 0), math.nan, Point(1, 1), 90.0)
