"""Flies: the opening in the front seam, facing and shield, the J, and the waistband that goes with them.

Outside: shapely and numpy measure the drawn pieces. Figures of common practice without a source: extension 35
to 40 mm, shield 5 to 8 mm wider and longer, zip stop 10 mm above the crotch notch; left over right for men.
"""

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest
from shapely import affinity

from notchbook.app.drafting import draft
from notchbook.app.papers import cut_ready, job_of
from notchbook.body.charts import shipped_chart
from notchbook.checks.openings import openings
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Place, locate, walk_seam
from notchbook.recipe import Replay, replay
from notchbook.style.closures.fly_cut import notch_depth
from support.closure_steps import (
    BACK_OPENING,
    FLY,
    FLY_BAND,
    FLY_WAIST,
    codes,
    line,
    lower_sets,
    outside_length,
    polygon,
    said_more,
    stepped,
)
from support.edge_steps import misfits, refusal, skirt, trousers

FRONT = "trousers.front"
BY_LENGTH = {"length": "15 cm", "notch": None}


@cache
def flown() -> Replay:
    """The trousers of an invented woman with a fly."""
    return stepped(trousers(), ("fly", FLY))


@cache
def banded() -> Replay:
    """The same with the waistband and belt loops."""
    return stepped(flown(), ("waistband", FLY_BAND), ("belt_loops", {"edges": FLY_WAIST}))


def test_the_front_keeps_its_shape_and_is_sewn_below_the_fly_only() -> None:
    pattern, before = flown().pattern, trousers().pattern
    assert polygon(pattern.pieces[FRONT]).equals_exact(polygon(before.pieces[FRONT]), 1e-9)
    whole = outside_length(before, f"{FRONT}/crotch_seam")
    opened = outside_length(pattern, f"{FRONT}/crotch_seam/fly")
    sewn = walk_seam(pattern, pattern.seams["trousers/front_crotch_seam"])
    assert sewn.first == pytest.approx(whole - opened, abs=0.01)
    notch = locate(before, before.notches[f"{FRONT}/crotch_notch"].place)
    assert before.edges[f"{FRONT}/crotch_seam"].length - notch.distance == pytest.approx(opened, abs=0.01)


def test_the_zip_stops_10_mm_above_the_opening_on_front_facing_and_shield() -> None:
    pattern = flown().pattern
    opened = outside_length(pattern, f"{FRONT}/crotch_seam/fly")
    stops = [one for one in pattern.notches.values() if one.purpose == "zip stop"]
    assert len(stops) == 3
    assert [one.place.amount for one in stops] == pytest.approx([opened - 10.0] * 3, abs=0.01)


@pytest.mark.parametrize(("width", "more"), [("35 mm", "5 mm"), ("38 mm", "6 mm"), ("40 mm", "8 mm")])
def test_the_shield_is_wider_and_longer_than_the_facing(width: str, more: str) -> None:
    pattern = stepped(trousers(), ("fly", {**FLY, "width": width, "shield_more": more})).pattern
    wide, longer = (float(one.split()[0]) for one in (width, more))
    opened = outside_length(pattern, f"{FRONT}/crotch_seam/fly")
    west, south, east, north = polygon(pattern.pieces["fly.shield"]).bounds
    assert (east - west) / 2.0 == pytest.approx(wide + longer)  # folded along its middle
    assert north - south == pytest.approx(opened + longer, abs=0.01)
    upper = line(pattern.edges["fly.facing/upper"].path)
    assert upper.length == pytest.approx(wide, abs=0.6)
    assert polygon(pattern.pieces["fly.facing"]).area < wide * opened


@pytest.mark.parametrize("over", ["left", "right"])
def test_the_facing_lies_on_the_side_that_laps_and_is_its_mirror_face_up(over: str) -> None:
    pattern = stepped(trousers(), ("fly", {**FLY, "over": over})).pattern
    facing, shield = pattern.pieces["fly.facing"], pattern.pieces["fly.shield"]
    assert (facing.side, shield.side) == (over, "left" if over == "right" else "right")
    assert pattern.seams["fly/facing"].second[0].side == over
    # The front is drawn as a right one face up; a left one is its mirror, and what lies behind it the mirror
    # of that again: the facing of the left lies on the drawn front as it is.
    drawn = polygon(pattern.pieces[FRONT])
    laid = polygon(facing)
    if over == "right":
        laid = affinity.scale(laid, xfact=-1.0, yfact=1.0, origin=(0.0, 0.0))
    assert laid.difference(drawn).area < 1.0


