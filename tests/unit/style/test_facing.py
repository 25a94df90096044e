"""Facings: traced off the edges that they face, walked against them, and never stale."""

from dataclasses import replace
from typing import Any

import pytest
from shapely.geometry import LineString, Polygon

from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.checks.junctions import junctions
from notchbook.finish.quantity import quantities_of
from notchbook.geometry import Point
from notchbook.pattern import Pattern, Piece, walk_seam
from notchbook.recipe import Replay, change_step, replay
from support.edge_steps import (
    BACK,
    FRONT,
    applied,
    area,
    bodice,
    changed,
    misfits,
    necks,
    refusal,
    skirt,
)
from support.traced_steps import ARMHOLE, NECK

SKIRT_WAIST = [
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_center"},
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_side"},
]


def line(pattern: Pattern, name: str) -> LineString:
    """An edge for the outside program."""
    return LineString([(point.x, point.y) for point in pattern.edges[name].path.flattened(0.005)])


def walks(pattern: Pattern, slug: str = "facing") -> dict[str, float]:
    return {name: misfit for name, misfit in misfits(pattern).items() if name.startswith(f"{slug}/")}


@pytest.mark.parametrize(("cloth", "turn"), [("light", 1.0), ("medium", 1.6), ("heavy", 3.2)])
def test_a_neck_facing_is_shorter_by_the_turn_of_the_cloth(cloth: str, turn: float) -> None:
    """Turn of cloth 1/16 to 1/8 in (from memory); lengths measured by an outside program."""
    pattern = changed(bodice(), "facing", edges=NECK, cloth=cloth)
    for piece, panel in (("facing.front", FRONT), ("facing.back", BACK)):
        shorter = line(pattern, f"{panel}/neck").length - line(pattern, f"{piece}/neck").length
        assert shorter == pytest.approx(turn, abs=0.02)
    assert set(walks(pattern)) == {"facing/front_neck", "facing/back_neck", "facing/shoulder"}
    assert walks(pattern) == pytest.approx(dict.fromkeys(walks(pattern), 0.0), abs=0.05)


def test_without_turn_the_facing_is_the_piece_itself_within_its_depth_of_the_edge() -> None:
    """An outside program offsets the neck: what lies within 5 cm of it, of the front, is the facing."""
    pattern = changed(bodice(), "facing", edges=NECK, turn="0 mm")
    front = Polygon([(p.x, p.y) for p in pattern.pieces[FRONT].sew_line.flattened(0.005)])
    near = front.intersection(line(pattern, f"{FRONT}/neck").buffer(50.0, quad_segs=200))
    made = Polygon([(p.x, p.y) for p in pattern.pieces["facing.front"].sew_line.flattened(0.005)])
    # The parallel stays within 0.05 mm of the true one.
    free = line(pattern, "facing.front/edge")
    assert made.difference(near).area < 0.05 * free.length
    # Beyond the shoulder's slant the buffer is round where the facing goes on straight to the seam.
    assert near.difference(made).area < 0.02 * made.area
    middle = free.interpolate(0.5, normalized=True)
    assert middle.distance(line(pattern, f"{FRONT}/neck")) == pytest.approx(50.0, abs=0.1)


def test_a_facing_in_the_fold_is_cut_on_it_and_an_armhole_facing_is_a_pair() -> None:
    neck = changed(bodice(), "facing", edges=NECK).pieces["facing.front"]
    armhole = changed(bodice(), "facing", edges=ARMHOLE).pieces["facing.front"]
    assert (neck.cut, armhole.cut) == ("fold", "pair")
    said = [(one.material, one.text) for one in quantities_of(armhole, "whole", ())]
    assert said == [("self", "cut 1 pair"), ("fusible", "cut 1 pair")]
    bare = changed(bodice(), "facing", edges=NECK, interfaced=False).pieces["facing.front"]
    assert [told.material for told in bare.instructions] == ["self"]


def transferred(edge: str, start: str) -> Replay:
    place = {"at": {"edge": f"{FRONT}/{edge}", "from_point": f"{FRONT}/{start}", "fraction": 0.5}}
    return applied(bodice(), "transfer_dart", darts=[f"{FRONT}/bust_dart"], places=[place])


