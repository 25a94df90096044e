"""Flat collars: as long as the neck, higher with more overlap, larger above than below."""

import math
from typing import Any

import numpy as np
import pytest

from notchbook.geometry import Path, Point
from notchbook.pattern import Pattern, pattern_from_data, pattern_to_data, walk_seam
from notchbook.recipe import replay
from notchbook.style.collars.laid_neck import LaidNeck
from notchbook.style.collars.notes import resulting_stand
from support.collar_steps import (
    NECK_LENGTH_EDGES,
    after,
    code_of,
    collared,
    length_of,
    on_stand,
    pattern_of,
    said,
    shape_of,
)
from support.edge_steps import misfits, necks
from support.traced_steps import NECK
from support.upper_patterns import drafted

COLLAR, UNDER = "flat_collar.collar", "flat_collar.undercollar"


def stands(overlap: str, width: str = "65 mm") -> float:
    (note,) = [
        one
        for one in collared("flat_collar", overlap=overlap, width=width).states[-1].notes
        if one.code == "collar-stands"
    ]
    assert note.measured is not None
    return note.measured


def test_its_neck_edge_is_as_long_as_the_neck() -> None:
    pattern = pattern_of(collared("flat_collar"))
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    for piece in (COLLAR, UNDER):
        assert length_of(pattern, f"{piece}/neck_edge") == pytest.approx(neck, abs=0.05)
    walks = {name: off for name, off in misfits(pattern).items() if name.startswith("flat_collar/")}
    assert set(walks) == {"flat_collar/neck", "flat_collar/upper_neck", "flat_collar/outer"}
    assert walks == pytest.approx(dict.fromkeys(walks, 0.0), abs=0.01)
    assert pattern_from_data(pattern_to_data(pattern)) == pattern


def test_more_overlap_gives_more_stand() -> None:
    """10 to 15 mm lie flat, 70 to 80 mm stand high (figures of the trade, from memory)."""
    found = [stands(overlap, "80 mm") for overlap in ("0 mm", "12 mm", "40 mm", "75 mm")]
    assert found == sorted(found)
    assert found[0] == pytest.approx(0.0, abs=0.5)
    assert found[1] < 3.0 < 8.0 < found[3]


def test_the_overlap_turns_the_front_by_its_angle() -> None:
    """The collar's front end turns against its back by as much as lapping the tips turns the front: from
    plane geometry, twice the arc sine of half the lap over the shoulder."""
    pattern = pattern_of(collared("flat_collar", overlap="0 mm"))
    lapped = pattern_of(collared("flat_collar", overlap="60 mm"))

    def turned(one: Pattern) -> float:
        path = one.edges[f"{UNDER}/neck_edge"].path
        return path.tangent_at(path.length).direction()

    shoulder = length_of(pattern, "bodice.front/shoulder")
    wanted = 2.0 * math.degrees(math.asin(60.0 / (2.0 * shoulder)))
    assert turned(lapped) - turned(pattern) == pytest.approx(wanted, abs=0.05)


def test_the_stand_of_a_straight_strip_on_a_round_neck_is_half_its_width() -> None:
    """A strip as long at its outer edge as at the neck cannot lie down: it folds in half."""
    arc = Path.polyline(
        [Point(60.0 * math.sin(step / 50.0), -60.0 * (1.0 - math.cos(step / 50.0))) for step in range(140)]
    )
    laid = LaidNeck(arc, 60.0, 120.0)
    assert resulting_stand(laid, arc.length, 40.0) == pytest.approx(20.0, abs=0.5)
    assert resulting_stand(laid, laid.girth(40.0), 40.0) == pytest.approx(0.0, abs=0.1)


def test_the_upper_collar_is_larger_by_the_turn() -> None:
    """Undercollar about 1/8 in smaller all told (from memory): 1/16 in on each side."""
    pattern = pattern_of(collared("flat_collar", front="pointed", turn="2 mm"))
    heights = [pattern.pieces[name].bounds.height for name in (COLLAR, UNDER)]
    assert heights[0] > heights[1]
    center = [length_of(pattern, f"{name}/center_back") for name in (COLLAR, UNDER)]
    assert center[0] - center[1] == pytest.approx(2.0, abs=0.01)
    outer = [
        sum(length_of(pattern, f"{name}/{word}") for word in ("end", "outer")) for name in (COLLAR, UNDER)
    ]
    assert pattern.seams["flat_collar/outer"].ease == pytest.approx(outer[0] - outer[1], abs=0.05)
    assert outer[0] - outer[1] > 2.0
    assert shape_of(pattern, COLLAR).area > shape_of(pattern, UNDER).area


