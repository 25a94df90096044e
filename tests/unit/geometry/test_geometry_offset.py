"""Parallels: known squares, judged distances, corners, loops, refusals."""

import math

import pytest
import shapely

from notchbook.errors import GeometryError
from notchbook.geometry import Cubic, Join, Line, Path, Point, assert_paths_close, curve_between, offset
from support.geometry_shapes import ARMHOLE, BODICE, CAP, COAT, CROTCH, DART_MOUTH, DEGENERATE, HIP
from support.offset_judge import region_errors, stray

SQUARE = Path.polyline([Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)], closed=True)
TOLERANCE_MM = 0.05
"""The promise of the offset."""

OUTLINES = {"square": SQUARE, "bodice": BODICE, "coat": COAT, "dart": DART_MOUTH}


def test_a_mitred_square() -> None:
    """Cut line beside a 100 mm square at 10 mm: 120 mm square, 14 400 mm² (plane geometry)."""
    grown = offset(SQUARE, -10.0)
    assert (grown.bounds().width, grown.bounds().height) == (120.0, 120.0)
    assert grown.area() == pytest.approx(14_400.0, abs=1e-9)
    assert len(grown.segments) == 4
    assert grown.start == Point(-10.0, -10.0)


def test_a_rounded_square() -> None:
    """Steiner's formula: area + perimeter x width + pi x width²."""
    grown = offset(SQUARE, -10.0, "round")
    assert grown.area() == pytest.approx(14_000.0 + 100.0 * math.pi, abs=0.02)


def test_a_square_with_corners_cut_off() -> None:
    """Each corner loses the triangle beyond 10 mm from the corner along its diagonal."""
    grown = offset(SQUARE, -10.0, "square")
    cut = 10.0 * (math.sqrt(2.0) - 1.0)
    assert grown.area() == pytest.approx(14_400.0 - 4.0 * cut * cut, abs=1e-9)
    assert len(grown.segments) == 8


def test_an_inner_square() -> None:
    assert offset(SQUARE, 10.0).area() == pytest.approx(6_400.0, abs=1e-9)
    assert offset(SQUARE.reversed(), -10.0).area() == pytest.approx(-6_400.0, abs=1e-9)


@pytest.mark.parametrize("name", OUTLINES)
@pytest.mark.parametrize("distance", [-50.0, -15.0, -6.0, 6.0, 15.0, 40.0])
def test_rounded_parallels_of_outlines_keep_their_distance(name: str, distance: float) -> None:
    """Judge: shapely's distances from a dense polyline, of points of the parallel and of a grid."""
    path = OUTLINES[name]
    made = offset(path, distance, "round")
    assert stray(path, made, distance) < TOLERANCE_MM
    assert region_errors(path, made, distance, TOLERANCE_MM) == []
    assert made.self_crossings() == ()


@pytest.mark.parametrize("name", OUTLINES)
@pytest.mark.parametrize("distance", [-15.0, 10.0])
def test_mitred_parallels_agree_with_a_dense_buffer(name: str, distance: float) -> None:
    """Judge: shapely's mitred buffer of a polyline within 2e-5 mm.

    A corner between curves is a corner between short chords there, which moves the tips a little.
    """
    path = OUTLINES[name]
    dense = shapely.Polygon([(p.x, p.y) for p in path.flattened(2e-5)])
    judged = dense.buffer(-distance, join_style="mitre", mitre_limit=2.5)
    made = offset(path, distance)
    ours = shapely.LinearRing([(p.x, p.y) for p in made.flattened(1e-3)])
    assert shapely.hausdorff_distance(ours, judged.exterior) < 0.25
    assert made.area() == pytest.approx(judged.area, rel=2e-5)


@pytest.mark.parametrize("curve", [HIP, ARMHOLE, CROTCH, *CAP.segments])
@pytest.mark.parametrize("distance", [-25.0, -10.0, 10.0, 15.0])
def test_parallels_of_single_curves(curve: Cubic, distance: float) -> None:
    path = Path.of(curve)
    made = offset(path, distance)
    assert stray(path, made, distance) < TOLERANCE_MM
    assert made.start.distance_to(path.start + path.tangent_at(0.0).perpendicular() * distance) < 1e-6
    assert len(made.segments) <= 6