@pytest.mark.parametrize(
    ("edge", "start", "edges"),
    [
        ("neck", "neck_pit", NECK),
        ("armhole", "shoulder_point", ARMHOLE),
        ("shoulder", "shoulder_point", NECK),
    ],
)
def test_a_dart_in_the_facing_is_closed(edge: str, start: str, edges: list[dict[str, Any]]) -> None:
    pattern = changed(transferred(edge, start), "facing", edges=edges)
    facing = pattern.pieces["facing.front"]
    assert facing.intakes == ()
    assert all(one.kind != "leg" for one in facing.outline)
    assert walks(pattern) == pytest.approx(dict.fromkeys(walks(pattern), 0.0), abs=0.1)
    assert area(facing) > 0.0


def test_an_armhole_facing_in_one_piece_runs_smoothly_over_the_shoulder() -> None:
    pattern = changed(bodice(), "facing", edges=ARMHOLE, joined=True)
    joined = pattern.pieces["facing.joined"]
    assert [name for name in pattern.pieces if name.startswith("facing")] == ["facing.joined"]
    assert walks(pattern) == pytest.approx(dict.fromkeys(walks(pattern), 0.0), abs=0.05)
    assert "facing/side_seam" in walks(pattern)
    back, front = (joined.edge(f"facing.joined/{side}_armhole").path for side in ("back", "front"))
    assert abs(back.tangent_at(back.length).cross(front.tangent_at(0.0))) < 0.01


def test_notches_follow_with_the_same_last_word_and_meet_their_mates() -> None:
    for joined in (False, True):
        pattern = changed(bodice(), "facing", edges=ARMHOLE, joined=joined)
        for side in ("front", "back"):
            walk = walk_seam(pattern, pattern.seams[f"facing/{side}_armhole"])
            (station,) = walk.stations
            assert station.notch == "balance_notch"
            assert station.first is not None and station.second is not None
            assert 0.0 <= station.second - station.first <= walk.ease + 0.01


def test_a_facing_keeps_the_grain_at_the_center_however_far_the_darts_swing_it() -> None:
    pattern = changed(skirt(), "facing", edges=SKIRT_WAIST)
    for side in ("front", "back"):
        center = pattern.edges[f"facing.{side}/center_{side}"].path
        assert abs(center.end.x - center.start.x) < 1e-6
    assert misfits(pattern)["facing/back_center_back"] == pytest.approx(0.0)


def test_the_turn_of_the_cloth_takes_nothing_off_the_finished_waist() -> None:
    """The facing is smaller, not the skirt: a turn of 1.6 mm in each quarter would be 6.4 mm round."""
    plain = next(row for row in ease_table(skirt()) if row.name == "skirt/waist_girth")
    faced = applied(skirt(), "facing", edges=SKIRT_WAIST)
    row = next(row for row in ease_table(faced) if row.name == "skirt/waist_girth")
    assert faced.pattern.seams["facing/front_waist"].ease == pytest.approx(1.6, abs=0.01)
    assert row.finished == pytest.approx(plain.finished, abs=1e-6)


