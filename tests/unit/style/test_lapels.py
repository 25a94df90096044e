"""Notched lapels and shawl collars: cut on the front, turned back at the roll line, their layers sewn."""

import math
from typing import Any

import pytest
from shapely.geometry import LineString

from notchbook.app.examining import examine
from notchbook.app.sewing_words import sewing_lines
from notchbook.geometry import Path, Point
from notchbook.pattern import Severity, locate, pattern_from_data, pattern_to_data, walk_seam
from notchbook.recipe import Replay, replay
from notchbook.style.collars.laid_neck import laid_neck
from notchbook.style.collars.neck import NeckEdge, neck_of
from notchbook.units import LengthStyle
from support.collar_steps import (
    FRONT_EDGE,
    WITH_STAND,
    after,
    code_of,
    collared,
    length_of,
    on_stand,
    opened,
    pattern_of,
    said,
    shape_of,
)
from support.edge_steps import misfits
from support.traced_steps import NECK
from support.upper_patterns import drafted

FRONT, OPERATIONS = "bodice.front", ["notched_lapel", "shawl_collar"]
LAPEL = f"{FRONT_EDGE}/lapel"


def lapelled(operation: str = "notched_lapel", name: str = "medium-92", **more: object) -> Replay:
    return on_stand(operation, name, **{"edge": FRONT_EDGE, "breaks": "20 cm", **more})


@pytest.mark.parametrize("operation", OPERATIONS)
def test_every_seam_walks(operation: str) -> None:
    pattern = pattern_of(lapelled(operation))
    off = {name: value for name, value in misfits(pattern).items() if name.startswith(operation)}
    assert {f"{operation}/{word}" for word in ("front_edge", "neck", "upper_neck", "center_back")} <= set(off)
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.01)
    assert pattern_from_data(pattern_to_data(pattern)) == pattern
    for piece in pattern.pieces:
        assert shape_of(pattern, piece).area > 0.0


def test_the_lapel_breaks_where_it_was_asked_to() -> None:
    """The break point lies 20 cm down the front edge; above it the edge is the lapel."""
    before = opened("medium-92").pattern
    pattern = pattern_of(lapelled())
    edge = before.edges[FRONT_EDGE]
    assert length_of(pattern, f"{FRONT_EDGE}/below") == pytest.approx(edge.length - 200.0, abs=0.01)
    assert pattern.groups[FRONT_EDGE].members == (f"{FRONT_EDGE}/below", LAPEL)
    assert (
        pattern.pieces[FRONT].points["bodice.front/neck_pit"]
        == before.pieces[FRONT].points["bodice.front/neck_pit"]
    )


def test_the_lapel_is_as_wide_as_asked_square_to_the_roll_line() -> None:
    pattern = pattern_of(lapelled(lapel="90 mm"))
    (roll,) = [line for line in pattern.pieces[FRONT].lines if line.kind == "roll_line"]
    tip = pattern.edges[LAPEL].path.end
    along = (roll.path.end - roll.path.start).unit()
    assert abs(along.cross(tip - roll.path.start)) == pytest.approx(90.0, abs=0.01)


def test_the_roll_line_aims_at_the_shoulder_carried_on_by_the_stand() -> None:
    """Common practice, no source: the stand less 5 mm beyond the side-neck point."""
    pattern = pattern_of(lapelled(stand="30 mm"))
    front = pattern.pieces[FRONT]
    (roll,) = [line for line in front.lines if line.kind == "roll_line"]
    shoulder = front.edge("bodice.front/shoulder").path
    aimed = shoulder.start - shoulder.tangent_at(0.0) * 25.0
    along = (roll.path.end - roll.path.start).unit()
    assert abs(along.cross(aimed - roll.path.start)) < 0.01


def test_the_collar_shares_the_gorge_and_stands_and_falls_behind() -> None:
    pattern = pattern_of(lapelled(stand="30 mm", fall="45 mm"))
    for word in ("gorge", "inner_neck"):
        on_front = length_of(pattern, f"notched_lapel.front/{word}")
        for piece in ("undercollar", "collar", "facing"):
            assert length_of(pattern, f"notched_lapel.{piece}/{word}") == pytest.approx(on_front, abs=0.01)
    assert length_of(pattern, "notched_lapel.undercollar/center_back") == pytest.approx(75.0, abs=0.01)
    assert length_of(pattern, "notched_lapel.undercollar/neck_edge") == pytest.approx(
        length_of(pattern, "bodice.back/neck"), abs=0.05
    )


def test_the_undercollar_is_on_the_bias_and_smaller_by_the_turn() -> None:
    """Undercollar on the bias with a center back seam (common practice); about 1/8 in smaller (memory)."""
    done = lapelled(turn="2 mm")
    pattern = pattern_of(done)
    under, upper = pattern.pieces["notched_lapel.undercollar"], pattern.pieces["notched_lapel.collar"]
    assert (under.cut, under.grain.degrees, upper.cut) == ("pair", 45.0, "fold")
    assert under.name in done.grains
    assert shape_of(pattern, upper.name).area > shape_of(pattern, under.name).area + 100.0
    assert length_of(pattern, "notched_lapel.facing/lapel") > length_of(pattern, LAPEL)
    assert pattern.seams["notched_lapel/front_edge"].ease > 1.0


