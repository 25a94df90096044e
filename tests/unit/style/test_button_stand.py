"""Button stands: what is cut on, where buttons and holes lie, in every size and on two-sided bodies.

Outside: shapely and numpy measure the drawn pieces. Figures from memory or of common practice: a stand as
wide as its button, holes that begin 1/8 in beyond the center, as long as diameter and thickness, the first
button half its diameter and 1/4 in below the neck.
"""

from functools import cache
from typing import Any

import numpy as np
import pytest
from shapely import affinity
from shapely.geometry import Polygon, box

from notchbook.app.drafting import draft
from notchbook.checks.openings import openings
from notchbook.pattern import walk_seam
from notchbook.recipe import Replay, replay
from notchbook.style.closures.button_places import ButtonRoom, button_places
from support.closure_steps import (
    STAND,
    buttons,
    codes,
    holes,
    line,
    polygon,
    said_more,
    stepped,
    upper_sets,
)
from support.edge_steps import FRONT, bodice, necks, notes, refusal

DRESS_STAND = {
    "centers": [
        {"center": "dress.bodice_front/center_front", "top": "dress.bodice_front/neck_pit"},
        {"center": "dress.skirt_front/center_front", "top": "dress.skirt_front/waist_center"},
    ],
    "level": "dress.bodice_front/bust_point",
}


@cache
def stood() -> Replay:
    """The bodice of an invented woman with a stand."""
    return stepped(bodice(), ("button_stand", STAND))


def with_stand(**changes: Any) -> Replay:
    return stepped(bodice(), ("button_stand", {**STAND, **changes}))


@pytest.mark.parametrize(("width", "facing"), [("15 mm", "60 mm"), ("25 mm", "75 mm")])
def test_the_facing_is_the_mirror_of_the_front_about_the_fold(width: str, facing: str) -> None:
    beyond, deep = (float(one.split()[0]) for one in (width, facing))
    piece = with_stand(width=width, facing_width=facing).pattern.pieces[FRONT]
    whole, before = polygon(piece), polygon(bodice().pattern.pieces[FRONT])
    fold = next(one for one in piece.lines if one.kind == "fold_line")
    assert {fold.path.start.x, fold.path.end.x} == {beyond}
    turned = whole.intersection(box(beyond, -2000.0, 4000.0, 2000.0))
    assert turned.bounds[2] == pytest.approx(beyond + deep, abs=1e-6)
    laid = affinity.scale(turned, xfact=-1.0, yfact=1.0, origin=(beyond, 0.0))
    shell = whole.intersection(box(-4000.0, -2000.0, beyond, 2000.0))
    assert laid.difference(shell).area < 1.0
    assert before.difference(whole).area < 1e-3


def test_the_center_stays_and_what_was_promised_of_the_front_with_it() -> None:
    pattern = stood().pattern
    (center,) = [one for one in pattern.pieces[FRONT].lines if one.name == f"{FRONT}/center_front"]
    assert (center.path.start.x, center.path.end.x) == (0.0, 0.0)
    assert center.path.length == pytest.approx(bodice().pattern.edges[f"{FRONT}/center_front"].length)
    assert codes(stood()) == codes(bodice())
    assert pattern.pieces[FRONT].cut == "pair"
    marked = {one.purpose for name, one in pattern.notches.items() if name.startswith("button_stand")}
    assert marked == {"center"}


@pytest.mark.parametrize(("button", "thickness"), [("10 mm", "2 mm"), ("15 mm", "3 mm"), ("23 mm", "5 mm")])
def test_a_hole_across_begins_beyond_the_center_and_lets_the_button_through(
    button: str, thickness: str
) -> None:
    piece = with_stand(button=button, thickness=thickness).pattern.pieces[FRONT]
    needed = sum(float(one.split()[0]) for one in (button, thickness))
    for hole, place in zip(holes(piece), buttons(piece), strict=True):
        assert hole[0][0] == pytest.approx(3.0)  # 1/8 in beyond the center, from memory
        assert np.linalg.norm(hole[1] - hole[0]) == pytest.approx(needed)
        assert hole[:, 1] == pytest.approx([place[1], place[1]])
        assert place[0] == pytest.approx(0.0, abs=1e-9)
    stand = piece.bounds.max_x - 60.0
    assert stand == pytest.approx(float(button.split()[0]))  # as wide as the button, from memory


def test_a_hole_along_the_center_lies_on_it() -> None:
    piece = with_stand(holes="along").pattern.pieces[FRONT]
    for hole, place in zip(holes(piece), buttons(piece), strict=True):
        assert hole[:, 0] == pytest.approx([0.0, 0.0], abs=1e-9)
        assert hole[0][1] - place[1] == pytest.approx(3.0)
        assert hole[0][1] - hole[1][1] == pytest.approx(18.0)


