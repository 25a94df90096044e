"""Paths: making, places, splitting, areas, nearest places, data."""

import json
import math

import pytest
from fontTools.pens.areaPen import AreaPen
from shapely import LineString, Polygon
from shapely import Point as ShapelyPoint

from notchbook.errors import GeometryError
from notchbook.geometry import Box, Cubic, Line, Path, Point, Transform, assert_paths_close
from support.geometry_shapes import ARMHOLE, BODICE, CAP, COAT, DART_MOUTH

SQUARE = Path.polyline([Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)], closed=True)
BENT = Path.polyline([Point(0, 0), Point(100, 0), Point(100, 50)])


def code_of(caught: pytest.ExceptionInfo[GeometryError]) -> str:
    return caught.value.code


def judged_area(path: Path) -> float:
    """The area by the pen of fontTools."""
    pen = AreaPen(None)
    pen.moveTo((path.start.x, path.start.y))
    for segment in path.segments:
        if isinstance(segment, Line):
            pen.lineTo((segment.end.x, segment.end.y))
        else:
            pen.curveTo(*((p.x, p.y) for p in (segment.start_handle, segment.end_handle, segment.end)))
    pen.closePath()
    return float(pen.value)


def test_small_gaps_are_closed_and_wide_ones_refused() -> None:
    path = Path.of(Line(Point(0, 0), Point(10, 0)), Line(Point(10, 5e-7), Point(10, 10)))
    assert path.segments[0].end == path.segments[1].start == Point(10, 0)
    with pytest.raises(GeometryError) as caught:
        Path.of(Line(Point(0, 0), Point(10, 0)), Line(Point(10, 0.001), Point(10, 10)))
    assert code_of(caught) == "path-broken"
    assert caught.value.facts["gap"] == pytest.approx(0.001)
    with pytest.raises(GeometryError) as caught:
        Path.of()
    assert code_of(caught) == "path-empty"
    with pytest.raises(GeometryError):
        Path.polyline([Point(1, 1)])


def test_a_nearly_closed_path_is_closed() -> None:
    points = [Point(0, 0), Point(10, 0), Point(0, 10), Point(0, 5e-7)]
    assert Path.polyline(points).is_closed
    assert not BENT.is_closed
    assert not Path.line(Point(1, 1), Point(1, 1)).is_closed


def test_closing_twice_adds_nothing() -> None:
    assert Path.polyline([*SQUARE.flattened(1.0)], closed=True) == SQUARE


@pytest.mark.parametrize("path", [BODICE, COAT, DART_MOUTH, SQUARE])
def test_areas_agree_with_fonttools(path: Path) -> None:
    assert path.area() == pytest.approx(judged_area(path), abs=1e-6)
    assert path.area() > 0.0
    assert path.reversed().area() == pytest.approx(-path.area(), abs=1e-6)


def test_an_open_path_has_no_inside() -> None:
    for ask in (BENT.area, lambda: BENT.contains(Point(0, 0)), lambda: BENT.starting_at(3.0)):
        with pytest.raises(GeometryError) as caught:
            ask()
        assert code_of(caught) == "path-open"


def test_directions_at_corners_have_sides() -> None:
    assert BENT.tangent_at(100.0) == Point(1, 0)
    assert BENT.tangent_at(100.0, "after") == Point(0, 1)
    assert BENT.tangent_at(100.0 + 5e-7, "before") == Point(1, 0)
    assert BENT.tangent_at(100.0 - 5e-7, "after") == Point(0, 1)
    assert BENT.tangent_at(0.0, "before") == Point(1, 0)
    assert BENT.tangent_at(150.0, "after") == Point(0, 1)
    assert SQUARE.tangent_at(0.0, "before") == Point(0, -1)
    assert SQUARE.tangent_at(0.0, "after") == Point(1, 0)
    assert SQUARE.tangent_at(400.0, "after") == Point(1, 0)
    assert SQUARE.tangent_at(400.0, "before") == Point(0, -1)


