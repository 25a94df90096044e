"""Points, boxes and transforms."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from notchbook.errors import GeometryError
from notchbook.geometry import Box, Point, Transform, direction


def test_vectors_add_scale_and_turn() -> None:
    a, b = Point(3.0, 4.0), Point(-1.0, 2.0)
    assert a + b == Point(2.0, 6.0)
    assert a - b == Point(4.0, 2.0)
    assert a * 2.0 == 2.0 * a == Point(6.0, 8.0)
    assert a / 2.0 == Point(1.5, 2.0)
    assert -a == Point(-3.0, -4.0)
    assert a.norm() == 5.0
    assert a.unit() == Point(0.6, 0.8)
    assert a.dot(b) == 5.0
    assert a.cross(b) == 10.0
    assert a.lerp(b, 0.25) == Point(2.0, 3.5)
    assert a.distance_to(b) == math.hypot(4.0, 2.0)


def test_left_is_counter_clockwise() -> None:
    assert Point(1.0, 0.0).perpendicular() == Point(0.0, 1.0)
    assert Point(1.0, 0.0).cross(Point(0.0, 1.0)) > 0.0


@pytest.mark.parametrize("degrees", [0, 90, 180, 270, -90, 360, 450, -180])
def test_right_angles_are_exact(degrees: float) -> None:
    unit = direction(degrees)
    assert {abs(unit.x), abs(unit.y)} == {0.0, 1.0}
    assert unit == Point(round(math.cos(math.radians(degrees))), round(math.sin(math.radians(degrees))))


@pytest.mark.parametrize(
    ("degrees", "expected"), [(180, 180), (-180, 180), (190, -170), (30, 30), (-30, -30)]
)
def test_directions_lie_above_minus_180(degrees: float, expected: float) -> None:
    assert direction(degrees).direction() == pytest.approx(expected, abs=1e-12)


def test_minus_zero_points_left_at_180() -> None:
    assert Point(-1.0, -0.0).direction() == 180.0


def test_rotation_about_a_point() -> None:
    assert Point(3.0, 1.0).rotated(90.0, Point(1.0, 1.0)) == Point(1.0, 3.0)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_numbers_that_are_not_finite_are_refused(value: float) -> None:
    makers: list[Callable[[], Point]] = [
        lambda: Point(value, 0.0),
        lambda: Point(0.0, value),
        lambda: direction(value),
    ]
    for make in makers:
        with pytest.raises(GeometryError) as caught:
            make()
        assert caught.value.code == "place-not-finite"
        assert "finite" in str(caught.value)


def test_a_zero_vector_has_no_direction() -> None:
    for ask in (Point(0.0, 0.0).unit, Point(0.0, 0.0).direction):
        with pytest.raises(GeometryError) as caught:
            ask()
        assert caught.value.code == "no-direction"


def test_division_by_zero_is_refused() -> None:
    with pytest.raises(GeometryError) as caught:
        Point(1.0, 1.0) / 0.0
    assert caught.value.code == "division-by-zero"


def test_boxes() -> None:
    box = Box.around([Point(0, 5), Point(10, -5)])
    assert (box.width, box.height, box.center) == (10, 10, Point(5, 0))
    other = Box(20, 0, 30, 1)
    assert box.union(other) == Box(0, -5, 30, 5)
    assert not box.is_near(other, 9.9)
    assert box.is_near(other, 10.0)
    assert box.holds(Point(10, 0)) and box.holds(Point(3, -5))
    outside = (Point(10.1, 0), Point(-0.1, 0), Point(3, 5.1), Point(3, -5.1))
    assert not any(box.holds(point) for point in outside)
    assert box.gap_to(Point(13, 9)) == 5.0
    assert box.gap_to(Point(3, 3)) == 0.0
    with pytest.raises(GeometryError):
        Box.around([])


def _matrix(transform: Transform) -> np.ndarray:
    return np.array(
        [[transform.a, transform.c, transform.e], [transform.b, transform.d, transform.f], [0.0, 0.0, 1.0]]
    )


def test_transforms_compose_as_matrices_do() -> None:
    """Judge: matrix products and inverses of numpy."""
    first = Transform.rotation(37.0, Point(5, 6)).then(Transform.translation(3, -4))
    second = Transform.reflection(Point(1, 2), Point(9, 3))
    assert np.allclose(_matrix(first.then(second)), _matrix(second) @ _matrix(first), atol=1e-12)
    assert np.allclose(_matrix(first.inverse()), np.linalg.inv(_matrix(first)), atol=1e-12)


def test_kinds_of_transforms() -> None:
    point = Point(4.0, 1.0)
    assert Transform.identity().apply(point) == point
    assert Transform.translation(1, 2).apply(point) == Point(5, 3)
    assert Transform.rotation(90.0, Point(4, 0)).apply(point) == Point(3, 0)
    mirror = Transform.reflection(Point(0, 0), Point(0, 5))
    assert mirror.apply(point) == Point(-4, 1)
    assert mirror.is_reflection
    assert not Transform.rotation(20).is_reflection


def test_carrying_lays_one_segment_on_another() -> None:
    move = Transform.carrying(Point(1, 1), Point(1, 5), Point(10, 0), Point(20, 0))
    assert move.apply(Point(1, 1)) == Point(10, 0)
    assert move.apply(Point(1, 5)).distance_to(Point(14, 0)) < 1e-12
    assert move.apply(Point(0, 1)).distance_to(Point(10, 1)) < 1e-12
    assert not move.is_reflection


def test_transforms_that_cannot_be_made() -> None:
    with pytest.raises(GeometryError, match="no-direction"):
        Transform.reflection(Point(1, 1), Point(1, 1))
    with pytest.raises(GeometryError, match="no-direction"):
        Transform.carrying(Point(1, 1), Point(1, 1), Point(0, 0), Point(1, 0))
    with pytest.raises(GeometryError, match="transform-flattens"):
        Transform(1, 0, 0, 0, 0, 0).inverse()