@pytest.mark.parametrize("name", ["small-80", "medium-92", "large-116", "very-full-bust", "uneven"])
def test_in_every_size_as_many_buttons_evenly_spaced_one_at_the_bust(name: str) -> None:
    recipe = stood().recipe
    pattern = replay(recipe, upper_sets()[name]).pattern
    for piece in pattern.pieces.values():
        places = buttons(piece)
        if len(places) == 0:
            continue
        points = {mark.name.split("@")[0]: mark.position for mark in piece.marks}
        gaps = -np.diff(places[:, 1])
        assert gaps == pytest.approx(gaps[0], abs=1e-6)
        assert len(places) == recipe.steps[-1].parameters["number"]
        assert np.abs(places[:, 1] - points[f"{FRONT}/bust_point"].y).min() < 0.01
        top = max(one.path.start.y for one in piece.lines if "center_front" in one.name)
        assert top - places[0][1] == pytest.approx(15.0 / 2.0 + 6.0)
    assert said_more(stood(), "bodice", name) == set()


def test_a_given_spacing_is_the_same_in_every_size() -> None:
    """Zero growth: the trade keeps the spacing of buttons in every size (trade articles)."""
    recipe = with_stand(spacing="8 cm", level=None).recipe
    found = []
    for name in ("small-80", "medium-92", "large-116"):
        there = replay(recipe, upper_sets()[name])
        assert there.suspended is None, there.suspended.error
        found.append(np.diff(buttons(there.pattern.pieces[FRONT])[:, 1]))
    assert np.array(found) == pytest.approx(-80.0)


def test_shared_out_they_reach_from_the_first_to_the_last() -> None:
    laid = button_places(ButtonRoom(10.0, 310.0), 4, None, None)
    assert laid.places == pytest.approx(np.linspace(10.0, 310.0, 4))


def test_a_level_that_leaves_no_room_below_is_given_up_and_told() -> None:
    laid = button_places(ButtonRoom(10.0, 310.0, 160.0), 5, None, 1)
    assert laid.places[-1] == pytest.approx(310.0)
    assert laid.off_level == pytest.approx(0.0)  # 10, 85, 160: another one lies there
    assert button_places(ButtonRoom(10.0, 310.0, 200.0), 4, None, 1).off_level == pytest.approx(10.0)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("button-off-level", {"number": 4, "above_level": 1}),
        ("buttons-far-apart", {"number": 2, "level": None}),
        ("buttons-close", {"number": 25, "level": None}),
    ],
)
def test_rows_that_would_not_hold_or_not_button_are_told(code: str, changes: dict[str, Any]) -> None:
    assert code in notes(bodice(), "button_stand", **{**STAND, **changes})
    assert code not in notes(bodice(), "button_stand", **STAND)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("stand-too-narrow", {"width": "9 mm"}),
        ("stand-facing-too-narrow", {"facing_width": "2 cm"}),
        ("stand-facing-too-wide", {"facing_width": "12 cm"}),
        ("buttons-past-end", {"spacing": "12 cm", "number": 6, "level": None}),
        ("buttons-no-room", {"first": "30 cm", "last": "20 cm"}),
        ("buttons-level-elsewhere", {"level": "bodice.back/nape"}),
        ("amount-not-positive", {"button": "0 mm"}),
        ("name-lost", {"centers": [{"center": f"{FRONT}/nothing", "top": f"{FRONT}/neck_pit"}]}),
        ("end-lost", {"centers": [{"center": f"{FRONT}/center_front", "top": f"{FRONT}/shoulder_point"}]}),
        ("closure-edge-curved", {"centers": [{"center": f"{FRONT}/armhole", "top": f"{FRONT}/underarm"}]}),
    ],
)
def test_stands_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(bodice(), "button_stand", **{**STAND, **changes}) == code


def test_an_edge_that_is_sewn_elsewhere_is_no_center() -> None:
    center = [{"center": f"{FRONT}/shoulder", "top": f"{FRONT}/side_neck_point"}]
    assert refusal(bodice(), "button_stand", centers=center, number=2) == "closure-sewn-elsewhere"


def test_a_center_seam_opens_and_is_sewn_no_more() -> None:
    seamed = stepped(bodice(), ("center_seam", {"center": f"{FRONT}/center_front"}))
    done = stepped(seamed, ("button_stand", STAND))
    assert "center_seam/center_front" in seamed.pattern.seams
    assert "center_seam/center_front" not in done.pattern.seams
    assert done.pattern.pieces[FRONT] == stood().pattern.pieces[FRONT]


