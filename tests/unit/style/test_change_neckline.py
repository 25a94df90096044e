"""New necklines: shape, depth, width, the gape and the head."""

from math import acos, degrees

import pytest
from shapely.geometry import LineString

from notchbook.app.examining import examine
from notchbook.pattern import Edge, Pattern, Severity, sewn_length, spoken
from notchbook.pattern.slashing import dart_angle
from notchbook.recipe import Replay, replay
from notchbook.style.edges.figures import DEEP_NECK_GAPE, NECK_GAPE
from notchbook.style.edges.neck_shapes import CURVED
from support.edge_steps import (
    BACK,
    FRONT,
    GAPE,
    applied,
    area,
    bodice,
    changed,
    lengths,
    misfits,
    names_of,
    necks,
    notes,
    refusal,
)

SHAPES = ["round", "scoop", "u", "boat", "v", "square"]


def corner(first: Edge, second: Edge) -> float:
    """The angle inside the piece from one edge to the next, degrees."""
    arriving, leaving = first.path.tangent_at(first.length), second.path.tangent_at(0.0)
    turn = degrees(acos(max(-1.0, min(1.0, arriving.dot(leaving)))))
    return 180.0 - turn if arriving.cross(leaving) > 0.0 else 180.0 + turn


def corner_at(pattern: Pattern, piece: str, point: str) -> float:
    outline = pattern.pieces[piece].outline
    before = next(edge for edge in outline if edge.end == f"{piece}/{point}")
    after = next(edge for edge in outline if edge.start == f"{piece}/{point}")
    return corner(before, after)


@pytest.mark.parametrize("shape", SHAPES)
def test_front_and_back_meet_at_the_shoulder_as_one_line(shape: str) -> None:
    after = changed(bodice(), "change_neckline", necks=necks(shape, "7 cm", "round", "3 cm"), width="2 cm")
    front, back = (corner_at(after, piece, "side_neck_point") for piece in (FRONT, BACK))
    before = corner_at(bodice().pattern, FRONT, "side_neck_point")
    assert front == pytest.approx(before if shape in CURVED else 90.0, abs=1.0)
    assert front + back == pytest.approx(180.0, abs=1.0)
    center = corner_at(after, FRONT, "neck_pit")
    assert (center > 100.0) if shape == "v" else center == pytest.approx(90.0, abs=1.0)
    assert max(abs(off) for off in misfits(after).values()) < 0.01


@pytest.mark.parametrize("shape", SHAPES)
def test_center_and_shoulder_are_as_long_as_asked(shape: str) -> None:
    before = bodice().pattern
    after = changed(bodice(), "change_neckline", necks=necks(shape, "7 cm", shape, "6 cm"), width="1.5 cm")
    assert after.edges[f"{FRONT}/center_front"].length == pytest.approx(350.0 - 70.0, abs=1e-6)
    backs = [pattern.edges[f"{BACK}/center_back"].length for pattern in (before, after)]
    assert backs[0] - backs[1] == pytest.approx(60.0, abs=1e-6)
    for piece in (FRONT, BACK):
        grown = sewn_length(after, f"{piece}/shoulder") - sewn_length(before, f"{piece}/shoulder")
        assert grown == pytest.approx(-15.0, abs=1e-6)


@pytest.mark.parametrize("shape", [shape for shape in SHAPES if shape != "square"])
def test_the_checks_find_nothing_to_look_at(shape: str) -> None:
    run = applied(bodice(), "change_neckline", necks=necks(shape, "5 cm"), width="2 cm", **GAPE)
    found = {one.code for one in examine(run, cut=True).findings if one.severity is not Severity.NOTE}
    # A V has a corner at the center on purpose.
    assert found == ({"center-not-square"} if shape == "v" else set())


def test_a_fuller_shape_takes_more_cloth_away() -> None:
    areas = [
        area(changed(bodice(), "change_neckline", necks=necks(shape, "9 cm"), width="2 cm").pieces[FRONT])
        for shape in ("v", "round", "scoop", "u", "square")
    ]
    assert areas == sorted(areas, reverse=True)


