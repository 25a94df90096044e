"""Stand, shirt and roll collars: drawn from the neck, leaning by their rise, covering the neck seam."""

import math
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString
from shapely.geometry import Point as Spot

from notchbook.geometry import inflections, offset
from notchbook.pattern import locate
from notchbook.recipe import Replay
from notchbook.recipe import replay as run_on
from notchbook.style.collars.curves import bend_for_rise, bent_edge
from notchbook.style.collars.figures import FALL_OVER_STAND, OUTER_EDGE_SHORT
from notchbook.style.collars.laid_neck import laid_neck
from notchbook.style.collars.neck import NeckEdge, neck_of
from support.bodice_bodies import bodice_run, body
from support.collar_steps import (
    NECK_LENGTH_EDGES,
    after,
    code_of,
    collared,
    length_of,
    line_of,
    on_stand,
    pattern_of,
    said,
)
from support.edge_steps import misfits
from support.traced_steps import NECK
from support.upper_patterns import drafted

STAND, FALL = "shirt_collar.stand", "shirt_collar.fall"


def walks(operation: str, off: dict[str, float]) -> dict[str, float]:
    return {name: value for name, value in off.items() if name.startswith(f"{operation}/")}


@pytest.mark.parametrize("rise", [0.0, 5.0, 12.0, 25.0, -20.0])
def test_a_bent_edge_has_its_length_and_rise(rise: float) -> None:
    bend = bend_for_rise(185.0, 45.0, rise)
    edge = bent_edge(185.0, 45.0, bend)
    assert edge.length == pytest.approx(185.0, abs=1e-6)
    assert edge.end.y == pytest.approx(rise, abs=0.05)
    assert abs(edge.point_at(45.0).y) < 0.01


def test_the_parallel_of_a_bent_edge_is_shorter_by_bend_times_height() -> None:
    """The length of a parallel: that of the line less distance times bend (plane geometry)."""
    bend = bend_for_rise(185.0, 45.0, 12.0)
    upper = offset(bent_edge(185.0, 45.0, bend), 35.0)
    assert upper.length == pytest.approx(185.0 - 35.0 * math.radians(bend), abs=0.05)


@pytest.mark.parametrize(("front", "overlap"), [("round", "0 mm"), ("square", "20 mm"), ("round", "15 mm")])
def test_a_stand_fits_its_neck(front: str, overlap: str) -> None:
    pattern = pattern_of(collared("stand_collar", front=front, overlap=overlap))
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    for piece in ("stand_collar.stand", "stand_collar.inner_stand"):
        assert length_of(pattern, f"{piece}/neck_edge") == pytest.approx(neck, abs=0.05)
        assert pattern.pieces[piece].cut == "fold"
    off = walks("stand_collar", misfits(pattern))
    assert set(off) == {"stand_collar/neck", "stand_collar/inner_stand_neck", "stand_collar/stand_end"}
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.01)


def test_more_rise_makes_a_shorter_upper_edge() -> None:
    found = []
    for rise in ("0 mm", "10 mm", "20 mm"):
        pattern = pattern_of(collared("stand_collar", front="square", rise=rise))
        found.append(length_of(pattern, "stand_collar.stand/upper"))
    assert found[0] > found[1] > found[2]
    assert found[0] == pytest.approx(length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05)


def test_a_stand_that_opens_at_the_back_lies_on_the_fold_in_front() -> None:
    pattern = pattern_of(collared("stand_collar", opens="back", overlap="10 mm"))
    piece = pattern.pieces["stand_collar.stand"]
    assert [edge.kind for edge in piece.outline if edge.name.endswith("center_front")] == ["fold"]
    assert (piece.marks[-1].kind, piece.lines[-1].kind) == ("button", "buttonhole")
    assert piece.lines[-1].path.length == pytest.approx(14.0), "a hole is button and thickness long"
    assert code_of(on_stand("stand_collar", opens="back", extension="20 mm")) == "collar-extension-back"


def test_a_closed_stand_leaves_a_fingers_room() -> None:
    """One finger fits between collar and neck (common practice, no source)."""
    done = collared("stand_collar", rise="25 mm", height="45 mm")
    for girth, is_told in ((300.0, False), (365.0, True)):
        run = run_on(done.recipe, done.measures.with_value("neck_girth", girth), done)
        assert ("collar-stand-tight" in said(run)) == is_told


def test_a_shirt_collar_is_stand_and_fall_in_one_length() -> None:
    """The stand is as long as the neck seam and its overlap (common practice)."""
    pattern = pattern_of(on_stand("shirt_collar", extension="20 mm", overlap="20 mm"))
    neck = length_of(pattern, *NECK_LENGTH_EDGES) + 20.0
    assert length_of(pattern, f"{STAND}/neck_edge") == pytest.approx(neck, abs=0.05)
    assert length_of(pattern, f"{FALL}/stand") == pytest.approx(
        length_of(pattern, f"{STAND}/upper"), abs=0.05
    )
    off = walks("shirt_collar", misfits(pattern))
    assert len(off) == 6
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.01)
    assert "shirt_collar/neck/center_notch" in pattern.notches
    assert {one.stage for one in pattern.operations.values() if one.name.startswith("shirt_collar")} == {
        "prepare",
        "neck",
        "finish",
    }


