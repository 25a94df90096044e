"""What holds for every path: splitting, turning around, moving, places, parallels."""

import json

import pytest
import shapely
from hypothesis import assume, example, given, reject, settings
from hypothesis import strategies as st
from svgpathtools import CubicBezier

from notchbook.errors import GeometryError
from notchbook.geometry import Crossing, Cubic, Path, Point, Transform, fair_curve, inflections, offset
from support.geometry_shapes import chains, cubics, drawn_curves, outlines, points
from support.offset_judge import region_errors, region_parts, stray

shares = st.floats(0.0, 1.0)
TOLERANCE_MM = 0.05


@given(chains(), shares)
def test_split_and_joined_again_is_the_same(path: Path, share: float) -> None:
    place = path.length * share
    before, after = path.split_at(place)
    assert before.length == pytest.approx(place, abs=5e-6)
    assert before.length + after.length == pytest.approx(path.length, abs=5e-6)
    whole = before.joined(after)
    for index in range(11):
        distance = min(whole.length, path.length) * index / 10.0
        assert whole.point_at(distance).distance_to(path.point_at(distance)) < 1e-5


@given(chains())
def test_turned_around_twice_is_the_same(path: Path) -> None:
    assert path.reversed().reversed() == path
    assert path.reversed().length == pytest.approx(path.length, abs=1e-6)


@given(chains(), shares)
def test_turned_around_counts_from_the_other_end(path: Path, share: float) -> None:
    place = path.length * share
    turned = path.reversed()
    assert turned.point_at(max(0.0, turned.length - place)).distance_to(path.point_at(place)) < 1e-5


@given(outlines(), st.floats(-180.0, 180.0), points, points)
def test_rigid_motions_keep_length_and_area(path: Path, degrees: float, about: Point, move: Point) -> None:
    motion = Transform.rotation(degrees, about).then(Transform.translation(move.x, move.y))
    moved = path.transformed(motion)
    assert moved.length == pytest.approx(path.length, abs=1e-6)
    assert moved.area() == pytest.approx(path.area(), rel=1e-9)
    back = moved.transformed(motion.inverse())
    assert back.start.distance_to(path.start) < 1e-8


@given(chains(), shares)
def test_the_nearest_place_of_a_place_is_no_farther(path: Path, share: float) -> None:
    """The path may cross itself: the place found may be another one, at the same point."""
    point = path.point_at(path.length * share)
    found = path.nearest(point)
    assert found.gap < 1e-6
    assert path.point_at(found.distance_along).distance_to(found.point) < 1e-5


@given(cubics, points)
def test_no_sample_is_nearer_than_the_nearest(cubic: Cubic, point: Point) -> None:
    gap = Path.of(cubic).nearest(point).gap
    assert gap <= min(cubic.at(i / 64.0).distance_to(point) for i in range(65)) + 1e-9


@given(cubics)
@settings(max_examples=25)
def test_lengths_agree_with_svgpathtools(cubic: Cubic) -> None:
    judge = CubicBezier(
        *(complex(p.x, p.y) for p in (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end))
    )
    assert cubic.length == pytest.approx(judge.length(error=1e-10), rel=1e-7, abs=1e-5)


@given(chains())
def test_data_survive_json(path: Path) -> None:
    assert Path.from_data(json.loads(json.dumps(path.to_data()))) == path


def crossings_of(path: Path, other: Path) -> tuple[Crossing, ...]:
    """The crossings; curves that lie within microns of each other for long may be refused instead."""
    try:
        return path.intersections(other)
    except GeometryError as refused:
        assert refused.code == "crossings-unresolved"
        close = sum(other.nearest(path.point_at(path.length * i / 50)).gap < 0.05 for i in range(51))
        assert close > 10
        reject()


@given(chains(), chains())
@settings(max_examples=30)
def test_crossings_lie_on_both_paths(path: Path, other: Path) -> None:
    for crossing in crossings_of(path, other):
        assert path.point_at(crossing.at_self).distance_to(crossing.point) < 5e-6
        assert other.point_at(crossing.at_other).distance_to(crossing.point) < 5e-6