@pytest.mark.parametrize("over", ["left", "right"])
def test_where_the_sides_differ_the_facing_is_the_mirror_of_its_own_front(over: str) -> None:
    """Two fronts, each drawn face up: what lies behind either of them, face up, is its mirror."""
    done = stepped(trousers(), ("fly", {**FLY, "over": over}))
    pattern = replay(done.recipe, lower_sets()["uneven"]).pattern
    facing, front = pattern.pieces["fly.facing"], pattern.pieces[f"{FRONT}@{over}"]
    turned = affinity.scale(polygon(facing), xfact=-1.0, yfact=1.0, origin=(0.0, 0.0))
    assert turned.difference(polygon(front)).area < 1.0
    assert polygon(facing).difference(polygon(front)).area > 100.0


@pytest.mark.parametrize("higher", ["left", "right"])
def test_where_the_crotch_curves_begin_at_two_heights_the_fly_opens_past_neither(higher: str) -> None:
    """One notch moved 7 mm up on a body whose sides differ: the fly opens down to that one on both."""
    pattern = replay(trousers().recipe, lower_sets()["uneven"]).pattern
    seam, top = f"{FRONT}/crotch_seam", f"{FRONT}/waist_center"
    depth = notch_depth(pattern, seam, top, FLY["notch"])
    notch = pattern.notches[f"{FRONT}/crotch_notch@{higher}"]
    place = Place(f"{seam}@{higher}", f"{top}@{higher}", depth - 7.0)
    moved = pattern.with_notches(replace(notch, place=place))
    assert notch_depth(moved, seam, top, FLY["notch"]) == pytest.approx(depth - 7.0, abs=0.01)


def test_a_fly_past_the_crotch_notch_leaves_it_as_a_lone_mark() -> None:
    done = stepped(trousers(), ("fly", {**FLY, "length": "19 cm"}))
    notch = done.pattern.notches[f"{FRONT}/crotch_notch"]
    assert notch.seam is None
    assert "notch-off-seam" not in codes(done)
    assert flown().pattern.notches[f"{FRONT}/crotch_notch"].seam == "trousers/front_crotch_seam"


@pytest.mark.parametrize("size", ["116", "122"])
def test_the_free_edge_of_the_facing_has_no_sliver_where_the_waist_nearly_meets_it(size: str) -> None:
    """Sizes of the computed chart in which the waist ended 0.06 and 0.02 mm above the free edge."""
    drafted = draft("trousers", shipped_chart("women").size(size), {"silhouette": "straight"})
    pattern = stepped(drafted, ("fly", FLY)).pattern
    free = pattern.edges["fly.facing/edge"].path
    assert min(segment.length for segment in free.segments) > 1.0


def test_the_stitches_run_inside_the_facing_and_end_at_the_lower_end_of_the_opening() -> None:
    pattern = flown().pattern
    (stitches,) = [one for one in pattern.pieces[FRONT].lines if one.kind == "stitch_line"]
    end = pattern.pieces[FRONT].points["fly.front/fly_end"]
    assert stitches.path.end.distance_to(end) < 1e-6
    assert line(stitches.path).difference(polygon(pattern.pieces["fly.facing"]).buffer(0.5)).length < 5.0


@pytest.mark.parametrize("name", ["small-80", "plus-128", "man-100", "child-116", "uneven"])
def test_fly_band_and_loops_are_right_on_other_bodies(name: str) -> None:
    assert said_more(banded(), "trousers", name) == set()


def test_on_a_body_whose_sides_differ_there_is_one_facing_and_one_shield() -> None:
    pattern = replay(banded().recipe, lower_sets()["uneven"]).pattern
    assert [name for name in pattern.pieces if name.startswith("fly.")] == ["fly.facing", "fly.shield"]
    assert pattern.seams["fly/facing"].second[0].edge == f"{FRONT}/crotch_seam/fly@left"
    assert pattern.seams["fly/shield"].second[0].edge == f"{FRONT}/crotch_seam/fly@right"
    off = misfits(pattern)
    assert {name: one for name, one in off.items() if name.split("/")[0] in ("fly", "waistband")} == (
        pytest.approx({name: 0.0 for name in off if name.split("/")[0] in ("fly", "waistband")}, abs=0.05)
    )