@pytest.mark.parametrize("operation", ["stand_collar", "shirt_collar"])
@pytest.mark.parametrize("overlap", ["8 mm", "20 mm", "26 mm"])
def test_a_stand_that_laps_has_a_button_on_the_center(operation: str, overlap: str) -> None:
    """Shorter than the button stand, as long, and longer: centers lie on each other when it is buttoned, half
    way up, and the hole begins 1/8 in beyond the center (from memory); it is 3 mm longer than its button."""
    pattern = pattern_of(on_stand(operation, overlap=overlap, button="11 mm"))
    piece = pattern.pieces[f"{operation}.stand"]
    (mark,) = [one for one in piece.marks if one.kind == "button"]
    (hole,) = [one.path for one in piece.lines if one.kind == "buttonhole"]
    edge = line_of(pattern, f"{operation}.stand/neck_edge")
    spot = Spot(mark.position.x, mark.position.y)
    center = length_of(pattern, *NECK_LENGTH_EDGES)
    assert edge.project(spot) == pytest.approx(center, abs=0.1)
    height = line_of(pattern, f"{operation}.stand/center_back").length
    assert edge.distance(spot) == pytest.approx(height / 2.0, abs=0.1)
    assert hole.length == pytest.approx(14.0)
    ends = [Spot(end.x, end.y) for end in (hole.start, hole.end)]
    assert [end.distance(spot) for end in ends] == pytest.approx([25.4 / 8.0, 14.0 - 25.4 / 8.0], abs=0.2)
    front = line_of(pattern, f"{operation}.stand/end")
    assert front.distance(ends[0]) < front.distance(ends[1]), "it pulls toward the edge"
    assert f"{operation}/buttonhole" in pattern.operations


@pytest.mark.parametrize("operation", ["stand_collar", "shirt_collar"])
def test_a_stand_whose_ends_meet_has_no_button(operation: str) -> None:
    pattern = pattern_of(on_stand(operation, overlap="0 mm"))
    piece = pattern.pieces[f"{operation}.stand"]
    assert {one.kind for one in piece.marks} | {one.kind for one in piece.lines} <= {"point", "datum"}
    assert f"{operation}/buttonhole" not in pattern.operations


@pytest.mark.parametrize("overlap", ["0 mm", "20 mm", "26 mm"])
def test_the_stand_is_notched_where_the_fall_begins(overlap: str) -> None:
    """At the center front; only there do fall and stand come out alike at both ends (common practice)."""
    pattern = pattern_of(on_stand("shirt_collar", overlap=overlap))
    for stand, fall in ((STAND, "shirt_collar.undercollar"), ("shirt_collar.inner_stand", FALL)):
        found = locate(pattern, pattern.notches[f"{stand}/upper/fall_notch"].place)
        spot = found.edge.path.point_at(found.distance)
        end = pattern.edges[f"{stand}/end"].path
        assert min(spot.distance_to(end.start), spot.distance_to(end.end)) < 0.01
        upper = line_of(pattern, f"{stand}/upper")
        assert upper.length == pytest.approx(length_of(pattern, f"{fall}/stand"), abs=0.05)
        assert upper.project(Spot(spot.x, spot.y)) in (
            pytest.approx(0.0, abs=0.05),
            pytest.approx(upper.length, abs=0.05),
        )


def test_heights_that_are_seldom_made_are_told() -> None:
    """A stand collar of 20 to 60 mm, a shirt stand of 1 to 1 1/2 in, a rise to 1 in (common practice)."""
    usual = {"stand_collar": {"height": "60 mm"}, "shirt_collar": {"stand": "1 1/4 in", "rise": "5/8 in"}}
    for operation, amounts in usual.items():
        assert "amount-unusual" not in said(collared(operation, **amounts))
    odd: list[tuple[str, dict[str, Any]]] = [
        ("stand_collar", {"height": "90 mm", "rise": "0 mm"}),
        ("stand_collar", {"rise": "40 mm"}),
        ("roll_collar", {"stand": "90 mm", "fall": "100 mm"}),
        ("shirt_collar", {"stand": "50 mm", "fall": "65 mm"}),
    ]
    for operation, amounts in odd:
        assert "amount-unusual" in said(collared(operation, **amounts)), (operation, amounts)


