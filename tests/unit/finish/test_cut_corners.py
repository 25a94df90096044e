"""Corners of the cut line, judged by known areas and by shapely."""

import math
from dataclasses import replace

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from notchbook.errors import StepRefused
from notchbook.finish import production_table
from notchbook.geometry import Cubic, Path, Point
from support.cut_shapes import cut_one, polygon, polygon_piece, square


def test_square_of_the_geometry_facts() -> None:
    # A 100 x 100 square mitred by 10 is 120 x 120, area 14 400 (known geometry).
    cut = cut_one(square())
    assert [cut.bounds.width, cut.bounds.height] == pytest.approx([120.0, 120.0])
    assert cut.cut_line.area() == pytest.approx(14_400.0, abs=0.01)
    assert len(cut.cut_line.segments) <= 5


def steiner(piece_area: float, sides: list[float], turns: list[float], width: float) -> float:
    """Area of a mitred parallel of a convex polygon: A + w L + w² sum tan(turn / 2) (known geometry)."""
    corners = sum(math.tan(turn / 2.0) for turn in turns)
    return piece_area + width * sum(sides) + width * width * corners


@pytest.mark.parametrize("width", [3.0, 10.0, 25.0])
def test_area_grows_as_steiner_says(width: float) -> None:
    # A hexagon: turns of 60 degrees, tips at 1.155 widths, under the limit of 2.5.
    corners = [(100 * math.cos(math.radians(60 * i)), 100 * math.sin(math.radians(60 * i))) for i in range(6)]
    cut = cut_one(polygon_piece(corners), width)
    wanted = steiner(1.5 * math.sqrt(3) * 100**2, [100.0] * 6, [math.radians(60)] * 6, width)
    assert cut.cut_line.area() == pytest.approx(wanted, rel=1e-9)


@given(
    st.lists(st.floats(0.0, 1.0), min_size=4, max_size=9, unique=True),
    st.floats(3.0, 20.0),
    st.floats(40.0, 120.0),
)
def test_convex_pieces_against_a_polygon_library(shares: list[float], width: float, stretch: float) -> None:
    angles = sorted(2.0 * math.pi * share for share in shares)
    gaps = [b - a for a, b in zip(angles, [*angles[1:], angles[0] + 2 * math.pi], strict=True)]
    if min(gaps) < 0.3 or max(gaps) > 2.2:
        return
    corners = [(150.0 * math.cos(angle), stretch * math.sin(angle)) for angle in angles]
    house = production_table().with_changes({"corner_limit": 10.0})
    cut = cut_one(polygon_piece(corners), width, house=house)
    judge = shapely.Polygon(corners).buffer(width, join_style="mitre", mitre_limit=10.0)
    assert polygon(cut.cut_line).symmetric_difference(judge).area < 0.05 * width


def test_a_sharp_tip_is_cut_off_at_the_limit() -> None:
    # A 20 degree tip would stand out 5.76 widths: 1 / sin(10 degrees).
    tip = math.tan(math.radians(10.0))
    piece = polygon_piece([(0.0, 0.0), (200.0, -200.0 * tip), (200.0, 200.0 * tip)])
    cut = cut_one(piece, 10.0)
    reach = max(Point(0.0, 0.0).distance_to(p) for p in cut.cut_line.flattened(0.1) if p.x < 0.0)
    assert min(p.x for p in cut.cut_line.flattened(0.1)) == pytest.approx(-25.0, abs=0.01)
    assert reach < 10.0 / math.sin(math.radians(10.0))
    assert "corner-blunted" in [finding.code for finding in cut.findings]
    generous = production_table().with_changes({"corner_limit": 6.0})
    whole = cut_one(piece, 10.0, house=generous)
    assert min(p.x for p in whole.cut_line.flattened(0.1)) == pytest.approx(-57.588, abs=0.01)