def test_the_band_in_two_goes_with_the_fly() -> None:
    pattern = banded().pattern
    right, left = (polygon(pattern.pieces[f"waistband.band_{side}"]).bounds for side in ("right", "left"))
    waist = outside_length(pattern, *(f"{FRONT}/waist/{part}" for part in ("center", "side")))
    waist += outside_length(pattern, *(f"trousers.back/waist/{part}" for part in ("center", "side")))
    assert right[2] - right[0] == pytest.approx(waist + 44.0, abs=0.05)
    assert left[2] - left[0] == pytest.approx(waist, abs=0.05)
    assert walk_seam(pattern, pattern.seams["waistband/band_center"]).misfit == 0.0


def ends_from_left(pattern: Any, name: str) -> list[str]:
    """The lower corners of a band from left to right as it lies face up, its sewn edge below."""
    piece = pattern.pieces[name]
    lowest = min(edge.path.start.y for edge in piece.outline)
    corners = [(edge.path.start.x, edge.start) for edge in piece.outline if edge.path.start.y == lowest]
    return [point.rsplit("/", 1)[1] for _, point in sorted(corners)]


def test_a_band_face_up_has_the_wearers_sides_as_they_are_seen() -> None:
    """Seen from outside with the opening behind, her right is at the left hand; opening in front, seen from
    behind, her left is. The underlap lies at the end of the side that is under."""
    behind = stepped(skirt(), ("waistband", {"edges": BACK_OPENING})).pattern
    assert ends_from_left(behind, "waistband.band") == [
        "right_opening",
        "center",
        "left_opening",
        "underlap_lower",
    ]
    front = stepped(flown(), ("waistband", {**FLY_BAND, "cut_in": "one"})).pattern
    assert ends_from_left(front, "waistband.band") == [
        "left_opening",
        "center",
        "right_opening",
        "underlap_lower",
    ]


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("fly-too-long", {"length": "30 cm"}),
        ("fly-too-short", {"length": "7 cm"}),
        ("fly-length-unsaid", {"notch": None}),
        ("name-lost", {"notch": f"{FRONT}/no_notch"}),
        ("name-lost", {"edge": f"{FRONT}/nothing"}),
        ("end-lost", {"top": f"{FRONT}/hem_side"}),
        ("amount-not-positive", {"width": "0 mm"}),
        ("closure-sewn-elsewhere", {"edge": f"{FRONT}/side_seam", "top": f"{FRONT}/waist_side", **BY_LENGTH}),
        ("fly-notch-elsewhere", {"edge": f"{FRONT}/side_seam", "top": f"{FRONT}/waist_side"}),
        ("fly-notch-elsewhere", {"notch": "trousers.back/crotch_notch"}),
        ("fly-notch-elsewhere", {"notch": f"{FRONT}/hip_notch"}),
    ],
)
def test_flies_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(trousers(), "fly", **{**FLY, **changes}) == code


def test_without_the_fly_the_waist_does_not_go_over_the_hips() -> None:
    """A waist that is closed all round is smaller than the hips; an opening counts twice its length (facts of
    the trade)."""
    hips = trousers().measures.value("hip_girth")
    closed = stepped(trousers(), ("waistband", {**FLY_BAND, "underlap": "0 mm"})).pattern
    widest = [
        next(one.widest for one in openings(pattern) if one.kind == "waist")
        for pattern in (closed, banded().pattern)
    ]
    assert widest[0] < hips < widest[1]


