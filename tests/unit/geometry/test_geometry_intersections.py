"""Crossings of paths, and of a path with itself."""

import math

import pytest
from svgpathtools import CubicBezier

from notchbook.errors import GeometryError
from notchbook.geometry import Crossing, Cubic, Line, Path, Point, Segment, curve_between
from support.geometry_shapes import ARMHOLE, BODICE, CAP, DEGENERATE

HILL = Path.of(Cubic(Point(0, 0), Point(30, 120), Point(70, 120), Point(100, 0)))
WAVE = Path.of(Cubic(Point(0, 0), Point(50, 300), Point(50, -300), Point(100, 0)))


def judge_of(cubic: Segment) -> CubicBezier:
    assert isinstance(cubic, Cubic)
    points = (cubic.start, cubic.start_handle, cubic.end_handle, cubic.end)
    return CubicBezier(*(complex(point.x, point.y) for point in points))


def assert_true(path: Path, other: Path, crossings: tuple[Crossing, ...]) -> None:
    """Each crossing lies on both paths, and they come in order."""
    for crossing in crossings:
        assert path.point_at(crossing.at_self).distance_to(crossing.point) < 2e-6
        assert other.point_at(crossing.at_other).distance_to(crossing.point) < 2e-6
    assert [c.at_self for c in crossings] == sorted(c.at_self for c in crossings)


def test_lines_cross() -> None:
    path, other = Path.line(Point(0, 0), Point(100, 100)), Path.line(Point(0, 100), Point(100, 0))
    (found,) = path.intersections(other)
    assert found.point == Point(50, 50)
    assert found.at_self == pytest.approx(math.hypot(50, 50))
    assert path.intersections(Path.line(Point(0, 100), Point(40, 60))) == ()


def test_touching_ends_meet_once() -> None:
    path = Path.line(Point(0, 0), Point(100, 0))
    assert len(path.intersections(Path.line(Point(100, 0), Point(150, 80)))) == 1
    assert len(path.intersections(Path.line(Point(40, 0), Point(50, 80)))) == 1
    assert len(path.intersections(Path.line(Point(40, 8e-7), Point(50, 80)))) == 1
    assert path.intersections(Path.line(Point(40, 1e-4), Point(50, 80))) == ()
    corner = Path.polyline([Point(30, 30), Point(50, 0), Point(70, 30)])
    assert len(path.intersections(corner)) == 1


def test_lines_along_each_other_meet_at_the_ends_of_the_common_stretch() -> None:
    path, other = Path.line(Point(0, 0), Point(100, 0)), Path.line(Point(150, 0), Point(60, 0))
    found = path.intersections(other)
    assert [(c.at_self, c.at_other) for c in found] == [(60.0, 90.0), (100.0, 50.0)]


def test_a_curve_along_itself_meets_at_the_ends_of_the_common_stretch() -> None:
    whole = Path.of(ARMHOLE)
    part = whole.between(50.0, 120.0)
    found = whole.intersections(part)
    assert [c.at_self for c in found] == pytest.approx([50.0, 120.0], abs=1e-5)
    same = whole.intersections(whole.reversed())
    assert [c.at_self for c in same] == pytest.approx([0.0, whole.length], abs=1e-5)


def test_a_curve_and_a_line_that_touch_at_the_top() -> None:
    top = HILL.bounds().max_y
    (found,) = HILL.intersections(Path.line(Point(-10, top), Point(110, top)))
    assert found.point.distance_to(Point(50, top)) < 2e-3
    assert len(HILL.intersections(Path.line(Point(-10, top - 0.01), Point(110, top - 0.01)))) == 2
    assert HILL.intersections(Path.line(Point(-10, top + 0.01), Point(110, top + 0.01))) == ()


def test_curves_that_touch() -> None:
    """Two hills, one upside down on top of the other: they touch at the middle alone."""
    top = HILL.bounds().max_y
    above = Path.of(
        Cubic(Point(0, 2 * top), Point(30, 2 * top - 120), Point(70, 2 * top - 120), Point(100, 2 * top))
    )
    (found,) = HILL.intersections(above)
    assert found.point.distance_to(Point(50, top)) < 0.02
    assert_true(HILL, above, (found,))


