"""Patch pockets: where they lie, how large they are, their marks, hems and flaps."""

import math
from typing import Any

import pytest
from shapely.geometry import LineString

from notchbook.finish import finish, production_table
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import walk_seam
from notchbook.recipe import add_step, replay
from support.edge_steps import FRONT, applied, area, bodice, changed, necks, notes, refusal, skirt
from support.pockets import BODIES, PATCH, away, drafted_for, line_of, new_findings, polygon_of, uneven

PIECE = "patch_pocket.front"
EIGHTH = 25.4 / 8.0
"""Drill holes stand 1/8 in inside the corners of a pocket (vocational textbook, 2024)."""


def test_the_pocket_lies_as_far_from_both_edges_as_asked() -> None:
    pattern = changed(skirt(), "patch_pocket", **{**PATCH, "below": "skirt.front/waist", "down": "12 cm"})
    front, corner = pattern.pieces["skirt.front"], pattern.pieces[PIECE].points[f"{PIECE}/near_upper"]
    waist = [line_of(edge.path) for edge in front.outline if "/waist/" in edge.name]
    upright = LineString([(corner.x, -1000.0), (corner.x, 1000.0)])
    met = [crossed.bounds[1] for line in waist if not (crossed := line.intersection(upright)).is_empty]
    assert met[0] - corner.y == pytest.approx(120.0, abs=0.02)
    assert away(corner, front.edge("skirt.front/center_front").path) == pytest.approx(50.0, abs=0.001)


@pytest.mark.parametrize(
    ("bottom", "wanted"),
    [
        ("square", 120.0 * 140.0),
        ("round", 120.0 * 140.0 - 2.0 * (1.0 - math.pi / 4.0) * 30.0**2),
        ("pointed", 120.0 * 110.0 + 120.0 * 30.0 / 2.0),
        ("cut", 120.0 * 140.0 - 30.0**2),
    ],
)
def test_each_shape_has_its_area(bottom: str, wanted: float) -> None:
    pattern = changed(skirt(), "patch_pocket", **PATCH, bottom=bottom, corner="3 cm")
    assert area(pattern.pieces[PIECE]) == pytest.approx(wanted, rel=2e-4)
    drawn = pattern.pieces["skirt.front"].line(f"{PIECE}/pocket_line").path
    assert polygon_of(drawn).area == pytest.approx(wanted, rel=2e-4)  # the line is open along the opening


@pytest.mark.parametrize("bottom", ["square", "round", "pointed", "cut"])
def test_holes_are_drilled_inside_every_corner(bottom: str) -> None:
    pattern = changed(skirt(), "patch_pocket", **PATCH, bottom=bottom, angle=20)
    pocket, front = pattern.pieces[PIECE], pattern.pieces["skirt.front"]
    drills = [mark.position for mark in front.marks if mark.kind == "drill"]
    assert len(drills) == len(pocket.outline)
    assert all(pocket.sew_line.contains(place) for place in drills)
    inside = [away(place, pocket.sew_line) for place in drills]
    assert inside == pytest.approx([EIGHTH] * len(drills), abs=0.25)


def test_the_hem_is_turned_down_and_both_halves_of_the_front_are_marked() -> None:
    pattern = changed(skirt(), "patch_pocket", **PATCH)
    cut = {piece.name: piece for piece in finish(pattern, production_table())}
    hem = cut[PIECE].edge(f"{PIECE}/opening")
    assert 25.0 <= hem.width <= 32.0  # 1 to 1 1/4 in, common practice, no source
    assert cut[PIECE].quantities[0].text == "cut 1 pair"
    holes = [hole for hole in cut["skirt.front"].drills if PIECE in hole.name]
    assert sum(hole.position.x for hole in holes) == pytest.approx(0.0, abs=1e-6)
    assert len(holes) == 12


def test_a_pocket_beside_the_hip_is_measured_from_the_waist_led_on() -> None:
    """The skirt is wider there than its waist, which is led straight on beyond the side."""
    given = {**PATCH, "below": "skirt.front/waist", "down": "18 cm", "beside": "skirt.front/side_seam"}
    pattern = changed(skirt(), "patch_pocket", **{**given, "inward": "15 mm", "width": "10 cm"})
    front, corner = pattern.pieces["skirt.front"], pattern.pieces[PIECE].points[f"{PIECE}/near_upper"]
    waist = front.points["skirt.front/waist_side"]
    assert corner.x < waist.x
    assert waist.y - corner.y == pytest.approx(180.0, abs=4.0)
    side = line_of(pattern.edges["skirt.front/side_seam"].path)
    level = LineString([(corner.x - 100.0, corner.y), (corner.x, corner.y)])
    assert corner.x - level.intersection(side).bounds[0] == pytest.approx(15.0, abs=0.02)


