"""Collars, hoods and bindings at the edges of what they look at.

Lengths are measured by an outside program.
"""

import pytest
from shapely.affinity import scale
from shapely.geometry import LineString

from lower_sheets import lower_bodies
from notchbook.body.usual_head import USUAL_CHILD_HEAD
from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform
from notchbook.pattern import EdgeUse, Pattern, run_length
from notchbook.recipe import replay
from notchbook.style.collars.beginning import center_of
from notchbook.style.collars.hood_lines import side_panel
from notchbook.style.collars.lapel_given import lapel_front
from notchbook.style.collars.lapel_lines import LapelSize, NotchedLines, notched_lines, roll_of
from notchbook.style.collars.neck import NeckEdge, neck_of
from notchbook.style.collars.neck_cut import from_cut
from support.collar_steps import (
    FRONT_EDGE,
    WITH_STAND,
    after,
    collared,
    length_of,
    line_of,
    on_stand,
    opened,
    pattern_of,
    said,
    shape_of,
)
from support.sleeve_styles import sleeve_style
from support.traced_steps import ARMHOLE, NECK
from support.upper_patterns import drafted

NAPE = "bodice.back/nape"
LAP_TOP, PIT = "button_stand.front/lap_top", "bodice.front/neck_pit"
TURN = 1.6


def uses(*named: dict[str, str]) -> tuple[EdgeUse, ...]:
    return tuple(EdgeUse(one["edge"], one["starts_at"]) for one in named)


def moved(pattern: Pattern, piece: str, motion: Transform) -> Pattern:
    """The same pattern with the frame of one piece laid elsewhere: that means nothing."""
    return pattern.with_pieces(pattern.pieces[piece].transformed(motion))


def test_the_center_is_looked_for_on_the_piece_where_the_neck_begins_alone() -> None:
    """Frames of pieces have nothing to do with each other: a corner of the back that happens to have the
    numbers of the center is none."""
    pattern = opened().pattern
    center, nape = pattern.pieces["bodice.front"].points[PIT], pattern.pieces["bodice.back"].points[NAPE]
    over = uses(
        NECK[0],
        {"edge": "bodice.back/center_back", "starts_at": "bodice.back/waist_center"},
        {"edge": "bodice.back/neck", "starts_at": NAPE},
    )
    shifted = moved(pattern, "bodice.back", Transform.translation(center.x - nape.x, center.y - nape.y))
    assert shifted.pieces["bodice.back"].points[NAPE].distance_to(center) < 1e-9
    assert center_of(shifted, over) is None
    assert center_of(pattern, uses(*WITH_STAND)) is not None


@pytest.mark.parametrize("is_mirrored", [False, True])
def test_a_neck_is_cut_at_its_place_whichever_way_its_edge_runs(is_mirrored: bool) -> None:
    """The edge of a mirrored piece runs the other way; the part before the cut is free all the same."""
    pattern = opened().pattern
    if is_mirrored:
        pattern = moved(pattern, "bodice.front", Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0)))
    run = uses(*WITH_STAND)
    whole = run_length(pattern, run)
    left = from_cut(pattern, run, 8.0)
    assert run_length(left.pattern, left.uses) == pytest.approx(whole - 8.0, abs=1e-6)
    free, collared_part = f"{LAP_TOP}/near", f"{LAP_TOP}/far"
    assert set(left.splits[LAP_TOP]) == {free, collared_part}
    assert length_of(left.pattern, free) == pytest.approx(8.0, abs=1e-3)
    assert left.uses[0].edge == collared_part


def test_a_closed_stand_is_told_from_a_finger_on() -> None:
    """One finger's room, 10 mm (common practice)."""
    run = on_stand("stand_collar", overlap="20 mm")
    tight = replay(run.recipe, run.measures.with_value("neck_girth", 390.0))
    (told,) = [note for note in tight.notes if note.code == "collar-stand-tight"]
    assert told.measured is not None
    for room, is_told in ((0.5, True), (9.5, True), (10.5, False)):
        tried = replay(run.recipe, run.measures.with_value("neck_girth", told.measured - room))
        assert ("collar-stand-tight" in said(tried)) is is_told


def test_a_zip_in_the_back_lets_the_head_through() -> None:
    base = after(drafted("medium-92", "bodice"), "center_seam", center="bodice.back/center_back")
    zipped = after(base, "zip_opening", edge="bodice.back/center_back", from_point="bodice.back/nape")
    for run, is_told in ((base, True), (zipped, False)):
        done = after(run, "flat_collar", neck=NECK, opens="back")
        measured = replay(done.recipe, done.measures.with_value("head_girth", 560.0))
        assert ("collar-under-head" in said(measured)) is is_told


@pytest.mark.parametrize(("middle", "is_drawn"), [(147.0, True), (149.0, False)])
def test_a_middle_panel_takes_no_more_than_the_straight_part_of_the_neck(
    middle: float, is_drawn: bool
) -> None:
    """0.4 of a neck of 185 mm is straight: 74 mm to each side of the nape."""
    if is_drawn:
        assert side_panel(185.0, 342.0, 251.0, middle).neck.length == pytest.approx(
            185.0 - middle / 2.0, abs=0.05
        )
    else:
        with pytest.raises(StepRefused, match="hood-middle-wide"):
            side_panel(185.0, 342.0, 251.0, middle)


def test_a_hood_for_a_child_whose_head_was_not_measured_is_a_childs() -> None:
    child = dict(lower_bodies())["child-116"]
    assert child.find("head_girth") is None
    plain = after(sleeve_style([], measures=child, length="none"), "hood", neck=NECK)
    measured = replay(plain.recipe, child.with_value("head_girth", USUAL_CHILD_HEAD))
    for edge in ("hood.hood/face", "hood.hood/head_seam"):
        assert length_of(pattern_of(plain), edge) == pytest.approx(
            length_of(pattern_of(measured), edge), abs=1e-6
        )


