"""Contoured bands, casings, belts, ties, straps, hooks and loops: lengths, notches, refusals, other bodies.

Outside: shapely and numpy measure the drawn pieces; closed forms are named beside each check.
"""

import math
from functools import cache
from typing import Any

import numpy as np
import pytest

from notchbook.app.drafting import draft
from notchbook.checks.openings import openings
from notchbook.finish import production_table
from notchbook.finish.allowance import Allowances
from notchbook.geometry import Point
from notchbook.pattern import Notch, Pattern, Place, locate, ring_length, sewn_length, walk_seam
from notchbook.recipe import Change, Replay, StepContext, replay
from notchbook.recipe.style_figure import RangedFigure, StyleFigure
from notchbook.style.button_loops import loop_length
from notchbook.style.closures import figures
from notchbook.style.closures.curved_band import bend_of
from notchbook.style.closures.figures import ELASTIC_SHARE
from support.closure_steps import (
    BACK_OPENING,
    FLY,
    FLY_BAND,
    FLY_WAIST,
    STRAP,
    buttons,
    line,
    lower_sets,
    outside_length,
    polygon,
    said_more,
    stepped,
    upper_sets,
)
from support.edge_steps import bodice, misfits, notes, place, refusal, skirt, trousers
from support.odd_steps import NoParameters, odd_step, register

ZIP = {"edge": "skirt.back/center_back", "from_point": "skirt.back/waist_center", "length": "18 cm"}
CONTOURED = {"edges": BACK_OPENING}
LOW_STRAP = {
    **STRAP,
    "front": place("bodice.front/center_front", "bodice.front/waist_center", "0 mm"),
    "bust_point": "bodice.front/side_neck_point",
}


@cache
def contoured() -> Replay:
    """The skirt of an invented woman with a contoured waistband."""
    return stepped(skirt(), ("contoured_waistband", CONTOURED))


def waist_of(done: Replay) -> float:
    """The whole waist as sewn, by the outside program, mm."""
    parts = [
        member
        for panel in ("front", "back")
        for member in done.pattern.groups[f"skirt.{panel}/waist"].members
    ]
    return 2.0 * outside_length(done.pattern, *parts)


@pytest.mark.parametrize(("upper", "depth"), [("70 cm", "50 mm"), ("74 cm", "40 mm"), ("82 cm", "60 mm")])
def test_a_contoured_band_is_a_ring_with_both_lengths_and_its_depth(upper: str, depth: str) -> None:
    changes = {"upper": upper, "depth": depth, "cut_in": "one", "underlap": "0 mm"}
    done = stepped(skirt(), ("contoured_waistband", {**CONTOURED, **changes}))
    band = done.pattern.pieces["contoured_waistband.band"]
    lower = outside_length(done.pattern, *(f"{band.name}/lower/{side}" for side in ("right", "left")))
    long, deep = 10.0 * float(upper.split()[0]), float(depth.split()[0])
    assert lower == pytest.approx(waist_of(done), abs=0.1)
    assert outside_length(done.pattern, f"{band.name}/upper") == pytest.approx(long, abs=0.1)
    edge = line(done.pattern.edges[f"{band.name}/upper"].path)
    far = [
        edge.distance(
            line(done.pattern.edges[f"{band.name}/lower/right"].path).interpolate(0.5, normalized=True)
        )
    ]
    assert far == pytest.approx([deep], abs=0.02)
    # A part of a ring: the area is its depth times the mean of both lengths.
    assert polygon(band).area == pytest.approx(deep * (lower + long) / 2.0, rel=1e-4)


def test_the_radius_of_a_band_is_that_of_two_arcs_about_one_center() -> None:
    bend = bend_of(740.0, 700.0, 50.0)
    assert bend.radius is not None
    angle = 740.0 / bend.radius
    assert (bend.radius - 50.0) * angle == pytest.approx(700.0)
    assert bend_of(740.0, 740.0, 50.0).radius is None


def test_carried_on_above_a_lowered_waist_the_band_narrows_as_the_garment_does() -> None:
    done = stepped(skirt(), ("contoured_waistband", {**CONTOURED, "upper": None, "cut_in": "one"}))
    lower = waist_of(done)
    upper = outside_length(done.pattern, "contoured_waistband.band/upper") - 30.0
    assert 0.75 * lower < upper < 0.95 * lower