@given(chains(), chains())
@settings(max_examples=30)
def test_as_many_crossings_as_dense_polylines_have(path: Path, other: Path) -> None:
    """Each clear crossing of two polylines within 0.01 mm is found. Judge: shapely."""
    lines = [shapely.LineString([(p.x, p.y) for p in item.flattened(0.01)]) for item in (path, other)]
    found = [crossing.point for crossing in crossings_of(path, other)]
    shared = lines[0].intersection(lines[1])
    for place in shapely.get_parts(shared):
        if place.geom_type == "Point":
            point = Point(place.x, place.y)
            tangents = [item.tangent_at(item.nearest(point).distance_along) for item in (path, other)]
            if abs(tangents[0].cross(tangents[1])) > 0.2:
                assert min((point.distance_to(spot) for spot in found), default=99.0) < 0.2


@given(outlines(), st.sampled_from([-40.0, -15.0, -10.0, -6.0, 6.0, 10.0, 15.0, 30.0]))
@settings(max_examples=40)
def test_parallels_of_outlines(path: Path, distance: float) -> None:
    assume(path.self_crossings() == ())
    try:
        made = offset(path, distance, "round")
    except GeometryError as refused:
        assert refused.code in ("offset-in-pieces", "offset-vanishes")
        assert any(region_parts(path, distance + nudge) != 1 for nudge in (-2.0, 0.0, 2.0))
        return
    assert stray(path, made, distance) < TOLERANCE_MM
    assert region_errors(path, made, distance, TOLERANCE_MM) == []
    assert made.self_crossings() == ()


COMES_TO_REST = Cubic(
    Point(243.0, 3.0),
    Point(182.24823299921397, 2.2499781851755123),
    Point(5.717660533759316e-12, 1.704272636655355e-13),
    Point(0.0, 0.0),
)
RESTS_AT_A_POINT = Cubic(
    Point(485.0, 3.25),
    Point(368.9184987014302, 2.471331518637057),
    Point(0.5000000000023199, 5.6064102809820494e-14),
    Point(0.5, 0.0),
)
"""Curves whose last handle has all but no length: drafts make them where a direction is that of the chord."""


@example(curve=COMES_TO_REST, distance=1.0)
@example(curve=RESTS_AT_A_POINT, distance=1.0)
@example(curve=COMES_TO_REST.reversed(), distance=-19.0)
@given(drawn_curves(), st.floats(-20.0, 20.0))
@settings(max_examples=60)
def test_parallels_of_drawn_curves(curve: Cubic, distance: float) -> None:
    assume(abs(distance) > 0.5)
    path = Path.of(curve)
    try:
        made = offset(path, distance)
    except GeometryError as refused:
        assert refused.code in ("offset-in-pieces", "offset-vanishes")
        assume(False)
    assert stray(path, made, distance) < TOLERANCE_MM


@given(drawn_curves(one_sided=True))
def test_drawn_curves_to_one_side_have_no_inflection(curve: Cubic) -> None:
    assert inflections(Path.of(curve)) == ()
    assert inflections(Path.of(curve.reversed())) == ()


@given(st.lists(st.tuples(st.floats(20.0, 120.0), st.floats(-35.0, 35.0)), min_size=2, max_size=6))
def test_fair_curves_pass_their_points_and_hide_nothing(steps: list[tuple[float, float]]) -> None:
    marks = [Point(0.0, 0.0)]
    for reach, angle in steps:
        marks.append(marks[-1] + Point(reach, 0.0).rotated(angle))
    curve = fair_curve(marks)
    for place, mark in zip(curve.point_places, marks, strict=True):
        assert curve.path.point_at(place).distance_to(mark) < 1e-6
    if curve.is_fair:
        assert all(
            abs(curve.path.curvature_at(place, "before") - curve.path.curvature_at(place, "after")) < 1e-3
            for place in curve.point_places[1:-1]
        )