def test_left_is_positive() -> None:
    line = Path.line(Point(0, 0), Point(100, 0))
    assert offset(line, 10.0) == Path.line(Point(0, 10), Point(100, 10))
    assert offset(line, -10.0) == Path.line(Point(0, -10), Point(100, -10))
    assert offset(line, 0.0) == line


def test_a_sharp_tip_is_cut_at_the_mitre_limit() -> None:
    tip = Path.polyline([Point(0, 0), Point(100, 0), Point(0, 10)])
    made = offset(tip, -10.0)
    assert len(made.segments) == 3
    assert made.segments[1].at(0.5).distance_to(Point(100, 0)) == pytest.approx(25.0, abs=1e-9)
    longer = offset(tip, -10.0, mitre_limit=100.0)
    assert longer.bounds().max_x > 200.0
    assert len(longer.segments) == 2


@pytest.mark.parametrize(("join", "reach"), [("mitre", 25.0), ("round", 10.0), ("square", 10.0)])
def test_a_turn_of_180_degrees_is_joined_on_the_outside(join: Join, reach: float) -> None:
    back = Path.polyline([Point(0, 0), Point(100, 0), Point(20, 0)])
    for distance in (10.0, -10.0):
        made = offset(back, distance, join)
        assert made.bounds().max_x == pytest.approx(100.0 + reach, abs=1e-6)
        assert made.start == Point(0, distance)
        assert made.end.distance_to(Point(20, -distance)) < 1e-6


def test_an_inside_corner_is_trimmed() -> None:
    bent = Path.polyline([Point(0, 0), Point(100, 0), Point(100, 100)])
    assert offset(bent, 10.0).flattened(1.0) == (Point(0, 10), Point(90, 10), Point(90, 100))


def test_slight_inside_corners_leave_no_loop() -> None:
    """A polygon of many small turns, such as a digitized curve."""
    arc = Path.polyline([Point(0, 0) + Point(200, 0).rotated(3.0 * index) for index in range(31)])
    made = offset(arc, 10.0)
    assert len(made.segments) == 30
    assert made.self_crossings() == ()
    assert made.start.norm() == pytest.approx(190.0, abs=0.5)


def test_a_short_edge_between_inside_corners_disappears() -> None:
    """Straight offset lines, meeting where plane geometry says: x = 90 and y = 10 cut at (90, 10)."""
    cut = Path.polyline([Point(0, 0), Point(97, 0), Point(100, 3), Point(100, 100)])
    made = offset(cut, 10.0)
    assert_paths_close(made, Path.polyline([Point(0, 10), Point(90, 10), Point(90, 100)]), 1e-9)
    assert len(made.segments) == 2


def test_a_bend_tighter_than_the_width_is_trimmed() -> None:
    tight = Path.of(
        Line(Point(0, 0), Point(100, 0)),
        curve_between(Point(100, 0), 0.0, Point(104, 4), 90.0),
        Line(Point(104, 4), Point(104, 100)),
    )
    made = offset(tight, 15.0)
    assert made.self_crossings() == ()
    assert stray(tight, made, 15.0) < TOLERANCE_MM
    assert len(made.segments) == 2
    assert made.point_at(made.segments[0].length).distance_to(Point(89, 15)) < 1e-6


def test_the_inner_parallel_of_a_round_notch_narrower_than_twice_the_width() -> None:
    notch = Path.of(
        Line(Point(0, 0), Point(200, 0)),
        Line(Point(200, 0), Point(200, 100)),
        Line(Point(200, 100), Point(108, 100)),
        curve_between(Point(108, 100), -90.0, Point(100, 92), 180.0),
        curve_between(Point(100, 92), 180.0, Point(92, 100), 90.0),
        Line(Point(92, 100), Point(0, 100)),
        Line(Point(0, 100), Point(0, 0)),
    )
    grown = offset(notch, -12.0, "round")
    assert region_errors(notch, grown, -12.0, TOLERANCE_MM) == []
    assert offset(notch, -12.0).bounds().max_y == pytest.approx(112.0)