def test_segments_without_length_never_speak_for_a_direction() -> None:
    dot = Line(Point(100, 0), Point(100, 0))
    path = Path.of(BENT.segments[0], dot, BENT.segments[1])
    assert path.tangent_at(100.0) == Point(1, 0)
    assert path.tangent_at(100.0, "after") == Point(0, 1)
    assert path.corners() == (100.0,)
    assert path.split_at(120.0)[1].length == pytest.approx(30.0)
    with pytest.raises(GeometryError, match="no-direction"):
        Path.of(dot).tangent_at(0.0)


def test_curvature_has_sides_too() -> None:
    quarter = Cubic(Point(50, 0), Point(50 + 55.22847, 0), Point(150, 100 - 55.22847), Point(150, 100))
    path = Path.of(Line(Point(0, 0), Point(50, 0)), quarter)
    assert path.curvature_at(50.0) == 0.0
    assert path.curvature_at(50.0, "after") == pytest.approx(0.01, rel=0.03)


def test_corners() -> None:
    assert SQUARE.corners() == (0.0, 100.0, 200.0, 300.0)
    assert BENT.corners() == (100.0,)
    assert BENT.corners(91.0) == ()
    assert CAP.corners() == ()


def test_splitting_at_a_joint_leaves_no_sliver() -> None:
    before, after = BENT.split_at(100.0 + 5e-7)
    assert (len(before.segments), len(after.segments)) == (1, 1)
    before, after = BENT.split_at(0.0)
    assert before.length == 0.0
    assert after == BENT
    before, after = BENT.split_at(150.0)
    assert (before, after.length) == (BENT, 0.0)


def test_between() -> None:
    part = BENT.between(90.0, 110.0)
    assert [part.start, part.end] == [Point(90, 0), Point(100, 10)]
    assert BENT.between(0.0, 150.0) == BENT
    assert BENT.between(20.0, 20.0).length == 0.0
    around = SQUARE.between(350.0, 50.0)
    assert [around.start, around.end] == [Point(0, 50), Point(50, 0)]
    assert around.length == 100.0
    with pytest.raises(GeometryError) as caught:
        BENT.between(110.0, 90.0)
    assert code_of(caught) == "between-backward"


def test_starting_elsewhere_keeps_the_outline() -> None:
    moved = BODICE.starting_at(300.0)
    assert moved.start.distance_to(BODICE.point_at(300.0)) < 1e-9
    assert moved.area() == pytest.approx(BODICE.area(), abs=1e-6)
    assert_paths_close(moved, BODICE, 1e-6)


def test_joining() -> None:
    before, after = CAP.split_at(77.0)
    assert_paths_close(before.joined(after), CAP, 1e-6)
    dot = Path.line(CAP.end, CAP.end)
    assert CAP.joined(dot) == CAP
    assert Path.line(CAP.start, CAP.start).joined(CAP) == CAP
    with pytest.raises(GeometryError, match="path-broken"):
        after.joined(before)


def test_nearest_agrees_with_a_dense_polyline() -> None:
    """Judge: shapely on a polyline within 1e-4 mm."""
    dense = LineString([(p.x, p.y) for p in BODICE.flattened(1e-4)])
    for x in range(-50, 350, 45):
        for y in range(-60, 640, 61):
            place = BODICE.nearest(Point(x, y))
            assert place.gap == pytest.approx(dense.distance(ShapelyPoint(x, y)), abs=2e-4)
            assert BODICE.point_at(place.distance_along).distance_to(place.point) < 1e-6


def test_nearest_takes_the_first_of_equals() -> None:
    assert SQUARE.nearest(Point(50, 50)).distance_along == 50.0
    assert SQUARE.nearest(Point(0, 0)).distance_along == 0.0