def test_the_band_walks_against_the_waist_and_its_facing_and_they_are_mirrors() -> None:
    pattern = contoured().pattern
    off = {name: one for name, one in misfits(pattern).items() if name.startswith("contoured")}
    assert len(off) == 2 + 1 + 1 + 2 * 2
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.05)
    for side in ("right", "left"):
        band, facing = (pattern.pieces[f"contoured_waistband.{one}_{side}"] for one in ("band", "facing"))
        turned = [Point(-point.x, point.y) for point in facing.sew_line.flattened(0.01)]
        assert max(band.sew_line.nearest(point).gap for point in turned) < 0.05


def test_in_three_the_facing_has_its_seams_where_the_band_has() -> None:
    done = stepped(skirt(), ("contoured_waistband", {**CONTOURED, "cut_in": "three"}))
    pattern = done.pattern
    off = {name: one for name, one in misfits(pattern).items() if name.startswith("contoured")}
    assert {
        f"contoured_waistband/{one}_{side}" for one in ("band", "facing") for side in ("right", "left")
    } <= set(off)
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.05)
    back = outside_length(pattern, *pattern.groups["skirt.back/waist"].members)
    assert outside_length(pattern, "contoured_waistband.band_right/lower/right") == pytest.approx(
        back, abs=0.05
    )


@pytest.mark.parametrize("name", ["small-80", "large-116", "plus-128", "uneven"])
def test_contoured_bands_are_right_on_other_bodies(name: str) -> None:
    zipped = stepped(contoured(), ("zip_opening", ZIP))
    assert said_more(zipped, "skirt", name) == set()


def test_a_casing_of_its_own_is_as_long_as_the_waist_and_its_elastic_shorter_than_the_body() -> None:
    """Elastic 0.85 to 0.95 of the body at the waist (common practice)."""
    done = stepped(skirt(), ("elastic_casing", {"made": "separate"}))
    casing = polygon(done.pattern.pieces["elastic_casing.casing"]).bounds
    assert 2.0 * (casing[2] - casing[0]) == pytest.approx(waist_of(done), abs=0.05)
    assert casing[3] - casing[1] == pytest.approx(2.0 * (25.0 + 5.0))
    ring = ring_length(done.pattern, done.pattern.elastics["elastic_casing/elastic"])
    body = done.measures.value("waist_girth")
    assert ring == pytest.approx(ELASTIC_SHARE.value * body)
    assert 0.85 * body <= ring <= 0.95 * body
    assert {name: one for name, one in misfits(done.pattern).items() if "casing" in name} == pytest.approx(
        {"elastic_casing/waist": 0.0, "elastic_casing/casing_end": 0.0}, abs=0.05
    )


def test_a_casing_cut_on_is_turned_over_and_told_of_darts() -> None:
    done = stepped(skirt(), ("elastic_casing", {"elastic": "30 mm"}))
    allowance = done.pattern.allowances["skirt.front/waist"]
    assert (allowance.allowance_class, allowance.width) == ("elastic_casing", 30.0 + 5.0 + 10.0)
    assert {edge.kind for edge in done.pattern.pieces["skirt.front"].outline if "/waist/" in edge.name} == {
        "hem"
    }
    assert notes(skirt(), "elastic_casing") == {"casing-darts"}
    assert notes(skirt(), "elastic_casing", share=1.1) == {"amount-unusual", "casing-darts", "casing-slack"}
    assert "waist" in {one.kind for one in openings(done.pattern)}  # whether it goes over the hips is judged


def test_a_belt_has_its_middle_hole_at_the_girth_and_a_right_angled_point() -> None:
    pattern = stepped(skirt(), ("belt", {"girth": "76 cm", "width": "40 mm"})).pattern
    belt = pattern.pieces["belt.belt"]
    places = np.array([(mark.position.x, mark.position.y) for mark in belt.marks])
    assert places[:, 1] == pytest.approx([20.0] * 5)
    assert places[2][0] == pytest.approx(760.0)
    assert np.diff(places[:, 0]) == pytest.approx([25.0] * 4)  # 1 in, common practice
    west, _, east, _ = polygon(belt).bounds
    assert east - west == pytest.approx(760.0 + 150.0)
    # A right-angled point takes a triangle off each corner: half the width squared in all.
    assert polygon(belt).area == pytest.approx((east - west) * 40.0 - 20.0**2)