def test_nine_crossings() -> None:
    """Two cubics meet in nine places at most (Bezout); two waves laid crosswise have all nine."""
    other = Path.of(Cubic(Point(200, -50), Point(-100, 0), Point(200, 0), Point(-100, 50)))
    wide = Path.of(Cubic(Point(0, -200), Point(20, 500), Point(80, -500), Point(100, 200)))
    found = wide.intersections(other)
    assert len(found) == len(judge_of(wide.segments[0]).intersect(judge_of(other.segments[0])))
    assert_true(wide, other, found)


@pytest.mark.parametrize(
    "other", [WAVE, HILL.between(10.0, 200.0), Path.of(ARMHOLE), Path.of(DEGENERATE["cusp"])]
)
@pytest.mark.parametrize("shift", [Point(0, 20), Point(13, 7), Point(-20, 41)])
def test_crossings_agree_with_svgpathtools(other: Path, shift: Point) -> None:
    path = Path.of(Cubic(Point(-30, 10), Point(40, 150), Point(60, -60), Point(140, 70)))
    moved = Path.from_data(
        [
            [row[0], *(float(v) + (shift.x, shift.y)[i % 2] for i, v in enumerate(row[1:]))]
            for row in other.to_data()
        ]
    )
    found = path.intersections(moved)
    judged = judge_of(path.segments[0]).intersect(judge_of(moved.segments[0]), tol=1e-10)
    judged_points = {
        complex(round(p.real, 3), round(p.imag, 3)) for p in (path_point(path, t) for t, _ in judged)
    }
    assert len(found) == len(judged_points)
    assert_true(path, moved, found)


def path_point(path: Path, t: float) -> complex:
    return complex(judge_of(path.segments[0]).point(t))


def test_crossings_are_symmetric() -> None:
    found, back = CAP.intersections(WAVE), WAVE.intersections(CAP)
    assert sorted((c.at_other, c.at_self) for c in back) == pytest.approx(
        sorted((c.at_self, c.at_other) for c in found), abs=1e-5
    )


def test_an_outline_does_not_meet_itself() -> None:
    assert BODICE.self_crossings() == ()
    assert CAP.self_crossings() == ()


def test_a_figure_of_eight_meets_itself() -> None:
    eight = Path.polyline([Point(0, 0), Point(100, 100), Point(100, 0), Point(0, 100)], closed=True)
    (found,) = eight.self_crossings()
    assert found.point == Point(50, 50)
    assert found.at_self < found.at_other


def test_a_loop_meets_itself_where_it_should() -> None:
    """The loop is symmetric about x = 50."""
    path = Path.of(DEGENERATE["loop"])
    (found,) = path.self_crossings()
    assert found.point.x == pytest.approx(50.0)
    assert path.point_at(found.at_self).distance_to(path.point_at(found.at_other)) < 1e-6
    assert Path.of(DEGENERATE["near cusp"]).self_crossings() == ()
    assert Path.of(DEGENERATE["cusp"]).self_crossings() == ()


def test_a_path_that_goes_back_on_itself_is_found() -> None:
    back = Path.polyline([Point(0, 0), Point(100, 0), Point(40, 0)])
    assert [c.point for c in back.self_crossings()] == [Point(40, 0)]


def test_neighbors_that_cross_again_are_found() -> None:
    bow = curve_between(Point(100, 0), 60.0, Point(50, -20), 250.0, keep_convex=False)
    path = Path.of(Line(Point(0, 0), Point(100, 0)), bow)
    (found,) = path.self_crossings()
    assert found.at_self < 100.0 < found.at_other


def test_hopeless_curves_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """The budget is lowered: no pair of curves is known that uses up the real one."""
    monkeypatch.setattr("notchbook.geometry.intersect_cubics._BUDGET", 3)
    with pytest.raises(GeometryError, match="crossings-unresolved"):
        HILL.intersections(WAVE)
