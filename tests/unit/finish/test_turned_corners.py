"""A corner that is turned in and mitered: what is cut off, and that both flaps meet when they are folded in.

Outside: closed forms, and reflections by shapely. The seam of the miter is 6 mm, as enclosed seams are in
factory allowance charts.
"""

import math

import pytest
from shapely import affinity
from shapely.geometry import LineString, Point

from notchbook.finish import CutPiece
from support.cut_shapes import cut_one, polygon, polygon_piece

SEAM = 6.0


def cornered(below: float, beside: float, lean: float = 0.0) -> CutPiece:
    """A piece with a hem below and a slit at its right, which leans by so many mm; the corner turned in."""
    corners = [(0.0, 0.0), (300.0, 0.0), (300.0 + lean, 300.0), (0.0, 300.0)]
    return cut_one(polygon_piece(corners), {0: below, 1: beside, 2: 10.0, 3: 10.0}, {1: "turned"})


@pytest.mark.parametrize(("below", "beside"), [(40.0, 40.0), (51.0, 30.0), (25.0, 35.0)])
def test_at_a_right_angle_a_triangle_goes(below: float, beside: float) -> None:
    """The line through the corner and (beside, below), moved out by the seam, cuts a triangle off."""
    diagonal = math.hypot(below, beside)
    reach = 2.0 * below * beside / diagonal - SEAM
    gone = reach * reach * diagonal * diagonal / (2.0 * below * beside)
    whole = (300.0 + 10.0 + beside) * (300.0 + 10.0 + below)
    assert polygon(cornered(below, beside).cut_line).area == pytest.approx(whole - gone, abs=0.01)


@pytest.mark.parametrize("lean", [-60.0, 0.0, 60.0])
@pytest.mark.parametrize(("below", "beside"), [(40.0, 40.0), (51.0, 30.0)])
def test_folded_in_both_flaps_meet_along_one_line_with_the_seam_beyond_it(
    below: float, beside: float, lean: float
) -> None:
    cut = polygon(cornered(below, beside, lean).cut_line)
    slope = math.atan2(300.0, lean)
    cross = Point(300.0 - beside / math.sin(slope) + below / math.tan(slope), below)
    tip = Point(300.0, 0.0)
    outer = affinity.scale(cross, yfact=-1.0, origin=(0.0, 0.0))
    turn = affinity.rotate(cross, -math.degrees(slope), origin=tip)
    other = affinity.rotate(affinity.scale(turn, yfact=-1.0, origin=tip), math.degrees(slope), origin=tip)
    for end in (outer, other):
        stitched = LineString([tip, end])
        assert cut.buffer(0.01).contains(stitched)
        far = stitched.interpolate(0.6, normalized=True).distance(cut.exterior)
        assert far == pytest.approx(SEAM, abs=0.05)


def test_narrow_allowances_are_not_mitered() -> None:
    narrow = polygon(cornered(10.0, 10.0).cut_line)
    assert narrow.area == pytest.approx(320.0 * 320.0, abs=0.01)
