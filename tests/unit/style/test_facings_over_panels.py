"""Facings of edges that a princess seam cut: the panels are laid together and faced in one."""

from functools import cache

import pytest
from shapely.affinity import affine_transform
from shapely.geometry import Polygon
from shapely.ops import unary_union

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import Piece
from notchbook.recipe import Replay
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.panel_run import Asked
from support.edge_steps import applied, changed, misfits, notes
from support.style_lines import BACK, BACK_PRINCESS, FROM_SHOULDER, FRONT, bodice_with, place, princess
from support.traced_steps import ARMHOLE, NECK, PARTS

BACK_FROM_ARMHOLE = {
    "center": f"{BACK}/center_back",
    "start": [{"edge": f"{BACK}/armhole", "from_point": f"{BACK}/shoulder_point", "fraction": 0.45}],
    "waist_dart": f"{BACK}/waist_dart_center",
}


@cache
def panels(way: str) -> Replay:
    """A bodice of panels, its princess seams from the armhole or from the shoulder."""
    front, back = (
        (princess(), BACK_FROM_ARMHOLE) if way == "armhole" else (princess(FROM_SHOULDER), BACK_PRINCESS)
    )
    done = bodice_with(("princess_seam", "princess", front), ("princess_seam", "back_princess", back))
    assert done.suspended is None, done.suspended.error
    return done


def outline(piece: Piece) -> Polygon:
    """The piece for the outside program."""
    return Polygon([(point.x, point.y) for point in piece.sew_line.flattened(0.005)])


def laid(panel: Piece, moved: Path, still: Path, depth: float) -> Polygon:
    """The panel laid with its seam on another, corner on corner and at one depth, by the outside program."""
    was, there = moved.point_at(depth) - moved.start, still.point_at(depth) - still.start
    size = was.norm() * there.norm()
    cosine, sine = was.dot(there) / size, was.cross(there) / size
    x, y = moved.start.x, moved.start.y
    terms = [cosine, -sine, sine, cosine]
    shift = [still.start.x - cosine * x + sine * y, still.start.y - sine * x - cosine * y]
    return affine_transform(outline(panel), [*terms, *shift])


@pytest.mark.parametrize("way", ["armhole", "shoulder"])
def test_an_all_in_one_facing_is_one_piece_over_front_panels_and_one_over_back_panels(way: str) -> None:
    pattern = changed(panels(way), "all_in_one_facing", parts=PARTS)
    made = {name: piece for name, piece in pattern.pieces.items() if name.startswith("all_in_one")}
    assert {name: (piece.title, piece.cut) for name, piece in made.items()} == {
        "all_in_one_facing.front": ("Front all-in-one facing", "fold"),
        "all_in_one_facing.back": ("Back all-in-one facing", "fold"),
    }
    found = {name: off for name, off in misfits(pattern).items() if name.startswith("all_in_one")}
    words = ("front_neck", "front_armhole", "back_neck", "back_armhole", "shoulder", "side_seam")
    assert found == pytest.approx({f"all_in_one_facing/{word}": 0.0 for word in words}, abs=0.05)


def test_the_facing_lies_on_the_panels_laid_edge_to_edge() -> None:
    """Laid by an outside program; the panels are the same down to the bust, where the seam was one line."""
    pattern = changed(panels("armhole"), "all_in_one_facing", parts=PARTS, turn="0 mm")
    center, side = pattern.pieces["princess.front_center"], pattern.pieces["princess.front_side"]
    still = center.edge("princess.front_center/style_line").path
    moved = side.edge("princess.front_side/style_line").path.reversed()
    together = unary_union([outline(center), laid(side, moved, still, 70.0)]).buffer(0.05)
    facing = outline(pattern.pieces["all_in_one_facing.front"])
    assert facing.difference(together).area < 5.0
    assert facing.intersection(outline(center)).area < 0.9 * facing.area