def test_a_strap_is_as_long_as_the_way_over_the_shoulder() -> None:
    done = stepped(bodice(), ("strap", STRAP))
    pattern = done.pattern
    bust = pattern.pieces["bodice.front"].points["bodice.front/bust_point"]
    waist = pattern.pieces["bodice.back"].points["bodice.back/waist_center"]
    caught = {
        one.purpose + name[-20:]: locate(pattern, one.place).position
        for name, one in pattern.notches.items()
        if one.purpose == "strap"
    }
    front, back = caught.values()
    way = done.measures.value("neck_to_bust_point") - math.dist((front.x, front.y), (bust.x, bust.y))
    way += done.measures.value("back_waist_length") + 20.0 - (back.y - waist.y)
    west, south, east, north = polygon(pattern.pieces["strap.strap"]).bounds
    assert east - west == pytest.approx(way + 40.0, abs=0.01)
    assert north - south == pytest.approx(2.0 * 8.0)
    assert pattern.pieces["strap.strap"].grain.degrees == 45.0
    folded = stepped(bodice(), ("strap", {**STRAP, "made": "folded"})).pattern.pieces["strap.strap"]
    assert folded.bounds.max_y == pytest.approx(4.0 * 8.0)  # bias cut 4 times the finished width, from memory


def test_straps_follow_the_size_and_are_two_on_a_body_whose_sides_differ() -> None:
    ends = {
        side: {"edge": f"bodice.{side}/neck", "from_point": f"bodice.{side}/side_neck_point", "fraction": 0.7}
        for side in ("front", "back")
    }
    recipe = stepped(bodice(), ("strap", {**STRAP, **ends})).recipe
    found = {name: replay(recipe, upper_sets()[name]).pattern for name in ("small-80", "large-116", "uneven")}
    small, large = (found[name].pieces["strap.strap"].bounds.max_x for name in ("small-80", "large-116"))
    assert small < large
    straps = [piece for name, piece in found["uneven"].pieces.items() if name.startswith("strap.")]
    count = sum((2 if piece.cut == "pair" else 1) for piece in straps)
    assert count == 2
    strapped = stepped(bodice(), ("strap", STRAP))
    assert said_more(strapped, "bodice", "small-80") == set()  # the grain of so narrow a strip can be drawn


def test_ties_are_cut_as_often_as_asked_and_marked_where_they_are_caught() -> None:
    at = [place("skirt.back/center_back", "skirt.back/waist_center", "5 mm")]
    pattern = stepped(skirt(), ("tie", {"number": 4, "places": at, "grain": "bias"})).pattern
    tie = pattern.pieces["tie.tie"]
    assert tie.instructions[0].times == 4
    assert polygon(tie).bounds == pytest.approx((0.0, 0.0, 600.0, 40.0))
    (notch,) = [one for one in pattern.notches.values() if one.purpose == "tie"]
    assert notch.place.amount == pytest.approx(5.0)


def test_hook_and_bar_meet_when_the_band_is_closed() -> None:
    """The hook lies at the end that laps, the bar as far from the end of the opening: closed they are one."""
    hook = place("waistband.band_left/left_end", "waistband.band_left/left_opening", "17 mm")
    bar = place("waistband.band_right/lower/right", "waistband.band_right/right_opening", "5 mm")
    steps = [("fly", FLY), ("waistband", FLY_BAND)]
    told = {"hook": hook, "eye": bar, "hook_inside": "5 mm", "eye_inside": "17 mm"}
    pattern = stepped(trousers(), *steps, ("hook_and_eye", told)).pattern
    marks = {
        mark.name: mark.position
        for piece in pattern.pieces.values()
        for mark in piece.marks
        if mark.name.startswith("hook_and_eye")
    }
    assert set(marks) == {"hook_and_eye.band_left/hook", "hook_and_eye.band_right/eye"}
    left, right = (pattern.pieces[f"waistband.band_{side}"].points for side in ("left", "right"))
    from_left = marks["hook_and_eye.band_left/hook"] - left["waistband.band_left/left_opening"]
    from_right = marks["hook_and_eye.band_right/eye"] - right["waistband.band_right/right_opening"]
    assert (abs(from_left.x), from_left.y) == pytest.approx((5.0, 17.0))
    assert (abs(from_right.x), from_right.y) == pytest.approx((5.0, 17.0))