@pytest.mark.parametrize("path", [BODICE, COAT, DART_MOUTH])
def test_contains_agrees_with_shapely(path: Path) -> None:
    polygon = Polygon([(p.x, p.y) for p in path.flattened(1e-4)])
    box = path.bounds()
    for column in range(23):
        for row in range(23):
            point = Point(box.min_x + box.width * (column - 1) / 20, box.min_y + box.height * (row - 1) / 20)
            judged = ShapelyPoint(point.x, point.y)
            if polygon.exterior.distance(judged) > 1e-3:
                assert path.contains(point) == polygon.contains(judged), point


def test_points_on_the_outline_are_inside_also_level_with_corners() -> None:
    for place in range(0, 400, 25):
        assert SQUARE.contains(SQUARE.point_at(float(place)))
    assert not SQUARE.contains(Point(-1e-3, 0.0))
    assert not SQUARE.contains(Point(-10.0, 100.0))
    assert SQUARE.reversed().contains(Point(50, 50))


def test_flattening_stays_within_its_tolerance() -> None:
    """Judge: the distance of dense points of the curve from the polyline, by shapely."""
    for tolerance in (1.0, 0.1, 0.01):
        polyline = LineString([(p.x, p.y) for p in CAP.flattened(tolerance)])
        gaps = [
            polyline.distance(ShapelyPoint(p.x, p.y))
            for p in (CAP.point_at(CAP.length * i / 997) for i in range(998))
        ]
        assert max(gaps) <= tolerance
    assert len(CAP.flattened(1.0)) < len(CAP.flattened(0.01)) < 250
    with pytest.raises(GeometryError, match="tolerance-not-positive"):
        CAP.flattened(0.0)


def test_bounds() -> None:
    box = CAP.bounds()
    assert box.max_y == pytest.approx(140.0)
    assert box == Box(box.min_x, box.min_y, box.max_x, box.max_y)
    assert box.width == pytest.approx(340.0)


def test_transforming_a_path() -> None:
    mirror = Transform.reflection(Point(0, 0), Point(0, 1))
    assert BODICE.transformed(mirror).area() == pytest.approx(-BODICE.area())
    assert BODICE.transformed(mirror).length == pytest.approx(BODICE.length, abs=1e-6)


def test_data_survive_json() -> None:
    rows = json.loads(json.dumps(BODICE.to_data()))
    assert Path.from_data(rows) == BODICE
    assert [row[0] for row in rows] == ["M", "L", "C", "C", "L", "C", "L"]


@pytest.mark.parametrize(
    ("data", "row"),
    [
        ([["L", 0, 0]], 1),
        ([["M", 0, 0], ["M", 1, 1]], 2),
        ([["M", 0, 0], ["L", 1]], 2),
        ([["M", 0, 0], ["L", 1, "2"]], 2),
        ([["M", 0, 0], ["L", 1, True]], 2),
        ([["M", 0, 0], ["Q", 1, 2, 3, 4]], 2),
        ([["M", 0, 0], []], 2),
        ([["M", 0, 0], [1, 2, 3]], 2),
    ],
)
def test_damaged_data_are_refused(data: list[list[str | float]], row: int) -> None:
    with pytest.raises(GeometryError) as caught:
        Path.from_data(data)
    assert code_of(caught) == "path-data"
    assert caught.value.facts["row"] == row


def test_data_with_numbers_that_are_not_finite_are_refused() -> None:
    with pytest.raises(GeometryError, match="place-not-finite"):
        Path.from_data([["M", 0, 0], ["L", math.nan, 1]])
    with pytest.raises(GeometryError, match="path-empty"):
        Path.from_data([["M", 0, 0]])


def test_places_of_a_path_are_those_of_its_segments() -> None:
    path = Path.of(Line(Point(300, 350), ARMHOLE.start), ARMHOLE)
    assert path.point_at(40.0 + 60.0) == ARMHOLE.point_at(60.0)
    assert path.distances == (0.0, 40.0, 40.0 + ARMHOLE.length)