def test_a_v_neck_runs_on_over_the_stand_and_the_first_button_lies_below_it() -> None:
    neck = {"necks": necks("v", "8 cm"), "gape_dart": None}
    done = stepped(bodice(), ("change_neckline", neck), ("button_stand", {**STAND, "facing_width": "50 mm"}))
    pattern = done.pattern
    coming, going = (
        pattern.edges[f"{FRONT}/neck"].path,
        pattern.edges["button_stand.front/lap_top"].path,
    )
    assert abs(coming.tangent_at(0.0).cross(going.tangent_at(0.0))) < 1e-6
    lowest = min(going.start.y, going.end.y)
    assert buttons(pattern.pieces[FRONT])[0][1] == pytest.approx(lowest - 13.5)
    assert not codes(done) & {"edge-kinked", "corner-sharp"}


def test_down_a_dress_the_row_goes_on_and_the_stands_are_sewn_at_the_waist() -> None:
    dress = draft("dress", upper_sets()["medium-92"], {})
    done = stepped(dress, ("button_stand", DRESS_STAND))
    pattern = done.pattern
    bodice_part, skirt_part = (pattern.pieces[f"dress.{one}_front"] for one in ("bodice", "skirt"))
    upper, lower = buttons(bodice_part), buttons(skirt_part)
    waist = skirt_part.line("dress.skirt_front/center_front").path.start.y
    assert lower[0][1] - waist == pytest.approx(upper[-1][1] - (upper[0][1] - upper[1][1]), abs=1e-6)
    assert len(upper) + len(lower) == done.recipe.steps[-1].parameters["number"]
    walk = walk_seam(pattern, pattern.seams["button_stand/lap"])
    assert walk.misfit == pytest.approx(0.0, abs=0.1)
    assert codes(done) - codes(dress) <= {"button-on-seam"}


def test_without_a_facing_the_edge_is_left_to_be_faced() -> None:
    piece = with_stand(facing="none").pattern.pieces[FRONT]
    assert piece.bounds.max_x == pytest.approx(15.0)
    edge = next(one for one in piece.outline if one.name == "button_stand.front/lap")
    assert line(edge.path).length == pytest.approx(piece.line(f"{FRONT}/center_front").path.length)
    assert Polygon([(p.x, p.y) for p in piece.sew_line.flattened(0.01)]).is_valid


def test_a_facing_of_its_own_is_what_would_have_been_cut_on() -> None:
    done = with_stand(facing="separate")
    facing = polygon(done.pattern.pieces["button_stand.front_facing"])
    shell = polygon(done.pattern.pieces[FRONT])
    assert facing.difference(shell).area < 1.0
    strip = shell.intersection(box(15.0 - 60.0, -2000.0, 15.0, 2000.0))
    assert facing.symmetric_difference(strip).area < 1.0
    assert walk_seam(done.pattern, done.pattern.seams["button_stand/front_facing"]).misfit == pytest.approx(
        0.0
    )
    assert codes(done) == codes(bodice())


def test_a_waist_that_buttons_falls_open_and_has_nothing_to_pass() -> None:
    """The waist seam of a dress is closed all round and must go over the bust; buttoned open it need not."""
    dress = draft("dress", upper_sets()["medium-92"], {})
    done = stepped(dress, ("button_stand", DRESS_STAND))
    assert "waist" in {one.kind for one in openings(dress.pattern)}
    assert "waist" not in {one.kind for one in openings(done.pattern)}


def test_the_last_button_lies_a_hand_above_a_hem_and_close_to_a_waist() -> None:
    """About 10 cm stay free above a hem, so that one can stride; at a waist, to which a band or a skirt is
    sewn, the last lies as the first does: half a button and 1/4 in from the end (common practice)."""
    torso = draft("torso", bodice().measures, {})
    center = {"center": "torso.front/center_front", "top": "torso.front/neck_pit"}
    hemmed = stepped(torso, ("button_stand", {"centers": [center], "button": "16 mm", "number": 6}))
    waisted = with_stand(level=None, button="16 mm", number=4)
    for run, piece, end, clear in (
        (hemmed, "torso.front", "torso.front/hem_center", 100.0),
        (waisted, FRONT, "bodice.front/waist_center", 14.0),
    ):
        made = run.pattern.pieces[piece]
        assert min(buttons(made)[:, 1]) - made.points[end].y == pytest.approx(clear, abs=0.01)