def test_a_square_neckline_is_two_edges_under_the_old_name() -> None:
    run = applied(bodice(), "change_neckline", slug="square", necks=necks("square", "8 cm"), width="3 cm")
    assert run.pattern.groups[f"{FRONT}/neck"].members == (f"{FRONT}/neck/center", f"{FRONT}/neck/side")
    assert "square.front/neck_corner" in run.pattern.index
    assert run.pattern.allowances[f"{FRONT}/neck"].allowance_class == "neckline"
    level = run.pattern.edges[f"{FRONT}/neck/center"].path
    assert level.start.y == pytest.approx(level.end.y, abs=1e-6)


def test_the_gape_goes_into_the_dart_and_no_cloth_is_lost() -> None:
    flat = changed(bodice(), "change_neckline", necks=necks("v", "12 cm"), width="2 cm")
    closed = changed(bodice(), "change_neckline", necks=necks("v", "12 cm"), width="2 cm", **GAPE)
    dart = closed.intakes[f"{FRONT}/bust_dart"]
    opened = dart_angle(closed.pieces[FRONT], dart) - dart_angle(flat.pieces[FRONT], dart)
    assert opened > 3.0
    legs = [closed.edges[leg].length for leg in (dart.first_leg, dart.second_leg)]
    assert legs[0] == pytest.approx(legs[1], abs=1e-6)
    # The wedge is shut at the neckline, whose two halves are drawn over as one.
    shorter = sewn_length(flat, f"{FRONT}/neck") - sewn_length(closed, f"{FRONT}/neck")
    assert 8.0 < shorter < 17.0, "15 mm are taken out; the bend to the shoulder is drawn anew"
    # A turn about the bust point changes no other edge.
    kept = {"shoulder", "armhole", "side_seam/above", "side_seam/below", "waist/center", "waist/side"}
    for word in kept:
        name = f"{FRONT}/{word}"
        assert closed.edges[name].length == pytest.approx(flat.edges[name].length, abs=1e-6), word
    assert max(abs(off) for off in misfits(closed).values()) < 0.01


@pytest.mark.parametrize("depth", ["4 cm", "9 cm", "12 cm", "15 cm"])
@pytest.mark.parametrize("shape", ["v", "u", "square"])
def test_the_gape_of_any_depth_closes(shape: str, depth: str) -> None:
    for width in ("1 cm", "3 cm"):
        after = changed(bodice(), "change_neckline", necks=necks(shape, depth), width=width, **GAPE)
        assert area(after.pieces[FRONT]) > 0.0
        assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_the_amount_of_the_gape_follows_how_deep_the_neckline_goes() -> None:
    # A handbook of drafting theory: 1/4 in near the neck base, 3/4 in deep.
    def amount(depth: str) -> float:
        run = applied(bodice(), "change_neckline", necks=necks("v", depth), width="3 cm", **GAPE)
        note = next(one for one in run.states[-1].notes if one.code == "neckline-gape-closed")
        assert note.measured is not None
        return note.measured

    assert amount("1 mm") == pytest.approx(NECK_GAPE.value, abs=0.2)
    assert NECK_GAPE.value == pytest.approx(25.4 / 4.0)
    assert amount("16 cm") == pytest.approx(DEEP_NECK_GAPE.value, abs=2.0)
    assert DEEP_NECK_GAPE.value == pytest.approx(25.4 * 3.0 / 4.0)
    assert amount("4 cm") < amount("8 cm") < amount("12 cm")


def test_a_gape_that_is_left_is_told() -> None:
    assert "neckline-gape-left" in notes(bodice(), "change_neckline", necks=necks("round", "6 cm"))
    assert "neckline-gape-left" not in notes(
        bodice(), "change_neckline", necks=necks("round", "6 cm"), **GAPE
    )