def test_panels_that_meet_are_marked_on_the_facing_but_not_beside_another_notch() -> None:
    """Two notches side by side would be read as the double one of a back."""
    high = princess(place(f"{FRONT}/armhole", f"{FRONT}/shoulder_point", 0.25))
    pattern = changed(bodice_with(("princess_seam", "princess", high)), "facing", edges=ARMHOLE[:1])
    notch = pattern.notches["facing.front/armhole_panel_notch"]
    own = pattern.edges["bodice.front/armhole/center"].length
    assert notch.purpose == "panel"
    assert notch.place.amount == pytest.approx(own, abs=2.0)
    near = changed(panels("armhole"), "facing", edges=ARMHOLE[:1])
    assert [name for name in near.notches if name.startswith("facing.")] == ["facing.front/balance_notch"]


def test_an_armhole_over_panels_is_faced_as_its_parts_joined() -> None:
    whole = changed(panels("armhole"), "facing", edges=ARMHOLE[:1], interfaced=False)
    parts = [
        {"edge": f"{FRONT}/armhole/side", "starts_at": f"{FRONT}/underarm"},
        {"edge": f"{FRONT}/armhole/center", "starts_at": "princess.front_center/armhole_end"},
    ]
    joined = changed(panels("armhole"), "facing", edges=parts, joined=True, turn="0 mm", interfaced=False)
    pieces = outline(whole.pieces["facing.front"]), outline(joined.pieces["facing.joined"])
    assert pieces[0].area == pytest.approx(pieces[1].area, rel=0.01)
    assert misfits(whole)["facing/front_armhole"] == pytest.approx(0.0, abs=0.05)


def test_a_neck_facing_runs_over_a_princess_seam_in_the_shoulder_as_if_it_were_not_cut() -> None:
    """Deeper than the center panel's part of the shoulder: the parts are one edge beside the neck."""
    cut = changed(panels("shoulder"), "facing", edges=NECK, depth="8 cm", interfaced=False)
    plain = changed(bodice_with(), "facing", edges=NECK[:1], depth="8 cm", interfaced=False, turn="1.6 mm")
    assert cut.edges["bodice.front/shoulder/center"].length < 80.0
    for edge in ("neck", "center_front"):
        lengths = cut.edges[f"facing.front_center/{edge}"].length, plain.edges[f"facing.front/{edge}"].length
        assert lengths[0] == pytest.approx(lengths[1], abs=1.7)
    pieces = outline(cut.pieces["facing.front_center"]), outline(plain.pieces["facing.front"])
    assert pieces[0].symmetric_difference(pieces[1]).area < 0.02 * pieces[1].area
    assert misfits(cut)["facing/shoulder"] == pytest.approx(0.0, abs=0.05)


def test_panels_that_no_seam_joins_cannot_be_faced_in_one() -> None:
    pattern = panels("armhole").pattern
    apart = pattern.with_seams(without=["princess/front_style_line"])
    asked = [Asked(f"{FRONT}/armhole", f"{FRONT}/underarm", 50.0)]
    assert len(faced_runs(pattern, asked)) == 1
    with pytest.raises(StepRefused) as refused:
        faced_runs(apart, asked)
    assert refused.value.code == "facing-panels-apart"


def test_panels_that_lie_open_within_the_facing_are_said() -> None:
    assert notes(panels("armhole"), "facing", edges=ARMHOLE[:1]) == set()
    bulging = applied(
        panels("armhole"),
        "reshape_edge",
        edge="princess.front_side/style_line",
        from_point="princess.front_side/armhole_end",
        points=[{"along": 0.08, "out": "8 mm"}, {"along": 0.2, "out": "0 mm"}],
        may_wave=True,
    )
    assert notes(bulging, "facing", edges=ARMHOLE[:1]) == {"facing-panels-open"}


def test_a_shoulder_that_is_eased_is_one_edge_beside_the_neck() -> None:
    eased = applied(bodice_with(), "convert_dart", darts=[f"{BACK}/shoulder_dart"], into="ease")
    pattern = changed(eased, "facing", edges=NECK[1:], depth="7 cm", interfaced=False)
    assert pattern.edges["facing.back/shoulder"].length == pytest.approx(70.0, abs=3.0)