@pytest.mark.parametrize(("button", "thickness"), [(10.0, 10.0), (12.0, 4.0)])
def test_a_loop_lets_its_button_through(button: float, thickness: float) -> None:
    """A button passes on edge where what goes round it, twice diameter and thickness, is no longer than loop
    and edge together, less the cord inside (closed form)."""
    inside = loop_length(button, thickness, 4.0) - 2.0 * 4.0 + button
    assert inside == pytest.approx(2.0 * (button + thickness))


def test_loops_lie_evenly_down_an_opening_with_a_button_at_each() -> None:
    back = stepped(bodice(), ("center_seam", {"center": "bodice.back/center_back"}))
    told = {"edge": "bodice.back/center_back", "top": "bodice.back/nape", "length": "12 cm"}
    done = stepped(back, ("button_loops", told))
    places = buttons(done.pattern.pieces["bodice.back"])
    number = done.recipe.steps[-1].parameters["number"]
    assert len(places) == number == 5
    top = done.pattern.pieces["bodice.back"].points["bodice.back/nape"].y
    assert (top - places[0][1], top - places[-1][1]) == pytest.approx((5.0, 115.0))
    assert np.diff(places[:, 1]) == pytest.approx([-27.5] * 4)
    assert refusal(back, "button_loops", **told, number=20) == "loops-too-many"
    assert refusal(back, "button_loops", **{**told, "length": "60 cm"}) == "loops-past-edge"


LOOPS = {"edge": "bodice.back/center_back", "top": "bodice.back/nape", "length": "12 cm"}


def test_the_seam_behind_loops_is_open_as_far_as_they_reach() -> None:
    back = stepped(bodice(), ("center_seam", {"center": "bodice.back/center_back"}))
    whole = sewn_length(back.pattern, "bodice.back/center_back")
    done = stepped(back, ("button_loops", LOOPS)).pattern
    walk = walk_seam(done, done.seams["center_seam/center_back"])
    assert (walk.first, walk.second) == pytest.approx((whole - 120.0, whole - 120.0))
    assert done.edges["bodice.back/center_back/opening"].length == pytest.approx(120.0)
    assert done.notches["button_loops.back/opening_end_notch"].purpose == "end of opening"
    given = Allowances(done, production_table())
    center = [edge for edge in done.pieces["bodice.back"].outline if "center_back" in edge.name]
    assert len(center) == 2 and len({given.of(edge).width for edge in center}) == 1
    kinds = [{one.kind for one in openings(run)} for run in (back.pattern, done)]
    assert ["neck" in found for found in kinds] == [True, False]  # it falls open, so that the head passes
    closed = stepped(back, ("button_loops", {**LOOPS, "length": f"{whole} mm"})).pattern
    assert "center_seam/center_back" not in closed.seams


def test_a_notch_on_the_opening_behind_loops_serves_no_seam_any_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """It stays as a mark: what it met is open there. One below the opening stays with the seam."""
    seam = "center_seam/center_back"

    def marked(pattern: Pattern, _context: StepContext, _parameters: NoParameters) -> Change:
        places = {"high": 60.0, "low": 200.0}
        found = (
            Notch(f"odd.back/{word}", Place(LOOPS["edge"], LOOPS["top"], at), seam=seam)
            for word, at in places.items()
        )
        return Change(pattern.with_notches(*found))

    register(monkeypatch, odd_step(marked))
    back = stepped(bodice(), ("center_seam", {"center": "bodice.back/center_back"}), ("odd", {}))
    notches = stepped(back, ("button_loops", LOOPS)).pattern.notches
    assert (notches["odd.back/high"].seam, notches["odd.back/low"].seam) == (None, seam)


def test_loops_need_an_edge_that_joins_left_and_right() -> None:
    assert refusal(bodice(), "button_loops", **LOOPS) == "opening-on-fold"
    at = place("skirt.front/center_front", "skirt.front/waist_center", "5 mm")
    assert refusal(skirt(), "hook_and_eye", hook=at, eye=at) == "opening-on-fold"
    side = {"edge": "bodice.back/side_seam", "top": "bodice.back/underarm", "length": "12 cm"}
    assert refusal(bodice(), "button_loops", **side) == "closure-sewn-elsewhere"