def test_a_collar_swings_until_its_outer_edge_lies_on_the_back() -> None:
    """A collar that is not swung has an outer edge as long as its neck edge there."""
    found = [
        length_of(pattern_of(lapelled(swing=swing)), "notched_lapel.undercollar/outer")
        for swing in ("0 mm", "10 mm", "20 mm")
    ]
    assert found[0] < found[1] < found[2]
    assert "collar-outer-short" in said(lapelled(swing="0 mm"))
    assert "collar-outer-short" not in said(lapelled())


def swung(run: Replay, operation: str) -> float:
    """By how much the neck edge behind is bent from the nape to the shoulder, radians, away from the roll
    line."""
    name = {"notched_lapel": "notched_lapel.undercollar", "shawl_collar": "shawl_collar.front"}[operation]
    path = pattern_of(run).edges[f"{name}/neck_edge"].path
    nape, shoulder = path.tangent_at(0.0), path.tangent_at(path.length)
    return -math.atan2(nape.cross(shoulder), nape.dot(shoulder))


@pytest.mark.parametrize("operation", OPERATIONS)
@pytest.mark.parametrize("asked", [10.0, 25.0])
def test_the_center_back_swings_by_as_much_as_asked(operation: str, asked: float) -> None:
    """A line of so many mm that is bent evenly by an angle rises by (1 - cos) / angle of its length (the arc
    of a circle, closed form)."""
    straight, bent = (swung(lapelled(operation, swing=f"{one} mm"), operation) for one in (0.0, asked))
    back = length_of(opened("medium-92").pattern, "bodice.back/neck")
    angle = bent - straight
    assert back * (1.0 - math.cos(angle)) / angle == pytest.approx(asked, abs=0.05)


@pytest.mark.parametrize("operation", OPERATIONS)
@pytest.mark.parametrize("fall", [45.0, 60.0])
def test_a_collar_swings_as_far_as_its_outer_edge_needs(operation: str, fall: float) -> None:
    """The outer edge behind is the neck and its bend times the width (a parallel, plane geometry). It comes
    to be as long as the back is that far from its neck, by an outside program, less 4 mm that it gives."""
    named = tuple(NeckEdge(**one) for one in NECK)
    laid = laid_neck(neck_of(drafted("medium-92", "bodice").pattern, named))
    behind = LineString([(p.x, p.y) for p in laid.path.between(0.0, laid.back).flattened(1e-5)])
    runs = [lapelled(operation, fall=f"{fall} mm", swing=one) for one in (None, "0 mm")]
    bend = swung(runs[0], operation) - swung(runs[1], operation)
    outer = behind.length + bend * (30.0 + fall)
    assert outer == pytest.approx(behind.offset_curve(fall - 30.0).length - 4.0, abs=0.1)


def test_a_collar_on_a_gathered_back_neck_swings_as_usual() -> None:
    """12 degrees where the garment cannot be laid out (common practice, no source)."""
    gathered = after(
        opened("medium-92"),
        "gather_edge",
        edge="bodice.back/neck",
        from_point="bodice.back/nape",
        across="bodice.back/waist/center",
        across_point="bodice.back/waist_center",
        to_distance="4 cm",
        across_share=0.0,
        ratio=1.2,
    )
    asked = {"neck": WITH_STAND, "edge": FRONT_EDGE, "breaks": "20 cm"}
    usual, flat = (after(gathered, "notched_lapel", **asked, swing=swing) for swing in (None, "0 mm"))
    bend = swung(usual, "notched_lapel") - swung(flat, "notched_lapel")
    assert math.degrees(bend) == pytest.approx(12.0, abs=0.01)


def test_lapel_and_collar_are_notched_where_the_collar_ends() -> None:
    """The upper edge of the lapel and the gorge are one straight line on front and facing: only a notch tells
    where the collar ends. Its mates lie on both collars."""
    pattern = pattern_of(lapelled(top="38 mm"))
    for piece, tip in (("front", "lapel_tip"), ("facing", "lapel_tip"), ("undercollar", ""), ("collar", "")):
        name = f"notched_lapel.{piece}/gorge/gorge_notch"
        found = locate(pattern, pattern.notches[name].place)
        spot = found.edge.path.point_at(found.distance)
        points = pattern.pieces[found.piece].points
        assert spot.distance_to(points[f"notched_lapel.{piece}/lapel_corner"]) < 0.01
        if tip and piece == "front":
            assert spot.distance_to(points[f"notched_lapel.{piece}/{tip}"]) == pytest.approx(38.0, abs=0.01)
    walk = walk_seam(pattern, pattern.seams["notched_lapel/gorge"])
    (station,) = walk.stations
    assert (station.first, station.second) == pytest.approx((0.0, 0.0), abs=0.01)


def test_a_turn_that_is_seldom_made_is_told() -> None:
    """1/32 to 1/8 in on each side (from memory)."""
    for operation in OPERATIONS:
        assert "amount-unusual" not in said(lapelled(operation))
        assert "amount-unusual" in said(lapelled(operation, turn="8 mm"))