def test_the_part_of_an_overlap_beyond_the_garment_is_free() -> None:
    pattern = pattern_of(collared("shirt_collar", overlap="15 mm"))
    assert length_of(pattern, f"{STAND}/overlap") == pytest.approx(15.0, abs=0.01)
    shorter = pattern_of(on_stand("shirt_collar", extension="20 mm", overlap="8 mm"))
    neck = length_of(shorter, *NECK_LENGTH_EDGES)
    assert length_of(shorter, f"{STAND}/neck_edge") == pytest.approx(neck + 8.0, abs=0.05)
    assert not shorter.pieces[STAND].has_edge(f"{STAND}/overlap")


def test_the_fall_covers_the_neck_seam() -> None:
    """The fall is wider than the stand by 3/8 in at least (university sewing bulletin)."""
    assert FALL_OVER_STAND.value == pytest.approx(3 / 8 * 25.4, abs=0.05)
    assert "collar-shows-seam" not in said(collared("shirt_collar"))
    narrow = collared("shirt_collar", fall="36 mm")
    assert "collar-shows-seam" in said(narrow)
    (note,) = [one for one in narrow.states[-1].notes if one.code == "collar-shows-seam"]
    assert note.cures[0].parameter == "fall"
    assert "collar-shows-seam" in said(collared("roll_collar", stand="35 mm", fall="40 mm"))


@pytest.mark.parametrize(
    ("operation", "piece", "edge", "lies_at", "width"),
    [
        ("shirt_collar", "shirt_collar.undercollar", "stand", 10.0, 40.0),
        ("roll_collar", "roll_collar.undercollar", "neck_edge", 12.0, 72.0),
    ],
)
def test_the_outer_edge_lies_on_the_garment(
    operation: str, piece: str, edge: str, lies_at: float, width: float
) -> None:
    """Front and back laid together, the parallel of the neck by an outside program: the outer edge is shorter
    by no more than a collar gives; a fall that is drawn straight is told."""
    done = collared(operation)
    named = tuple(NeckEdge(**one) for one in NECK)
    neck = laid_neck(neck_of(drafted("medium-92", "bodice").pattern, named)).path
    there = LineString([(p.x, p.y) for p in neck.flattened(0.005)]).offset_curve(lies_at).length
    inner = line_of(pattern_of(done), f"{piece}/{edge}")
    outer = inner.offset_curve(width).length
    assert outer == pytest.approx(there - OUTER_EDGE_SHORT.value, abs=0.3)
    assert "collar-outer-short" not in said(done)
    straight = collared(operation, drop="0 mm")
    (note,) = [one for one in straight.states[-1].notes if one.code == "collar-outer-short"]
    (cure,) = note.cures
    assert "collar-outer-short" not in said(collared(operation, **{cure.parameter: cure.value}))


def test_the_neck_is_laid_together_as_long_as_it_is() -> None:
    """Nape in the origin, the center back upright, the whole neck smooth across the shoulder."""
    pattern = drafted("medium-92", "bodice").pattern
    laid = laid_neck(neck_of(pattern, tuple(NeckEdge(**one) for one in NECK)))
    assert laid.path.length == pytest.approx(length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05)
    assert (laid.path.start.x, laid.path.start.y) == pytest.approx((0.0, 0.0), abs=1e-6)
    assert abs(laid.path.tangent_at(0.0).y) < 0.02
    assert laid.shoulder == pytest.approx(length_of(pattern, "bodice.front/shoulder"), abs=0.05)
    assert not laid.path.corners(1.0)


@given(
    length=st.floats(120.0, 260.0),
    straight=st.floats(0.1, 0.4),
    rise=st.floats(-35.0, 35.0),
)
@settings(max_examples=25, deadline=None)
def test_any_bent_edge_keeps_its_length_and_bends_one_way(
    length: float, straight: float, rise: float
) -> None:
    bend = bend_for_rise(length, straight * length, rise)
    edge = bent_edge(length, straight * length, bend)
    assert edge.length == pytest.approx(length, abs=1e-6)
    assert edge.tangent_at(edge.length).direction() == pytest.approx(bend, abs=0.01)
    assert not inflections(edge)
    quarter = edge.tangent_at((0.75 * straight + 0.25) * length).direction()
    assert abs(quarter) <= 0.15 * abs(bend) + 0.01, "it leaves its straight part slowly: a fair line"


def test_a_roll_collar_is_as_long_as_the_neck_and_folds_at_its_stand() -> None:
    pattern = pattern_of(collared("roll_collar"))
    piece = pattern.pieces["roll_collar.undercollar"]
    assert length_of(pattern, "roll_collar.undercollar/neck_edge") == pytest.approx(
        length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05
    )
    (roll,) = piece.lines
    assert roll.kind == "roll_line"
    assert (roll.path.start.x, roll.path.start.y) == pytest.approx((0.0, 30.0))
    assert length_of(pattern, "roll_collar.undercollar/center_back") == pytest.approx(72.0, abs=0.01)


