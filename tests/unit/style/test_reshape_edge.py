"""Edges drawn anew through points beside them."""

from math import degrees
from typing import Any

import numpy as np
import pytest

from notchbook.geometry import Path, Point, direction
from notchbook.pattern import Edge
from notchbook.style.edges.bent_edge import bent
from support.edge_steps import BACK, FRONT, applied, bodice, changed, misfits, names_of, notes, refusal, skirt
from support.skirt_judge import turns_both_ways

NECK = {"edge": f"{FRONT}/neck", "from_point": f"{FRONT}/neck_pit"}
SIDES = {
    "edge": "skirt.front/side_seam",
    "from_point": "skirt.front/waist_side",
    "mates": [{"edge": "skirt.back/side_seam", "from_point": "skirt.back/waist_side"}],
}


def turn_between(old: Edge, new: Edge, *, at_end: bool) -> float:
    first, second = (one.path.tangent_at(one.length if at_end else 0.0) for one in (old, new))
    return abs(degrees(first.cross(second)))


def beside(edge: Edge, share: float, out: float) -> Point:
    """A point beside an edge whose own direction runs from the named end, out of the piece to its right."""
    distance = share * edge.length
    return edge.path.point_at(distance) - edge.path.tangent_at(distance).perpendicular() * out


@pytest.mark.parametrize("out", [-4.0, 3.0])
def test_it_goes_through_the_point_and_keeps_its_ends(out: float) -> None:
    after = changed(bodice(), "reshape_edge", **NECK, points=[{"along": 0.5, "out": f"{out} mm"}])
    old, new = bodice().pattern.edges[NECK["edge"]], after.edges[NECK["edge"]]
    assert new.path.nearest(beside(old, 0.5, out)).gap < 1e-3
    assert (new.start, new.end) == (old.start, old.end)
    assert new.path.start == old.path.start
    assert new.path.end == old.path.end
    # End angles hold to one degree.
    assert max(turn_between(old, new, at_end=end) for end in (False, True)) < 1.0


def test_one_point_on_one_curve_gives_one_sweep() -> None:
    after = changed(bodice(), "reshape_edge", **NECK, points=[{"along": 0.5, "out": "-4 mm"}])
    points = [(p.x, p.y) for p in after.edges[NECK["edge"]].path.flattened(0.01)]
    assert not turns_both_ways(np.array(points))


def test_several_points_are_met_and_the_mate_stays_true() -> None:
    places = ((0.1, 3.0), (0.2, 4.0), (0.35, 0.0))
    points = [{"along": share, "out": f"{out} mm"} for share, out in places]
    after = changed(skirt(), "reshape_edge", **SIDES, points=points, may_wave=True)
    old = skirt().pattern.edges["skirt.front/side_seam"]
    new = after.edges["skirt.front/side_seam"]
    for share, out in places:
        assert new.path.nearest(beside(old, share, out)).gap < 0.02
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_beyond_a_last_point_on_the_edge_it_stays_as_it_is() -> None:
    points = [{"along": 0.15, "out": "6 mm"}, {"along": 0.3, "out": "8 mm"}, {"along": 0.55, "out": "0 mm"}]
    after = changed(skirt(), "reshape_edge", **SIDES, points=points, may_wave=True)
    for side in ("front", "back"):
        old, new = (one.edges[f"skirt.{side}/side_seam"].path for one in (skirt().pattern, after))
        for share in (0.56, 0.8, 1.0):
            distance = share * old.length
            place = old.point_at(distance if side == "front" else old.length - distance)
            assert new.nearest(place).gap < 1e-6
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_points_on_the_edge_itself_change_nothing() -> None:
    points = [{"along": 0.3, "out": "0 mm"}, {"along": 0.6, "out": "0 mm"}]
    after = changed(skirt(), "reshape_edge", **SIDES, points=points)
    assert after.pieces == skirt().pattern.pieces


def test_what_is_not_reshaped_with_its_mate_is_told() -> None:
    points = [{"along": 0.15, "out": "20 mm"}]
    alone = {**SIDES, "mates": []}
    assert "seam-put-out" in notes(skirt(), "reshape_edge", **alone, points=points, may_wave=True)