@pytest.mark.parametrize(
    ("base", "operation", "code", "given"),
    [
        ("skirt", "contoured_waistband", "band-too-round", {**CONTOURED, "upper": "40 cm", "cut_in": "one"}),
        ("skirt", "contoured_waistband", "band-negative", {**CONTOURED, "underlap": "-1 cm"}),
        ("skirt", "contoured_waistband", "band-too-short", {**CONTOURED, "depth": "50 cm"}),
        ("skirt", "belt", "belt-holes-beyond", {"beyond": "6 cm"}),
        ("skirt", "belt", "strip-too-short", {"girth": "1 cm", "beyond": "1 cm", "holes": 0}),
        (
            "skirt",
            "belt_loops",
            "loops-past-center",
            {"edges": BACK_OPENING, "first": "60 cm", "each_side": 2},
        ),
        ("bodice", "strap", "strap-length-unsaid", {**STRAP, "waist": None}),
        ("bodice", "strap", "strap-point-elsewhere", {**STRAP, "waist": "bodice.front/bust_point"}),
        ("bodice", "strap", "strap-too-short", {**STRAP, "length": "1 cm", "to_fit": "0 cm"}),
        (
            "bodice",
            "strap",
            "strap-above-shoulder",
            LOW_STRAP,
        ),
        (
            "skirt",
            "hook_and_eye",
            "hook-off-piece",
            {
                "hook": place("skirt.back/center_back", "skirt.back/waist_center", "5 mm"),
                "eye": place("skirt.back/center_back", "skirt.back/waist_center", "5 mm"),
                "eye_inside": "90 cm",
            },
        ),
    ],
)
def test_what_cannot_be_is_refused(base: str, operation: str, code: str, given: dict[str, Any]) -> None:
    assert refusal(skirt() if base == "skirt" else bodice(), operation, **given) == code


def test_a_waist_that_is_banded_gets_no_casing() -> None:
    banded = stepped(
        skirt(),
        (
            "waist_facing",
            {
                "edges": [
                    {"edge": "skirt.front/waist", "center": "skirt.front/waist_center"},
                    {"edge": "skirt.back/waist", "center": "skirt.back/waist_center"},
                ]
            },
        ),
    )
    assert refusal(banded, "elastic_casing") == "casing-sewn"


def test_belt_loops_are_counted_on_the_base_and_stay_in_every_size() -> None:
    done = stepped(trousers(), ("fly", FLY), ("belt_loops", {"edges": FLY_WAIST}))
    number = done.recipe.steps[-1].parameters["each_side"]
    for name in ("small-80", "plus-128"):
        pattern = replay(done.recipe, lower_sets()[name]).pattern
        assert sum(one.purpose == "belt loop" for one in pattern.notches.values()) == number + 1


def test_every_figure_of_closures_says_where_it_comes_from() -> None:
    found = [one for one in vars(figures).values() if isinstance(one, StyleFigure)]
    assert len(found) > 20
    assert all(one.source and one.grade and one.meaning for one in found)
    ranged = [one for one in found if isinstance(one, RangedFigure)]
    assert all(one.least <= one.value <= one.most for one in ranged)


def test_only_the_seam_between_front_and_back_is_marked_as_side_seam_on_a_band() -> None:
    """Counted by hand on six gores: each half of the waist passes two gore seams and a side seam."""
    gores = draft("gored_skirt", lower_sets()["medium-92"])
    starts = {
        "center_back": "waist_center",
        "side_back": "waist_back",
        "side_front": "waist_side",
        "center_front": "waist_back",
    }
    waist = [
        {"edge": f"gored_skirt.{panel}/waist", "starts_at": f"gored_skirt.{panel}/{start}"}
        for panel, start in starts.items()
    ]
    for step, more, halves in (("waistband", {}, 2), ("elastic_casing", {"made": "separate"}, 1)):
        pattern = stepped(gores, (step, {"edges": waist, **more})).pattern
        called = [one.purpose for name, one in pattern.notches.items() if "seam_notch" in name]
        assert called == ["panel", "side seam", "panel"] * halves, step