def with_head(girth: float) -> Replay:
    run = bodice()
    return replay(run.recipe, run.measures.with_value("head_girth", girth))


def test_what_the_head_needs_is_told_where_nothing_opens() -> None:
    narrow, wide = necks("round", "1 cm"), necks("scoop", "12 cm", "scoop", "8 cm")
    assert "neckline-no-head" in notes(bodice(), "change_neckline", necks=narrow)
    assert "neckline-under-head" in notes(with_head(560.0), "change_neckline", necks=narrow)
    wide_enough = notes(with_head(560.0), "change_neckline", necks=wide, width="4 cm")
    assert not wide_enough & {"neckline-no-head", "neckline-under-head"}


def test_another_part_of_the_garment_does_not_move() -> None:
    before = lengths(bodice().pattern)
    after = lengths(changed(bodice(), "change_neckline", necks=necks("round", "4 cm")))
    differing = {name for name in before if abs(before[name] - after[name]) > 1e-9}
    assert differing == {f"{FRONT}/neck", f"{FRONT}/center_front"}


def test_the_gape_runs_to_the_bust_point_where_no_other_is_named() -> None:
    named = changed(bodice(), "change_neckline", necks=necks("v", "9 cm"), **GAPE)
    unnamed = changed(bodice(), "change_neckline", necks=necks("v", "9 cm"), gape_dart=GAPE["gape_dart"])
    assert named.pieces == unnamed.pieces


def test_nothing_by_nothing() -> None:
    after = changed(bodice(), "change_neckline", necks=necks("round", "0 cm"))
    assert after.pieces == bodice().pattern.pieces
    assert names_of(after) == names_of(bodice().pattern)


def test_refusals() -> None:
    assert refusal(bodice(), "change_neckline", necks=necks("u", "18 cm"), **GAPE) == "neckline-too-narrow"
    assert refusal(bodice(), "change_neckline", necks=necks("round", "60 cm")) == "neckline-past-edge"
    past_dart = refusal(bodice(), "change_neckline", necks=necks("round", "0 cm"), width="6 cm")
    assert past_dart == "neckline-past-edge"
    shallow = necks("square", "-6 cm")
    assert refusal(bodice(), "change_neckline", necks=shallow, width="2 cm") == "neckline-not-below"
    # Only the front has a bust point.
    no_point = {"gape_dart": f"{BACK}/waist_dart_side"}
    lower = necks("v", "9 cm", "round", "2 cm")
    assert refusal(bodice(), "change_neckline", necks=lower, **no_point) == "gape-no-point"
    elsewhere = {**GAPE, "gape_point": f"{BACK}/nape"}
    found = refusal(bodice(), "change_neckline", necks=necks("v", "9 cm"), **elsewhere)
    assert found == "gape-point-elsewhere"
    large = refusal(bodice(), "change_neckline", necks=necks("round", "1 cm"), **GAPE, gape="20 cm")
    assert large == "gape-too-long"
    whole = applied(bodice(), "unfold", pieces=[FRONT])
    sided = [{**necks("v", "5 cm")[0], "edge": f"{FRONT}/neck@left"}]
    assert refusal(whole, "change_neckline", necks=sided) == "neckline-unfolded"
    assert spoken(f"{FRONT}/neck@left") == "left front, neck"


@pytest.mark.parametrize("body", ["small-80", "medium-92", "large-116", "man-100"])
def test_a_round_neck_a_little_lower_is_a_little_lower_all_along(body: str) -> None:
    """Measured by shapely: the curve of the block's neck, not another one."""
    run = bodice(body)
    after = changed(run, "change_neckline", necks=necks("round", "2 mm", "round", "2 mm"))
    for piece in (FRONT, BACK):
        old, new = (
            LineString([(point.x, point.y) for point in pattern.edges[f"{piece}/neck"].path.flattened(0.01)])
            for pattern in (run.pattern, after)
        )
        assert old.hausdorff_distance(new) < 3.0
        assert new.length > old.length