def test_a_turn_at_an_end_is_taken() -> None:
    shoulders = {
        "edge": f"{FRONT}/shoulder",
        "from_point": f"{FRONT}/side_neck_point",
        "start_turn": -3.0,
        "end_turn": -3.0,
    }
    after = changed(bodice(), "reshape_edge", **shoulders)
    old, new = bodice().pattern.edges[f"{FRONT}/shoulder"], after.edges[f"{FRONT}/shoulder"]
    for end in (False, True):
        assert turn_between(old, new, at_end=end) == pytest.approx(3.0, abs=0.05)
    middle = new.path.point_at(new.length / 2.0)
    assert middle.distance_to(beside(old, 0.5, 0.0)) > 1.0, "it lies hollow, into the piece"
    inside = bodice().pattern.pieces[FRONT].sew_line.contains(middle)
    assert inside


def test_a_wave_is_refused_unless_it_is_asked_for() -> None:
    points = [{"along": 0.25, "out": "6 mm"}, {"along": 0.75, "out": "-6 mm"}]
    shoulder: dict[str, Any] = {"edge": f"{FRONT}/shoulder", "from_point": f"{FRONT}/side_neck_point"}
    shoulder["points"] = points
    assert refusal(bodice(), "reshape_edge", **shoulder) == "edge-waves"
    assert applied(bodice(), "reshape_edge", **shoulder, may_wave=True).suspended is None


@pytest.mark.parametrize("name", ["small-80", "large-116"])
def test_on_another_body_the_depth_stays_as_stated(name: str) -> None:
    before = bodice(name)
    after = changed(before, "reshape_edge", **NECK, points=[{"along": 0.5, "out": "-4 mm"}])
    old, new = before.pattern.edges[NECK["edge"]], after.edges[NECK["edge"]]
    assert new.path.nearest(beside(old, 0.5, -4.0)).gap < 1e-3
    assert max(turn_between(old, new, at_end=end) for end in (False, True)) < 1.0


def test_nothing_by_nothing() -> None:
    after = changed(bodice(), "reshape_edge", **NECK)
    assert after.pieces == bodice().pattern.pieces
    assert names_of(after) == names_of(bodice().pattern)


def test_refusals() -> None:
    swapped = [{"along": 0.6, "out": "1 mm"}, {"along": 0.4, "out": "1 mm"}]
    assert refusal(bodice(), "reshape_edge", **NECK, points=swapped) == "edge-points-order"
    fold = {"edge": f"{FRONT}/center_front", "from_point": f"{FRONT}/neck_pit"}
    one = [{"along": 0.5, "out": "1 mm"}]
    assert refusal(bodice(), "reshape_edge", **fold, points=one) == "reshape-fold"
    parted = {"edge": f"{BACK}/shoulder", "from_point": f"{BACK}/side_neck_point"}
    assert refusal(bodice(), "reshape_edge", **parted, points=one) == "name-ambiguous"
    deep = [{"along": 0.5, "out": "-700 mm"}]
    hem = {"edge": "skirt.front/hem", "from_point": "skirt.front/hem_center"}
    assert refusal(skirt(), "reshape_edge", **hem, points=deep, may_wave=True) == "edge-crosses-outline"


@pytest.mark.parametrize("turn", [1e-4, 1.0, 8.0])
def test_an_edge_of_two_lines_at_a_corner_be_it_ever_so_flat_stays_one_line(turn: float) -> None:
    """With a part too short to draw and a corner that no one sees it was refused as a broken line."""
    elbow = Point(100.0, 0.0)
    hair = elbow + direction(0.0) * 0.004
    line = Path.polyline((Point(0.0, 0.0), elbow, hair, hair + direction(turn) * 80.0))
    new = bent(line, [(70.0, 6.0)], (0.0, 0.0), 1.0)
    assert new.nearest(Point(70.0, 6.0)).gap < 1e-6
    assert (new.start, new.end) == (line.start, line.end)
    assert sorted(new.corners(max(turn / 2.0, 0.1))) == pytest.approx(
        [] if turn < 0.1 else [new.nearest(elbow).distance_along], abs=3.0
    )