def test_a_pocket_at_an_angle_keeps_the_grain_of_its_piece_unless_told() -> None:
    for grain, degrees in (("matched", 90.0), ("own", 75.0), ("along", 165.0), ("bias", 45.0)):
        pattern = changed(skirt(), "patch_pocket", **PATCH, angle=15, grain=grain)
        along = pattern.edges[f"{PIECE}/opening"].path
        assert abs(math.degrees(math.atan2(along.end.y - along.start.y, along.end.x - along.start.x))) in (
            pytest.approx(15.0),
            pytest.approx(165.0),
        )
        assert pattern.pieces[PIECE].grain.degrees % 180.0 == pytest.approx(degrees % 180.0)


def test_a_flap_covers_the_opening_and_its_under_side_is_smaller() -> None:
    pattern = changed(skirt(), "patch_pocket", **PATCH, flap=True, flap_bottom="pointed", cloth="heavy")
    flap = pattern.edges["patch_pocket.front_flap/opening"]
    assert flap.length - 120.0 == pytest.approx(6.0)
    walk = walk_seam(pattern, pattern.seams["patch_pocket/front_flap_edge"])
    assert walk.misfit == pytest.approx(0.0, abs=1e-9)
    under = pattern.pieces["patch_pocket.front_flap_under"].bounds
    outer = pattern.pieces["patch_pocket.front_flap"].bounds
    eighth = 25.4 / 8.0  # the turn of heavy cloth, from memory
    assert outer.width - under.width == pytest.approx(2.0 * eighth, abs=0.1)
    assert outer.height - under.height == pytest.approx(eighth, abs=0.1)
    front = pattern.pieces["skirt.front"]
    line = front.line("patch_pocket.front/flap_line").path
    pocket = [
        front.line("patch_pocket.front/pocket_line").path.start,
        pattern.pieces[PIECE].points[f"{PIECE}/far_upper"],
    ]
    ends = sorted((line.start, line.end), key=lambda one: one.x)
    for end, corner, beyond in zip(ends, sorted(pocket, key=lambda one: one.x), (-3.0, 3.0), strict=True):
        # 2 to 3 mm wider at each end and 10 to 20 mm above the opening (common practice, no source)
        assert (end.x - corner.x, end.y - corner.y) == pytest.approx((beyond, 15.0))
    assert {"flap_line", "pocket_line"} <= {
        line.name.rsplit("/", 1)[-1] for line in pattern.pieces["skirt.front"].lines
    }


@pytest.mark.parametrize("body", BODIES)
def test_patch_pockets_are_clean_on_every_body(body: str) -> None:
    before = drafted_for("skirt", body)
    width = {**PATCH, "inward": "1/20 hip_girth", "width": "1/8 hip_girth"}
    assert new_findings(before, applied(before, "patch_pocket", **width)) == []


def test_each_side_of_an_uneven_body_gets_its_own_pocket() -> None:
    before = uneven("skirt")
    pattern = changed(before, "patch_pocket", **PATCH)
    assert f"{PIECE}@right" in pattern.index or PIECE in pattern.pieces
    marks = [mark.name for mark in pattern.pieces["skirt.front"].marks if mark.kind == "drill"]
    assert {name.rpartition("@")[2] for name in marks} == {"left", "right"}


def test_a_pocket_may_be_on_one_side_alone() -> None:
    run = skirt()
    recipe = add_step(run.recipe, "patch_pocket", PATCH, base=run.measures, side="left")
    done = replay(recipe, run.measures)
    assert done.suspended is None
    assert [name for name in done.pattern.pieces if name.startswith("patch_pocket")] == [f"{PIECE}@left"]
    assert done.pattern.pieces[f"{PIECE}@left"].cut == "single"