def test_edges_that_follow_each_other_are_faced_in_one_and_keep_the_grain_of_the_center() -> None:
    edges = [
        {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_side"},
        {"edge": "skirt.back/center_back", "starts_at": "skirt.back/waist_center"},
    ]
    pattern = changed(skirt(), "facing", edges=edges)
    assert [name for name in pattern.pieces if name.startswith("facing")] == ["facing.back"]
    center = pattern.edges["facing.back/center_back"].path
    assert abs(center.end.x - center.start.x) < 1e-6
    assert walks(pattern) == pytest.approx(dict.fromkeys(walks(pattern), 0.0), abs=0.05)


def test_the_free_edge_of_a_v_is_drawn_round_to_the_fold() -> None:
    done = applied(bodice(), "change_neckline", necks=necks("v", "12 cm"))
    facing = changed(done, "facing", edges=NECK).pieces["facing.front"]
    assert facing.edge("facing.front/center_front").length == pytest.approx(75.0)
    arriving = facing.edge("facing.front/edge").path
    ends = (arriving.tangent_at(0.0), arriving.tangent_at(arriving.length))
    assert min(abs(tangent.y) for tangent in ends) < 1e-6


def test_each_edge_may_have_its_own_depth() -> None:
    edges = [{**NECK[0], "depth": "7 cm"}, NECK[1]]
    pattern = changed(bodice(), "facing", edges=edges)
    assert pattern.edges["facing.front/center_front"].length == pytest.approx(70.0, abs=0.01)
    assert pattern.edges["facing.back/center_back"].length == pytest.approx(50.0, abs=0.01)
    assert misfits(pattern)["facing/shoulder"] == pytest.approx(0.0, abs=0.05)


def test_no_check_stops_a_faced_bodice_and_a_facing_lies_on_what_it_faces() -> None:
    done = applied(bodice(), "facing", edges=[*NECK, *ARMHOLE])
    assert {"facing.front_neck", "facing.front_armhole"} <= set(done.pattern.pieces)
    found = [one for one in examine(done).findings if "facing" in str(one.names) and one.severity != "note"]
    assert found == []
    judged = {one.walked.seam.name for one in junctions(done.pattern)}
    assert "facing/shoulder" in judged
    assert "facing/front_neck" not in judged


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("facing-end-elsewhere", {"edges": [{"edge": f"{FRONT}/neck", "starts_at": f"{FRONT}/underarm"}]}),
        ("facing-two-folds", {"edges": NECK, "joined": True}),
        (
            "facing-not-sewn",
            {
                "edges": [NECK[0], {"edge": f"{BACK}/armhole", "starts_at": f"{BACK}/underarm"}],
                "joined": True,
            },
        ),
        (
            "facing-order",
            {"edges": [NECK[0], {"edge": f"{BACK}/neck", "starts_at": f"{BACK}/nape"}], "joined": True},
        ),
        (
            "facing-edges-apart",
            {
                "edges": [
                    {"edge": f"{FRONT}/neck", "starts_at": f"{FRONT}/neck_pit"},
                    {"edge": f"{FRONT}/neck", "starts_at": f"{FRONT}/side_neck_point"},
                ]
            },
        ),
        (
            "facing-on-fold",
            {"edges": [{"edge": f"{FRONT}/center_front", "starts_at": f"{FRONT}/waist_center"}]},
        ),
        ("facing-too-deep", {"edges": NECK, "depth": "14 cm"}),
        ("turn-out-of-range", {"edges": NECK, "turn": "3 cm"}),
        ("turn-out-of-range", {"edges": NECK, "turn": "-1 mm"}),
        ("amount-not-positive", {"edges": NECK, "depth": "0 cm"}),
        ("name-lost", {"edges": [{"edge": f"{FRONT}/collar", "starts_at": f"{FRONT}/neck_pit"}]}),
    ],
)
def test_what_cannot_be_faced_is_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(bodice(), "facing", **changes) == code


def test_gathers_and_open_darts_are_refused() -> None:
    gathered = applied(bodice(), "convert_dart", darts=[f"{FRONT}/waist_dart"], into="gather")
    waist = [{"edge": f"{FRONT}/waist", "starts_at": f"{FRONT}/waist_center"}]
    assert refusal(gathered, "facing", edges=waist) == "facing-drawn-in"
    hem = [{"edge": "skirt.front/hem", "starts_at": "skirt.front/hem_center"}]
    assert refusal(skirt(), "facing", edges=hem, depth="53 cm") == "facing-meets-dart"


def test_a_facing_follows_the_block() -> None:
    done = applied(bodice(), "facing", edges=NECK)
    recipe = change_step(done.recipe, "bodice-1", {"neck_ease": "14 mm"}, base=done.measures)
    again = replay(recipe, done.measures)
    assert again.suspended is None
    before, after = (run.pattern.edges["facing.front/neck"].length for run in (done, again))
    assert abs(before - after) > 0.5
    assert walks(again.pattern) == pytest.approx(dict.fromkeys(walks(again.pattern), 0.0), abs=0.05)


def test_a_planted_fault_in_the_facing_is_found() -> None:
    """The walk is measured on the finished outline, so that a shorter facing shows."""
    pattern = changed(bodice(), "facing", edges=NECK)
    facing = pattern.pieces["facing.front"]
    edge = facing.edge("facing.front/neck")
    moved = edge.path.start + edge.path.tangent_at(0.0) * 0.5
    shorter = with_path(facing, edge.name, moved.x, moved.y)
    broken = pattern.with_pieces(shorter)
    assert abs(walk_seam(broken, broken.seams["facing/front_neck"]).misfit) > 0.2


def with_path(piece: Piece, name: str, x: float, y: float) -> Piece:
    index = piece.edge_index(name)
    outline = list(piece.outline)
    point = Point(x, y)
    outline[index] = replace(outline[index], path=outline[index].path.with_start(point))
    outline[index - 1] = replace(outline[index - 1], path=outline[index - 1].path.with_end(point))
    return replace(piece, outline=tuple(outline))