def test_loops_stand_evenly_apart_and_clear_of_darts_and_seams() -> None:
    pattern = banded().pattern
    parameters = banded().recipe.steps[-1].parameters
    notches = [one for one in pattern.notches.values() if one.purpose == "belt loop"]
    assert len(notches) == parameters["each_side"] + 1  # one front serves both sides
    strip = pattern.pieces["belt_loops.loops"]
    west, _, east, _ = polygon(strip).bounds
    number = 2 * parameters["each_side"] + 1
    assert east - west == pytest.approx(number * (40.0 + 10.0 + 2.0 * 12.0))
    assert sum(one.kind == "cut_line" for one in strip.lines) == number - 1
    places = sorted(locate(pattern, one.place).position.x for one in notches)
    others = [locate(pattern, one.place) for one in pattern.notches.values() if one.purpose != "belt loop"]
    for one in notches:
        at = locate(pattern, one.place)
        near = [at.position.distance_to(other.position) for other in others if other.piece == at.piece]
        assert min(near, default=99.0) > 12.0  # double notches stand 10 to 13 mm apart: common practice
    assert np.diff(places).min() > 20.0


@cache
def in_three() -> Replay:
    """A fly with a band that has seams at the sides, a little of the waist eased in."""
    return stepped(flown(), ("waistband", {**FLY_BAND, "cut_in": "three", "ease": "6 mm"}))


def test_a_band_in_three_has_its_seams_where_front_and_back_meet() -> None:
    pattern = in_three().pattern
    front = outside_length(pattern, *(f"{FRONT}/waist/{part}" for part in ("center", "side")))
    back = outside_length(pattern, *(f"trousers.back/waist/{part}" for part in ("center", "side")))
    share = 1.0 - 3.0 / (front + back)
    widths = {}
    for word in ("right", "center", "left"):
        west, _, east, _ = polygon(pattern.pieces[f"waistband.band_{word}"]).bounds
        widths[word] = east - west
    assert widths == pytest.approx(
        {"right": front * share + 44.0, "center": 2.0 * back * share, "left": front * share}, abs=0.05
    )
    off = {name: one for name, one in misfits(pattern).items() if name.startswith("waistband/")}
    assert set(off) == {f"waistband/{one}_{side}" for one in ("waist", "band") for side in ("right", "left")}
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.05)
    titles = {pattern.pieces[f"waistband.band_{word}"].title for word in widths}
    assert titles == {"Right front waistband", "Back waistband", "Left front waistband"}


@pytest.mark.parametrize("name", ["small-80", "uneven"])
def test_a_band_in_three_is_right_on_other_bodies(name: str) -> None:
    assert said_more(in_three(), "trousers", name) == set()


def test_without_a_side_there_is_no_band_in_three() -> None:
    only = {**FLY_BAND, "edges": FLY_WAIST[:1], "cut_in": "three"}
    assert refusal(flown(), "waistband", **only) == "band-no-side"


def test_the_cutter_gets_each_piece_of_the_trousers_as_often_as_they_have_it() -> None:
    """Counted by hand from a sketch: two fronts and backs, one facing and one shield, a band in two, and the
    strip for the loops; facing and band are fused."""
    ready = cut_ready(job_of(banded(), "2026-01-15"))
    counted = {piece.title: {one.material: one.panels for one in piece.quantities} for piece in ready.pieces}
    assert counted == {
        "Front": {"self": 2},
        "Back": {"self": 2},
        "Left fly facing": {"self": 1, "fusible": 1},
        "Right fly shield": {"self": 1},
        "Right waistband": {"self": 1, "fusible": 1},
        "Left waistband": {"self": 1, "fusible": 1},
        "Belt loops": {"self": 1},
    }


def test_the_fly_is_closed_before_the_band_goes_on_and_the_loops_before_it() -> None:
    """The order of the workroom (common practice): the zip on the shield, before this is sewn on and covers
    it; its other side on the facing; the loops basted on the closed waist, then the waistband."""
    orders = [one.text for one in sewing_order(banded().pattern).lines]
    first = {
        word: next(index for index, text in enumerate(orders) if word in text)
        for word in (
            "Baste one tape of the zip to the sewn edge of the shield",
            "fly shield to the wearer's",
            "sew the other tape of the zip to the facing",
            "Stitch the J",
            "Baste the loops",
            "back: waist",
            "Fold the waistband",
            "Turn the upper ends of the loops",
        )
    }
    assert list(first.values()) == sorted(first.values())
    facing = next(index for index, text in enumerate(orders) if "fly facing to the wearer's" in text)
    assert facing < first["sew the other tape of the zip to the facing"]
    assert sewing_order(banded().pattern).gaps == ()