def test_the_hem_of_the_pocket_is_turned_before_it_is_sewn_on() -> None:
    keys = [line.key for line in sewing_order(changed(skirt(), "patch_pocket", **PATCH)).lines]
    assert keys.index("patch_pocket/pocket_hemmed") < keys.index("patch_pocket/pocket_sewn")
    assert f"{PIECE}/hem_line" not in keys


def test_a_large_hand_needs_a_larger_opening() -> None:
    run = skirt()
    large = run.measures.with_value("hand_girth", 240.0)  # half of it and a centimeter are 13 cm
    recipe = add_step(run.recipe, "patch_pocket", PATCH, base=large)
    told = [note for note in replay(recipe, large).notes if note.code == "pocket-under-hand"]
    assert [(note.measured, note.wanted) for note in told] == [(120.0, 130.0)]


def test_a_narrow_opening_is_told() -> None:
    assert "pocket-under-hand" in notes(skirt(), "patch_pocket", **{**PATCH, "width": "9 cm"})
    assert "pocket-under-hand" not in notes(skirt(), "patch_pocket", **PATCH)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("pocket-over-edge", {"inward": "2 mm", "angle": -10}),
        ("pocket-over-edge", {"down": "40 cm"}),
        ("pocket-over-dart", {"below": "skirt.front/waist", "down": "6 cm"}),
        ("pocket-nowhere", {"below": "skirt.front/waist", "inward": "60 cm"}),
        ("pocket-edges-apart", {"beside": "skirt.back/side_seam"}),
        ("pocket-corner-large", {"corner": "7 cm"}),
        ("amount-outside-trade", {"flap": True, "flap_above": "6 cm"}),
        ("amount-not-positive", {"width": "0 cm"}),
        ("name-lost", {"below": "skirt.front/nowhere"}),
        ("name-lost", {"beside": "skirt.front/nowhere"}),
        ("pocket-nowhere", {"beside": "skirt.front/hip_line"}),
    ],
)
def test_patch_pockets_that_cannot_be_are_refused(code: str, changes: dict[str, Any]) -> None:
    assert refusal(skirt(), "patch_pocket", **{**PATCH, **changes}) == code


def test_a_breast_pocket_goes_with_the_piece_after_a_changed_neckline() -> None:
    lowered = applied(bodice(), "change_neckline", necks=necks("v", "6 cm"), width="1 cm")
    given = {
        "below": f"{FRONT}/shoulder",
        "down": "14 cm",
        "beside": f"{FRONT}/center_front",
        "inward": "8 cm",
        "width": "9 cm",
        "depth": "10 cm",
        "bottom": "pointed",
    }
    done = applied(lowered, "patch_pocket", **given)
    assert new_findings(lowered, done) == []
    corner = done.pattern.pieces["patch_pocket.front"].points["patch_pocket.front/near_upper"]
    assert away(corner, done.pattern.edges[f"{FRONT}/center_front"].path) == pytest.approx(80.0, abs=0.001)
    over_bust = {**given, "below": f"{FRONT}/bust_line/center", "down": "-8 cm", "depth": "6 cm"}
    levelled = changed(bodice(), "patch_pocket", **over_bust)
    level = levelled.pieces[FRONT].line(f"{FRONT}/bust_line/center").path
    assert levelled.pieces["patch_pocket.front"].bounds.max_y == pytest.approx(level.start.y + 80.0, abs=0.01)


def test_a_pocket_is_measured_from_the_center_line_of_a_front_that_buttons() -> None:
    stand: dict[str, Any] = {
        "centers": [{"center": "bodice.front/center_front", "top": "bodice.front/neck_pit"}],
        "width": "18 mm",
    }
    buttoned = applied(bodice(), "button_stand", **stand)
    where = {"below": f"{FRONT}/across_chest_line", "down": "1 cm", "beside": f"{FRONT}/center_front"}
    size = {"inward": "4 cm", "width": "5 cm", "depth": "3 cm", "bottom": "square"}
    recipe = add_step(buttoned.recipe, "patch_pocket", {**where, **size}, base=buttoned.measures)
    pattern = replay(recipe, buttoned.measures).pattern
    near = pattern.pieces[PIECE].points[f"{PIECE}/near_upper"]
    center = pattern.pieces[FRONT].line(f"{FRONT}/center_front").path
    assert away(near, center) == pytest.approx(40.0, abs=0.001)
    assert abs(near.x) < abs(pattern.pieces[PIECE].points[f"{PIECE}/far_upper"].x), "away from the buttons"