def test_a_shawl_is_one_piece_with_the_front() -> None:
    done = lapelled("shawl_collar")
    pattern = pattern_of(done)
    assert [name for name in pattern.pieces if name.startswith("shawl")] == ["shawl_collar.facing"]
    assert length_of(pattern, "shawl_collar.front/neck_edge") == pytest.approx(
        length_of(pattern, "bodice.back/neck"), abs=0.05
    )
    old = opened("medium-92").pattern.edges["bodice.front/neck"]
    kept = pattern.pieces[FRONT].line("bodice.front/neck")
    assert kept.path == old.path, "the old neck stays as a line, so that its length can still be held"
    edge = pattern.edges[LAPEL].path
    (roll,) = [line for line in pattern.pieces[FRONT].lines if line.kind == "roll_line"]
    start = roll.path.start
    far = Path.line(start, start + roll.path.tangent_at(0.0) * 400.0)
    widest = max(far.nearest(Point(place.x, place.y)).gap for place in edge.flattened(0.5))
    assert widest == pytest.approx(85.0, abs=4.0)


@pytest.mark.parametrize("operation", OPERATIONS)
def test_they_follow_other_bodies_and_uneven_sides(operation: str) -> None:
    for name in ("small-80", "large-116"):
        off = misfits(pattern_of(lapelled(operation, name)))
        assert max(abs(value) for seam, value in off.items() if seam.startswith(operation)) < 0.05
    run = lapelled(operation)
    uneven = run.measures.with_value("shoulder_length", run.measures.value("shoulder_length") - 5.0, "left")
    pattern = pattern_of(replay(run.recipe, uneven))
    assert f"{LAPEL}@left" in pattern.edges
    off = misfits(pattern)
    assert max(abs(value) for seam, value in off.items() if seam.startswith(operation)) < 0.1


@pytest.mark.parametrize("operation", OPERATIONS)
def test_a_button_on_the_lapel_is_told(operation: str) -> None:
    """The button of the front lies 22 cm down: below a break at 20 cm, above one at 26 cm."""
    assert "lapel-over-button" not in said(lapelled(operation))
    assert "lapel-over-button" in said(lapelled(operation, breaks="26 cm"))


def test_a_narrow_fall_is_told() -> None:
    assert "collar-shows-seam" in said(lapelled(fall="35 mm"))
    assert "collar-shows-seam" not in said(lapelled())


@pytest.mark.parametrize(
    ("code", "parameters"),
    [
        ("lapel-break-off", {"breaks": "2 cm"}),
        ("lapel-break-off", {"breaks": "60 cm"}),
        ("lapel-narrow", {"lapel": "15 mm", "top": "60 mm"}),
        ("lapel-tip-low", {"breaks": "4 cm", "gorge": "90 mm", "slope": 35.0}),
        ("lapel-facing-wide", {"facing_shoulder": "20 cm"}),
        ("lapel-facing-wide", {"facing": "15 cm"}),
        ("lapel-edge-elsewhere", {"edge": "bodice.front/armhole"}),
        ("collar-outline-crosses", {"end": "30 cm"}),
        ("collar-outline-crosses", {"lapel": "1000 mm"}),
    ],
)
def test_lapels_refuse_in_words(code: str, parameters: dict[str, Any]) -> None:
    assert code_of(lapelled(**parameters)) == code


def test_a_front_on_the_fold_has_no_edge_to_turn_back() -> None:
    assert code_of(collared("notched_lapel", edge="bodice.front/center_front")) == "lapel-on-fold"


def test_a_neck_without_a_front_is_refused() -> None:
    back = [NECK[1], {**NECK[1], "edge": "bodice.back/center_back", "starts_at": "bodice.back/nape"}]
    run = after(opened("medium-92"), "shawl_collar", neck=back, edge=FRONT_EDGE)
    assert code_of(run) == "lapel-neck-parted"


def test_a_dart_in_the_front_neck_must_be_moved_first() -> None:
    assert code_of(lapelled(name="very-full-bust")) == "lapel-neck-dart"


@pytest.mark.parametrize("operation", ["shirt_collar", "roll_collar", *OPERATIONS])
def test_a_little_style_from_block_to_paper_is_clean(operation: str) -> None:
    """Nothing is to be looked at but what the block alone says; each seam comes once in the sewing order."""
    more: dict[str, Any] = {"edge": FRONT_EDGE, "breaks": "20 cm"} if operation in OPERATIONS else {}
    if operation == "shirt_collar":
        more = {"extension": "20 mm", "overlap": "20 mm"}
    elif operation == "roll_collar":
        more = {"extension": "20 mm"}
    done = on_stand(operation, **more)
    before = {(one.code, one.message) for one in examine(opened("medium-92")).findings}
    found = {
        (one.code, one.message)
        for one in examine(done).findings
        if one.severity is not Severity.NOTE and (one.code, one.message) not in before
    }
    assert found == set()
    lines = sewing_lines(pattern_of(done), LengthStyle())
    assert len(lines) == len(set(lines))
    assert any("roll" in line or "neck" in line for line in lines)
