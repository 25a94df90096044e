"""A center on the fold opened into a seam, and a straight center seam laid on the fold."""

from dataclasses import replace
from typing import Any

import pytest
from shapely.geometry import LineString

from notchbook.app.examining import examine
from notchbook.finish.quantity import quantities_of
from notchbook.pattern import walk_seam
from notchbook.recipe import Replay
from support.edge_steps import BACK, FRONT, applied, area, bodice, changed, lengths, refusal, skirt

CENTER = f"{BACK}/center_back"
SKIRT_CENTER = "skirt.back/center_back"


def test_an_opened_center_is_sewn_right_to_left_and_cut_twice() -> None:
    pattern = changed(bodice(), "center_seam", center=CENTER)
    piece = pattern.pieces[BACK]
    assert (piece.cut, pattern.edges[CENTER].kind) == ("pair", "seam")
    assert [one.text for one in quantities_of(piece, "whole", ())] == ["cut 1 pair"]
    seam = pattern.seams["center_seam/center_back"]
    assert [use.side for use in (*seam.first, *seam.second)] == ["right", "left"]
    assert seam.first[0].starts_at == f"{BACK}/nape"
    assert seam.allowance_class == "center_back"
    assert walk_seam(pattern, seam).misfit == 0.0


def test_no_line_moves_and_every_name_stays() -> None:
    before, after = bodice().pattern, changed(bodice(), "center_seam", center=CENTER)
    assert lengths(after) == lengths(before)
    assert set(before.index) <= set(after.index)
    assert area(after.pieces[BACK]) == area(before.pieces[BACK])


def test_opened_and_closed_again_it_is_as_it_was() -> None:
    before = bodice().pattern
    opened = applied(bodice(), "center_seam", center=CENTER)
    closed = changed(opened, "center_seam", center=CENTER, becomes="fold")
    assert closed.pieces == before.pieces
    assert closed.seams == before.seams
    assert (closed.allowances, closed.notches) == (before.allowances, before.notches)


def test_closed_and_opened_again_the_seam_is_between_the_same_edges() -> None:
    before = skirt().pattern
    closed = applied(skirt(), "center_seam", center=SKIRT_CENTER, becomes="fold")
    assert closed.pattern.pieces["skirt.back"].cut == "fold"
    assert "skirt/center_back" not in closed.pattern.seams
    opened = changed(closed, "center_seam", slug="again", center=SKIRT_CENTER)
    assert opened.pieces == before.pieces
    assert (
        replace(opened.seams["again/center_back"], name="skirt/center_back")
        == before.seams["skirt/center_back"]
    )


def test_an_opened_center_takes_a_zip_and_nothing_stops() -> None:
    opened = applied(bodice(), "center_seam", center=CENTER)
    done = applied(opened, "zip_opening", edge=CENTER, from_point=f"{BACK}/nape", length="18 cm")
    stops = [one.code for one in examine(done).findings if one.severity == "stop"]
    assert stops == []
    again = {"center": CENTER, "becomes": "fold"}
    assert refusal(done, "center_seam", **again) == "center-holds-zip"


def test_a_center_that_is_not_straight_is_refused_with_how_much_it_bends() -> None:
    bent = applied(
        skirt(),
        "reshape_edge",
        edge=SKIRT_CENTER,
        from_point="skirt.back/waist_center",
        points=[{"along": 0.3, "out": "-4 mm"}],
        may_wave=True,
    )
    done = applied(bent, "center_seam", center=SKIRT_CENTER, becomes="fold")
    assert done.suspended is not None
    assert done.suspended.error.code == "center-not-straight"
    points = [(point.x, point.y) for point in bent.pattern.edges[SKIRT_CENTER].path.flattened(0.005)]
    strays = LineString(points).hausdorff_distance(LineString([points[0], points[-1]]))
    assert done.suspended.error.facts["off"] == pytest.approx(strays, abs=0.02)


@pytest.mark.parametrize(
    ("code", "parameters"),
    [
        ("center-not-on-fold", {"center": f"{BACK}/armhole"}),
        ("center-not-a-pair", {"center": f"{FRONT}/center_front", "becomes": "fold"}),
        ("name-lost", {"center": f"{BACK}/center"}),
    ],
)
def test_what_cannot_be_opened_or_closed_is_refused(code: str, parameters: dict[str, Any]) -> None:
    assert refusal(bodice(), "center_seam", **parameters) == code


def test_an_edge_that_is_sewn_to_another_is_no_center() -> None:
    ends = {"start": ("waist", "waist_side"), "end": ("hem", "hem_side")}
    line = {
        end: {
            "edge": f"skirt.front/{edge}",
            "from_point": f"skirt.front/{point}",
            "distance": "3 cm",
            "part": f"skirt.front/{edge}/side" if edge == "waist" else None,
        }
        for end, (edge, point) in ends.items()
    }
    cut = applied(skirt(), "cut_style_line", slug="panel", lines=[line])
    (side,) = (
        name for name, edge in cut.pattern.edges.items() if name.endswith("style_line") and is_pair(cut, name)
    )
    assert refusal(cut, "center_seam", center=side, becomes="fold") == "center-sewn-elsewhere"


def is_pair(run: Replay, edge: str) -> bool:
    return run.pattern.piece_of(edge).cut == "pair"


def test_a_part_of_a_fold_is_not_opened_alone() -> None:
    ends = {"start": ("side_seam", "waist_side", "20 cm"), "end": ("center_front", "waist_center", "20 cm")}
    line = {
        end: {"edge": f"skirt.front/{edge}", "from_point": f"skirt.front/{point}", "distance": far}
        for end, (edge, point, far) in ends.items()
    }
    cut = applied(skirt(), "cut_style_line", slug="yoke", lines=[line])
    first, second = (name for name in cut.pattern.edges if name.endswith("style_line"))
    joined = applied(cut, "join_pieces", first_edge=first, second_edge=second, heal=False)
    parts = [name for name in joined.pattern.edges if name.startswith("skirt.front/center_front/")]
    assert len(parts) == 2
    assert refusal(joined, "center_seam", center=parts[0]) == "center-part-of-fold"
    whole = changed(joined, "center_seam", center="skirt.front/center_front")
    assert {whole.edges[part].kind for part in parts} == {"seam"}