@pytest.mark.parametrize(("overlap", "width"), [("40 mm", "80 mm"), ("12 mm", "50 mm")])
def test_its_outer_edge_has_no_bump_where_the_neck_is_hollow(overlap: str, width: str) -> None:
    """Looked along from the rounded front to the center back it is bent less and less (what a patternmaker
    calls fair; common practice), from its directions every millimeter; 0.3 per meter is a bend of 1 in 40 m.
    """
    pattern = pattern_of(collared("flat_collar", "large-116", overlap=overlap, width=width))
    path = pattern.edges[f"{UNDER}/outer"].path
    places = np.arange(1.0, path.length - 1.0)
    directions = np.unwrap([math.radians(path.tangent_at(place).direction()) for place in places])
    bends = np.gradient(directions, places) * 1000.0
    behind = bends[int(np.argmax(bends)) :]
    assert float(np.max(behind - np.minimum.accumulate(behind))) < 0.3


def test_amounts_that_are_seldom_made_are_told() -> None:
    """A lap of 0 to 80 mm and a turn of 1/32 to 1/8 in (both from memory)."""
    assert "amount-unusual" not in said(collared("flat_collar", overlap="80 mm", turn="3 mm"))
    assert "amount-unusual" in said(collared("flat_collar", overlap="85 mm"))
    assert "amount-unusual" in said(collared("flat_collar", turn="6 mm"))


def test_it_is_cut_on_the_fold_and_in_halves_where_the_back_opens() -> None:
    pattern = pattern_of(collared("flat_collar"))
    assert [pattern.pieces[name].cut for name in (COLLAR, UNDER)] == ["fold", "fold"]
    assert [told.material for told in pattern.pieces[COLLAR].instructions] == ["self", "fusible"]
    halves = pattern_of(collared("flat_collar", opens="back"))
    assert [halves.pieces[name].cut for name in (COLLAR, UNDER)] == ["pair", "pair"]
    assert halves.seams["flat_collar/outer"].first[-1].edge == f"{UNDER}/center_back"


def test_an_undercollar_on_the_bias_has_a_seam_at_the_center_back() -> None:
    done = collared("flat_collar", undercollar="bias")
    pattern = pattern_of(done)
    assert (pattern.pieces[UNDER].cut, pattern.pieces[UNDER].grain.degrees) == ("pair", 45.0)
    assert "flat_collar/center_back" in pattern.seams
    assert UNDER in done.grains


def test_notches_stand_at_shoulder_and_front() -> None:
    pattern = pattern_of(collared("flat_collar"))
    found = pattern.notches[f"{UNDER}/neck_edge/shoulder_notch"]
    assert found.place.amount == pytest.approx(length_of(pattern, "bodice.front/neck"), abs=0.05)
    walk = walk_seam(pattern, pattern.seams["flat_collar/neck"])
    (station,) = walk.stations
    assert station.notch == "balance_notch"
    assert station.first == pytest.approx(station.second, abs=0.01)


def test_it_follows_a_changed_neckline() -> None:
    lowered = after(
        drafted("medium-92", "bodice"), "change_neckline", necks=necks("round", "3 cm"), width="1 cm"
    )
    pattern = pattern_of(after(lowered, "flat_collar", neck=NECK))
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    assert neck > length_of(drafted("medium-92", "bodice").pattern, *NECK_LENGTH_EDGES) + 20.0
    assert length_of(pattern, f"{COLLAR}/neck_edge") == pytest.approx(neck, abs=0.05)