@pytest.mark.parametrize(
    "name", [name for name in DEGENERATE if name not in ("turns back on itself", "loop")]
)
@pytest.mark.parametrize("distance", [-8.0, 8.0])
def test_degenerate_curves_have_parallels(name: str, distance: float) -> None:
    path = Path.of(DEGENERATE[name])
    made = offset(path, distance, "round" if "cusp" in name else "mitre")
    assert stray(path, made, distance) < TOLERANCE_MM


@pytest.mark.parametrize("handle", [3e-6, 1e-4, 2e-4, 1e-3, 0.02])
@pytest.mark.parametrize("distance", [-5.0, 5.0])
def test_a_tiny_handle_that_points_elsewhere_does_no_harm(handle: float, distance: float) -> None:
    """A turn of 123 degrees within a hair: found by chance with a handle of three nanometers."""
    first = Point(-0.5446, -0.8387) * handle
    path = Path.of(Cubic(Point(0, 0), first.rotated(-100.0), Point(0, -657.0), Point(0, -1000.0)))
    assert stray(path, offset(path, distance), distance) < TOLERANCE_MM


def test_an_open_path_is_trimmed_where_it_comes_near_its_own_end() -> None:
    """The short last edge stands 5 mm high: beside it the parallel at 10 mm starts 10 mm from its end."""
    path = Path.polyline([Point(0, 0), Point(100, 0), Point(100, 5)])
    made = offset(path, 10.0)
    assert made.start == Point(0, 10)
    assert made.end.distance_to(Point(100, 5)) == pytest.approx(10.0, abs=1e-3)


def test_what_vanishes_is_refused() -> None:
    for distance in (50.5, 60.0, 300.0):
        with pytest.raises(GeometryError) as caught:
            offset(SQUARE, distance)
        assert caught.value.code == "offset-vanishes"
        assert "leaves nothing" in str(caught.value)


def test_what_falls_apart_is_refused() -> None:
    waist = Path.polyline(
        [
            Point(0, 0), Point(100, 0), Point(60, 50), Point(100, 100), Point(0, 100), Point(40, 50),
        ],
        closed=True,
    )  # fmt: skip
    with pytest.raises(GeometryError) as caught:
        offset(waist, 12.0)
    assert caught.value.code == "offset-in-pieces"
    assert caught.value.facts["count"] == 2
    assert offset(waist, 5.0).area() > 0.0


def test_a_notch_that_closes_over_a_hole_is_refused() -> None:
    """The mouth is 10 mm wide, the room behind it 60 mm: at 8 mm the mouth closes and leaves a hole."""
    room = Path.polyline(
        [
            Point(0, 0), Point(100, 0), Point(100, 100), Point(55, 100), Point(55, 80), Point(80, 80),
            Point(80, 20), Point(20, 20), Point(20, 80), Point(45, 80), Point(45, 100), Point(0, 100),
        ],
        closed=True,
    )  # fmt: skip
    with pytest.raises(GeometryError, match="offset-in-pieces"):
        offset(room, -8.0)


def test_bad_arguments_are_refused() -> None:
    bad: list[tuple[float, str, float, str]] = [
        (10.0, "pointed", 2.5, "offset-join"),
        (10.0, "mitre", 0.5, "offset-join"),
        (10.0, "mitre", math.nan, "offset-join"),
        (math.nan, "mitre", 2.5, "place-not-finite"),
        (math.inf, "mitre", 2.5, "place-not-finite"),
    ]
    for distance, join, limit, code in bad:
        with pytest.raises(GeometryError) as caught:
            offset(SQUARE, distance, join, limit)  # type: ignore[arg-type]  # the wrong join is the point
        assert caught.value.code == code
    with pytest.raises(GeometryError, match="no-direction"):
        offset(Path.line(Point(1, 1), Point(1, 1)), 3.0)


def test_a_closed_path_of_one_curve() -> None:
    drop = Path.of(Cubic(Point(0, 0), Point(150, 150), Point(-150, 150), Point(0, 0)))
    for distance in (-10.0, 10.0):
        made = offset(drop, distance, "round")
        assert made.is_closed
        assert stray(drop, made, distance) < TOLERANCE_MM


def test_the_judge_can_fail() -> None:
    made = offset(BODICE, -10.0, "round")
    assert stray(BODICE, made, -10.2) > TOLERANCE_MM
    assert region_errors(BODICE, offset(BODICE, -60.0, "round"), -10.0, TOLERANCE_MM) != []
