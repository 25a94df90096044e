"""Curvature profiles, inflections and extrema of paths."""

import math
from itertools import pairwise

import pytest

from notchbook.errors import GeometryError
from notchbook.geometry import (
    Cubic,
    Line,
    Path,
    Point,
    curvature_extrema,
    curvature_profile,
    curve_between,
    inflections,
)
from support.geometry_shapes import ARMHOLE, CAP, DEGENERATE, HIP

S_CURVE = Cubic(Point(0, 0), Point(60, 0), Point(40, 100), Point(100, 100))


def test_profiles_run_from_end_to_end() -> None:
    profile = curvature_profile(CAP, 7.0)
    assert (profile[0].distance, profile[-1].distance) == (0.0, CAP.length)
    steps = [b.distance - a.distance for a, b in pairwise(profile)]
    assert max(steps) <= 7.0 + 1e-9
    with pytest.raises(GeometryError, match="tolerance-not-positive"):
        curvature_profile(CAP, 0.0)


def test_the_turn_is_the_integral_of_the_curvature() -> None:
    """Plane geometry: curvature summed over the length is the change of direction."""
    path = Path.of(HIP)
    profile = curvature_profile(path, 0.05)
    step = path.length / (len(profile) - 1)
    turn = sum((a.curvature + b.curvature) / 2.0 * step for a, b in pairwise(profile))
    expected = path.tangent_at(path.length).direction() - path.tangent_at(0.0).direction()
    assert math.degrees(turn) == pytest.approx(expected, abs=1e-4)


def test_a_symmetric_s_turns_over_in_its_middle() -> None:
    path = Path.of(S_CURVE)
    assert inflections(path) == pytest.approx([path.length / 2.0], abs=1e-6)


def test_curves_to_one_side_have_none() -> None:
    assert inflections(Path.of(ARMHOLE)) == ()
    assert inflections(Path.line(Point(0, 0), Point(3, 3))) == ()
    assert len(inflections(CAP)) == 2


def test_an_inflection_at_a_joint_or_a_straight_stretch_counts_once() -> None:
    left = curve_between(Point(0, 0), -30.0, Point(100, 0), 30.0)
    right = curve_between(Point(100, 0), 30.0, Point(200, 0), -30.0)
    assert inflections(Path.of(left, right)) == pytest.approx([left.length])
    far = Point(100, 0) + Point(50, 0).rotated(30.0)
    bridge = Line(Point(100, 0), far)
    later = curve_between(far, 30.0, far + Point(100, 0), -30.0)
    assert inflections(Path.of(left, bridge, later)) == pytest.approx([left.length])


def test_extrema_of_a_symmetric_bow() -> None:
    bow = Path.of(Cubic(Point(0, 0), Point(30, 60), Point(70, 60), Point(100, 0)))
    assert curvature_extrema(bow) == pytest.approx([bow.length / 2.0], abs=1e-6)
    densest = min(curvature_profile(bow, 0.5), key=lambda sample: sample.curvature)
    assert densest.distance == pytest.approx(bow.length / 2.0, abs=0.5)


def test_extrema_agree_with_a_dense_profile() -> None:
    path = CAP
    profile = curvature_profile(path, 0.05)
    seen = [
        b.distance
        for a, b, c in zip(profile, profile[1:], profile[2:], strict=False)
        if (b.curvature - a.curvature) * (c.curvature - b.curvature) < 0.0
    ]
    found = curvature_extrema(path)
    assert len(found) == len(seen)
    assert found == pytest.approx(seen, abs=0.2)


def test_small_sways_are_passed_over_when_asked() -> None:
    quarter = curve_between(Point(100, 0), 90.0, Point(0, 100), 180.0)
    path = Path.of(quarter)
    assert len(curvature_extrema(path)) >= 1
    assert curvature_extrema(path, 0.05 * 0.01) == ()


def test_infinite_curvature_is_no_trap() -> None:
    for cubic in DEGENERATE.values():
        path = Path.of(cubic)
        inflections(path)
        assert all(0.0 <= place <= path.length for place in curvature_extrema(path))