def test_every_straight_edge_keeps_its_own_width() -> None:
    cut = cut_one(square(), {0: 40.0, 1: 12.0, 2: 19.0, 3: 6.0})
    box = cut.bounds
    assert [box.min_x, box.min_y, box.max_x, box.max_y] == pytest.approx([-6.0, -40.0, 112.0, 119.0])


def test_a_change_of_width_on_a_straight_line_is_a_step_with_a_notch() -> None:
    piece = polygon_piece([(0.0, 0.0), (100.0, 0.0), (100.0, 60.0), (100.0, 160.0), (0.0, 160.0)])
    cut = cut_one(piece, {1: 19.0, 2: 12.0})
    line = polygon(cut.cut_line)
    assert line.covers(shapely.Point(118.9, 59.9))
    assert not line.covers(shapely.Point(112.5, 60.1))
    steps = [notch for notch in cut.notches if notch.purpose == "width changes"]
    assert [notch.sew_position for notch in steps] == [Point(100.0, 60.0)]
    assert steps[0].cut_positions[0].x == pytest.approx(112.0)


def test_an_inner_corner_is_trimmed() -> None:
    piece = polygon_piece([(0, 0), (200, 0), (200, 200), (100, 200), (100, 100), (0, 100)])
    cut = cut_one(piece, 10.0)
    judge = shapely.Polygon([(0, 0), (200, 0), (200, 200), (100, 200), (100, 100), (0, 100)])
    assert polygon(cut.cut_line).symmetric_difference(judge.buffer(10, join_style="mitre")).area < 0.01


def test_a_short_edge_in_an_inner_corner_is_swallowed_and_said() -> None:
    piece = polygon_piece([(0, 0), (200, 0), (200, 200), (104, 200), (104, 104), (100, 100), (0, 100)])
    cut = cut_one(piece, 12.0)
    assert [finding.where for finding in cut.findings if finding.code == "edge-swallowed"] == [
        "test.shape/e4"
    ]
    assert polygon(cut.cut_line).is_valid


def test_an_allowance_that_leaves_nothing_is_refused() -> None:
    thin = polygon_piece([(0.0, 0.0), (100.0, 0.0), (50.0, 1.0)])
    cut = cut_one(thin, 10.0)
    assert polygon(cut.cut_line).is_valid
    notched = polygon_piece([(0, 0), (30, 0), (15, 5)])
    assert polygon(cut_one(notched, 50.0).cut_line).is_valid


def test_a_square_end_follows_the_seam_that_is_sewn_first() -> None:
    # The upper right corner of a leaning piece: its right edge (e1) leans, e2 is the top.
    piece = polygon_piece([(0.0, 0.0), (100.0, 0.0), (140.0, 100.0), (0.0, 100.0)])
    mitred = cut_one(piece, 10.0)
    ended = cut_one(piece, 10.0, {2: "square"})
    seam = Point(40.0, 100.0).unit()
    outward = Point(seam.y, -seam.x)
    # Where the stitching of e1, run on, meets the cut line of the top:
    crossing = Point(140.0, 100.0) + seam * (10.0 / seam.y)
    foot = crossing + outward * 10.0
    assert ended.cut_line.nearest(crossing).gap < 1e-6
    assert ended.cut_line.nearest(foot).gap < 1e-6
    assert ended.cut_line.nearest(crossing.lerp(foot, 0.5)).gap < 1e-6
    assert mitred.cut_line.nearest(crossing.lerp(foot, 0.5)).gap > 0.5


def test_allowance_wider_than_a_curve_is_refused_or_trimmed() -> None:
    base = square()
    dip = Path.of(Cubic(Point(100.0, 100.0), Point(60.0, 40.0), Point(40.0, 40.0), Point(0.0, 100.0)))
    edges = list(base.outline)
    edges[2] = replace(edges[2], path=dip)
    piece = replace(base, outline=tuple(edges))
    try:
        cut = cut_one(piece, {2: 80.0})
    except StepRefused as refused:
        assert refused.code in ("allowance-impossible", "allowance-swallows")
        assert str(refused)
    else:
        assert polygon(cut.cut_line).is_valid
