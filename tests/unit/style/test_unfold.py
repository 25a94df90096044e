"""Halves on the fold and pairs laid out, with the wearer's side in their names."""

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Severity
from notchbook.recipe import remove_step, replay
from support.edge_steps import BACK, FRONT, applied, area, bodice, misfits, refusal, skirt


def test_a_half_becomes_whole_and_a_pair_two() -> None:
    front = applied(bodice(), "unfold", pieces=[FRONT]).pattern
    assert set(front.pieces) == {FRONT, BACK}
    assert front.pieces[FRONT].cut == "single"
    assert area(front.pieces[FRONT]) == pytest.approx(2.0 * area(bodice().pattern.pieces[FRONT]), rel=1e-6)
    assert front.pieces[BACK] == bodice().pattern.pieces[BACK]
    both = applied(skirt(), "unfold", pieces=["skirt.front", "skirt.back"]).pattern
    assert set(both.pieces) == {"skirt.front", "skirt.back@right", "skirt.back@left"}


def test_seams_are_there_once_for_each_side_and_walk_true() -> None:
    pattern = applied(bodice(), "unfold", pieces=[FRONT]).pattern
    assert set(pattern.seams) == {
        f"bodice/{seam}@{side}" for seam in ("shoulder", "side_seam") for side in ("left", "right")
    }
    assert max(abs(off) for off in misfits(pattern).values()) < 0.01


def test_no_check_finds_anything() -> None:
    for run in (
        applied(bodice(), "unfold", pieces=[FRONT]),
        applied(skirt(), "unfold", pieces=["skirt.front", "skirt.back"]),
    ):
        found = [one for one in examine(run, cut=True).findings if one.severity is not Severity.NOTE]
        assert not found, [one.message for one in found]


def test_what_was_promised_is_measured_on_both_sides() -> None:
    run = applied(skirt(), "unfold", pieces=["skirt.front", "skirt.back"])
    promise = next(one for one in run.expectations if one.name == "skirt/waist_girth")
    assert set(promise.names) == {
        f"skirt.{piece}/waist@{side}" for piece in ("front", "back") for side in ("left", "right")
    }
    before = next(one for one in skirt().expectations if one.name == "skirt/waist_girth")
    assert (promise.times, promise.wanted) == (before.times // 2, before.wanted)


def test_one_side_is_changed_after_it_and_the_other_stays() -> None:
    whole = applied(bodice(), "unfold", pieces=[FRONT])
    left = {"edge": f"{FRONT}/neck@left", "from_point": f"{FRONT}/neck_pit"}
    run = applied(whole, "reshape_edge", **left, points=[{"along": 0.5, "out": "-3 mm"}])
    assert run.suspended is None
    assert run.recipe.steps[-1].phase == "whole"
    assert (
        run.pattern.edges[f"{FRONT}/neck@left"].length
        < whole.pattern.edges[f"{FRONT}/neck@left"].length + 5.0
    )
    assert run.pattern.edges[f"{FRONT}/neck@left"] != whole.pattern.edges[f"{FRONT}/neck@left"]
    assert run.pattern.edges[f"{FRONT}/neck@right"] == whole.pattern.edges[f"{FRONT}/neck@right"]


def test_taking_it_out_loses_what_names_a_side_and_nothing_else() -> None:
    whole = applied(bodice(), "unfold", pieces=[FRONT])
    left = {"edge": f"{FRONT}/neck@left", "from_point": f"{FRONT}/neck_pit"}
    run = applied(whole, "reshape_edge", **left, points=[{"along": 0.5, "out": "-3 mm"}])
    without = replay(remove_step(run.recipe, "unfold-1"), run.measures)
    assert without.suspended is not None
    assert without.suspended.step == "reshape_edge-1"
    assert without.suspended.error.code == "name-lost"


def test_a_name_without_its_side_says_which_there_are() -> None:
    run = applied(bodice(), "unfold", pieces=[FRONT])
    lost = applied(run, "set_allowance", edges=[f"{FRONT}/neck@left", f"{FRONT}/armhole"], width="1 cm")
    assert lost.suspended is not None
    assert lost.suspended.candidates == (f"{FRONT}/armhole@left", f"{FRONT}/armhole@right")


def test_refusals() -> None:
    front = applied(skirt(), "unfold", pieces=["skirt.front"])
    assert refusal(front, "unfold", pieces=["skirt.back"]) == "unfold-sides-differ"
    assert refusal(bodice(), "unfold", pieces=["bodice.middle"]) == "name-lost"
    band = {
        "edges": [
            {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_center"},
            {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_side"},
        ]
    }
    banded = applied(skirt(), "waistband", slug="band", **band)
    assert banded.suspended is None, banded.suspended
    piece = next(name for name in banded.pattern.pieces if name.startswith("band"))
    assert refusal(banded, "unfold", pieces=[piece]) == "unfold-single"