def test_it_ends_at_the_center_of_a_front_with_a_button_stand() -> None:
    """The neck edge is cut where the collar begins: what lies before it is left free."""
    pattern = pattern_of(on_stand("flat_collar", extension="12 mm"))
    parts = pattern.groups["button_stand.front/lap_top"].members
    assert length_of(pattern, parts[0]) == pytest.approx(12.0, abs=0.01)
    assert length_of(pattern, f"{COLLAR}/neck_edge") == pytest.approx(
        length_of(pattern, *NECK_LENGTH_EDGES) + 8.0, abs=0.05
    )
    whole = pattern_of(on_stand("flat_collar", extension="20 mm"))
    assert length_of(whole, f"{COLLAR}/neck_edge") == pytest.approx(
        length_of(whole, *NECK_LENGTH_EDGES), abs=0.05
    )


@pytest.mark.parametrize(
    ("code", "parameters"),
    [
        ("collar-overlap-long", {"overlap": "20 cm"}),
        ("collar-overlap-long", {"overlap": "-1 cm"}),
        ("collar-front-short", {"point": "20 mm", "lean": "25 mm"}),
        ("turn-out-of-range", {"turn": "30 mm"}),
        ("collar-outline-crosses", {"front": "pointed", "point": "100 cm"}),
        ("collar-below-nothing", {"extension": "-5 mm"}),
        ("collar-extension-long", {"extension": "30 cm"}),
        ("collar-neck-broken", {"neck": [NECK[0], {**NECK[1], "starts_at": "bodice.back/nape"}]}),
        ("amount-not-positive", {"width": "0 mm"}),
        (
            "collar-neck-turned",
            {
                "neck": [
                    {"edge": "bodice.back/neck", "starts_at": "bodice.back/nape"},
                    {"edge": "bodice.front/neck", "starts_at": "bodice.front/side_neck_point"},
                ]
            },
        ),
    ],
)
def test_it_refuses_in_words(code: str, parameters: dict[str, Any]) -> None:
    assert code_of(collared("flat_collar", **parameters)) == code


def test_a_neck_in_two_parts_that_no_seam_joins_is_not_laid_out() -> None:
    odd = [NECK[0], {"edge": "bodice.back/shoulder", "starts_at": "bodice.back/side_neck_point"}]
    assert code_of(collared("flat_collar", neck=odd)) == "collar-neck-not-laid"


def test_a_closed_neck_must_go_over_the_head() -> None:
    run = drafted("medium-92", "bodice")
    measured = run.measures.with_value("head_girth", 560.0)
    done = replay(collared("flat_collar").recipe, measured)
    assert "collar-under-head" in said(done)
    assert "collar-under-head" not in said(collared("flat_collar"))  # the head was not measured
    round_neck = 2.0 * length_of(run.pattern, *NECK_LENGTH_EDGES)
    for head, is_told in ((round_neck - 3.0, False), (round_neck + 3.0, True)):
        tried = replay(collared("flat_collar").recipe, run.measures.with_value("head_girth", head))
        assert ("collar-under-head" in said(tried)) == is_told
    open_front = replay(on_stand("flat_collar", extension="20 mm").recipe, measured)
    assert "collar-under-head" not in said(open_front)


def test_a_back_drawn_whole_has_the_collar_of_its_half() -> None:
    """Its neck goes on into that of the other half: the center back lies square to both."""
    half = pattern_of(collared("flat_collar"))
    whole = after(drafted("medium-92", "bodice"), "unfold", pieces=["bodice.back"])
    back = {"edge": "bodice.back/neck@right", "starts_at": "bodice.back/side_neck_point@right"}
    unfolded = pattern_of(after(whole, "flat_collar", neck=[NECK[0], back]))
    for piece in (COLLAR, UNDER):
        off = shape_of(unfolded, piece).symmetric_difference(shape_of(half, piece))
        assert off.area == pytest.approx(0.0, abs=5.0)


def test_a_stand_down_the_back_leaves_the_collar_as_it_is() -> None:
    """Beyond the nape the outline runs on along the top of the stand, not down the center back."""
    plain = pattern_of(collared("flat_collar", opens="back"))
    center = [{"center": "bodice.back/center_back", "top": "bodice.back/nape"}]
    stand = after(
        drafted("medium-92", "bodice"), "button_stand", centers=center, facing="none", width="20 mm"
    )
    buttoned = pattern_of(after(stand, "flat_collar", neck=NECK, opens="back"))
    for piece in (COLLAR, UNDER):
        off = shape_of(buttoned, piece).symmetric_difference(shape_of(plain, piece))
        assert off.area == pytest.approx(0.0, abs=20.0)