def test_collars_follow_another_body_and_a_body_of_two_sides() -> None:
    small = collared("shirt_collar", "small-80").pattern
    assert length_of(small, f"{STAND}/neck_edge") == pytest.approx(
        length_of(small, *NECK_LENGTH_EDGES), abs=0.05
    )
    run = drafted("medium-92", "bodice")
    uneven = run.measures.with_value("neck_base_girth", run.measures.value("neck_base_girth") + 8.0, "left")
    done = run_on(collared("shirt_collar").recipe, uneven)
    pattern = pattern_of(done)
    assert pattern.pieces[STAND].cut == "single"
    for side in ("left", "right"):
        neck = length_of(pattern, *(f"{name}@{side}" for name in NECK_LENGTH_EDGES))
        assert length_of(pattern, f"{STAND}/neck_edge@{side}") == pytest.approx(neck, abs=0.05)
    off = walks("shirt_collar", misfits(pattern))
    assert max(map(abs, off.values())) < 0.1


def test_a_planted_fault_is_found() -> None:
    """A neck let out by 3 mm after the collar was drawn walks 3 mm too long."""
    pattern = pattern_of(collared("stand_collar"))
    piece = pattern.pieces["bodice.front"]
    edge = piece.edge("bodice.front/neck")
    end = edge.path.end
    faulty = edge.path.with_end(end + (end - edge.path.start).unit() * 3.0)
    shoulder = piece.edge_after(edge.name)
    moved = piece.with_edges(
        replace(edge, path=faulty), replace(shoulder, path=shoulder.path.with_start(faulty.end))
    )
    assert abs(misfits(pattern.with_pieces(moved))["stand_collar/neck"]) > 1.0


@pytest.mark.parametrize(
    ("operation", "code", "parameters"),
    [
        ("stand_collar", "collar-rise-steep", {"rise": "30 cm"}),
        ("stand_collar", "collar-below-nothing", {"overlap": "-1 mm"}),
        ("shirt_collar", "amount-not-positive", {"stand": "0 mm"}),
        ("shirt_collar", "collar-front-short", {"point": "10 mm"}),
        ("stand_collar", "collar-crosses", {"height": "60 cm", "rise": "60 mm"}),
        ("stand_collar", "collar-crosses", {"height": "300 mm"}),
        ("roll_collar", "collar-outline-crosses", {"point": "30 cm"}),
    ],
)
def test_stands_and_falls_refuse_in_words(operation: str, code: str, parameters: dict[str, Any]) -> None:
    assert code_of(collared(operation, **parameters)) == code


def test_a_gathered_neck_takes_a_collar_that_is_drawn_from_lengths() -> None:
    """What cannot be laid out flat can still be measured: the fall is bent as usual."""
    gathered = after(
        drafted("medium-92", "bodice"),
        "gather_edge",
        edge="bodice.front/neck",
        from_point="bodice.front/neck_pit",
        across="bodice.front/waist/center",
        across_point="bodice.front/waist_center",
        to_distance="6 cm",
        across_share=0.0,
        ratio=1.2,
    )
    pattern_of(gathered)
    assert code_of(after(gathered, "flat_collar", neck=NECK)) == "collar-neck-not-laid"
    pattern_of(after(gathered, "roll_collar", neck=NECK))


@cache
def yoked() -> Replay:
    """A back yoke that goes over the shoulder: cut off the front 3 cm below it and joined to the back."""
    block = bodice_run(body(), back_shoulder="ease", back_shoulder_amount="0 mm")
    ends = {
        name: {"edge": f"bodice.front/{edge}", "from_point": f"bodice.front/{point}", "distance": "3 cm"}
        for name, edge, point in (("start", "neck", "side_neck_point"), ("end", "armhole", "shoulder_point"))
    }
    cut = after(block, "cut_style_line", lines=[{**ends, "darts": []}])
    join = {"first_edge": "bodice.back/shoulder", "second_edge": "bodice.front/shoulder"}
    return after(cut, "join_pieces", **join)


@pytest.mark.parametrize("operation", ["flat_collar", "shirt_collar", "hood"])
def test_a_collar_goes_over_a_yoke(operation: str) -> None:
    """The front neck lies on two pieces, the shoulder within one: it is notched on both sides there."""
    pattern = pattern_of(after(yoked(), operation, neck=NECK))
    off = walks(operation, misfits(pattern))
    assert off == pytest.approx(dict.fromkeys(off, 0.0), abs=0.01)
    assert pattern.notches[f"{operation}/neck/shoulder_notch"].seam == f"{operation}/neck"
    lone = [one for name, one in pattern.notches.items() if name.endswith("/seam_notch")]
    assert lone and {one.seam for one in lone} == {None}, "a seam meets the collar there: it is the mate"