def bound(**parameters: object) -> Pattern:
    return pattern_of(after(drafted("medium-92", "bodice"), "binding", **parameters))


def test_a_binding_that_reaches_a_center_begins_there_however_it_is_named() -> None:
    back_to_front = {"edge": "bodice.front/neck", "starts_at": "bodice.front/side_neck_point"}
    pattern = bound(edges=[back_to_front])
    (use,) = pattern.seams["binding/bound"].second
    assert use.starts_at == PIT
    assert pattern.allowances["binding.binding/end"].allowance_class == "plain"


def test_both_free_ends_of_a_binding_have_an_allowance_and_a_ring_has_seams() -> None:
    ends = [f"binding.binding/{side}_end" for side in ("left", "right")]
    free = bound(edges=[{"edge": "bodice.front/armhole", "starts_at": "bodice.front/underarm"}])
    assert [free.allowances[end].allowance_class for end in ends] == ["plain", "plain"]
    ring = bound(edges=ARMHOLE)
    assert not set(ends) & set(ring.allowances)


@pytest.mark.parametrize(("fold", "seam_class"), [("double", "BSc"), ("single", "BSa")])
def test_a_binding_is_sewn_in_the_class_of_its_fold_and_with_its_opening(fold: str, seam_class: str) -> None:
    """BSa: raw tape over the edge; BSc: folded tape (ASTM D6193, from memory)."""
    for opening, stage in (("neck", "neck"), ("armhole", "armholes")):
        pattern = bound(opening=opening, fold=fold)
        assert pattern.seams["binding/bound"].seam_class == seam_class
        assert pattern.operations["binding/folded"].stage == stage


def lapel_lines(turn: float) -> NotchedLines:
    pattern = opened().pattern
    neck = neck_of(pattern, tuple(NeckEdge(**one) for one in WITH_STAND))
    front = lapel_front(pattern, neck, FRONT_EDGE, 200.0)
    size = LapelSize(30.0, 45.0, 85.0, 50.0, 10.0, 38.0, 36.0, 75.0, neck.back, 12.0)
    return notched_lines(front, roll_of(front, 30.0), size, turn)


def test_a_facing_reaches_beyond_the_lapel_by_the_turn_along_both_of_its_edges_at_the_tip() -> None:
    plain, grown = lapel_lines(0.0), lapel_lines(TURN)
    along = (plain.top.start - plain.top.end).unit()
    off = grown.top.start - plain.top.start
    assert off.dot(along) == pytest.approx(TURN, abs=1e-9), "beyond the front edge"
    assert off.cross(along) == pytest.approx(-TURN, abs=1e-9), "above the upper edge"
    assert grown.top.end.distance_to(plain.top.end) < 1e-9, "the collar begins at the same place"


def test_an_upper_collar_reaches_beyond_the_undercollar_by_the_turn_at_its_point_and_behind() -> None:
    pattern = pattern_of(on_stand("notched_lapel", edge=FRONT_EDGE, breaks="20 cm", undercollar="straight"))
    upper = scale(shape_of(pattern, "notched_lapel.collar"), xfact=-1.0, origin=(0.0, 0.0))
    under = pattern.pieces["notched_lapel.undercollar"]
    tip = under.points["notched_lapel.undercollar/collar_point"]
    end = line_of(pattern, "notched_lapel.undercollar/end")
    (x1, y1), (x2, y2) = end.coords[0], end.coords[-1]
    way = Point(x2 - x1, y2 - y1).unit()
    grown_tip = pattern.pieces["notched_lapel.collar"].points["notched_lapel.collar/collar_point"]
    off = Point(-grown_tip.x, grown_tip.y) - tip
    assert abs(off.dot(way)) == pytest.approx(TURN, abs=1e-6), "beyond the outer edge"
    assert abs(off.cross(way)) == pytest.approx(TURN, abs=1e-6), "beyond the front edge of the collar"
    behind = LineString([(0.0, -500.0), (0.0, 500.0)]).intersection(upper.buffer(0.01)).length
    assert behind == pytest.approx(
        length_of(pattern, "notched_lapel.undercollar/center_back") + TURN, abs=0.05
    )


def test_the_wide_place_of_a_shawl_is_as_wide_as_asked_and_its_facing_by_the_turn_more() -> None:
    run = on_stand("shawl_collar", edge=FRONT_EDGE, breaks="20 cm", lapel="80 mm")
    pattern = pattern_of(run)
    roll = pattern.pieces["bodice.front"].line("shawl_collar.front/roll_line").path
    straight = roll.tangent_at(0.0, "after")
    foot = roll.start
    widest = {}
    for name in (f"{FRONT_EDGE}/lapel", "shawl_collar.facing/lapel"):
        path = pattern.edges[name].path
        places = [path.point_at(path.length * share / 400.0) for share in range(401)]
        start = min((path.start, path.end), key=lambda place: place.y)
        widest[name] = max(
            abs((place - start).cross(straight)) for place in places if place.y < foot.y + 190.0
        )
    front, facing = widest.values()
    assert front == pytest.approx(80.0, abs=1.0)
    assert facing - front == pytest.approx(TURN, abs=0.4)


def test_the_point_of_a_flat_collar_is_as_long_as_it_is_wide_where_nothing_is_said() -> None:
    plain = pattern_of(collared("flat_collar", front="pointed", width="50 mm"))
    assert length_of(plain, "flat_collar.undercollar/end") == pytest.approx(50.0, abs=1e-3)
