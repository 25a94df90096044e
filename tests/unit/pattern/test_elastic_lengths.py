"""Elastics: their lengths follow the edges, and are counted by hand with lengths of Shapely's."""

from dataclasses import replace
from math import isclose
from typing import Any

import pytest
from shapely.geometry import LineString

from notchbook.errors import InputError
from notchbook.finish import elastic_cuts, production_table
from notchbook.pattern import Pattern, lost_edges, pattern_from_data, pattern_to_data
from notchbook.recipe import Replay, add_step, replay
from support.stretch_bodies import banded_run, stretch_run, whole
from support.two_sided import drafted, two_sided

SUIT = "bodysuit"
LAP = 10.0
"""mm: ends lapped 3/8 to 1/2 in (common practice, no source)."""


def length(pattern: Pattern, name: str) -> float:
    """An edge as a chain of short straight lines, measured by Shapely."""
    places = pattern.edges[name].path.flattened(0.001)
    return float(LineString([(place.x, place.y) for place in places]).length)


def cuts(run: Replay) -> dict[str, tuple[int, float]]:
    """How often and how long, by title."""
    return {one.title: (one.times, one.length) for one in elastic_cuts(run.pattern, production_table())}


def test_a_suit_takes_two_elastics_for_the_legs_one_for_the_neck_two_for_the_armholes() -> None:
    run = stretch_run(SUIT)
    leg, neck, armhole = (
        length(run.pattern, f"{SUIT}.front/{word}") + length(run.pattern, f"{SUIT}.back/{word}")
        for word in ("leg_opening", "neck", "armhole")
    )
    found = cuts(run)
    assert {title: times for title, (times, _) in found.items()} == {
        "leg elastic": 2,
        "neck elastic": 1,
        "armhole elastic": 2,
    }
    assert found["leg elastic"][1] == pytest.approx(0.90 * leg + LAP, abs=0.1)
    assert found["neck elastic"][1] == pytest.approx(0.95 * 2.0 * neck + LAP, abs=0.1)
    assert found["armhole elastic"][1] == pytest.approx(0.95 * armhole + LAP, abs=0.1)


def test_an_armhole_with_a_sleeve_has_none() -> None:
    assert "armhole elastic" not in cuts(stretch_run(SUIT, sleeve="long"))


@pytest.mark.parametrize("side_seam", [False, True])
def test_the_waist_of_leggings_follows_the_body(side_seam: bool) -> None:
    """0.85 to 0.95 of the body's waist (common practice): 0.90 of it."""
    body = whole()
    found = cuts(stretch_run("leggings", body, side_seam=side_seam))
    assert set(found) == {"waist elastic"}
    times, cut = found["waist elastic"]
    assert times == 1
    assert cut == pytest.approx(0.90 * body.value("waist_girth") + LAP)


def test_it_follows_a_later_change() -> None:
    body = whole()
    low, high = (cuts(stretch_run(SUIT, body, leg=leg))["leg elastic"][1] for leg in ("low", "high"))
    assert not isclose(low, high, abs_tol=5.0)


def test_an_opening_with_a_band_has_no_elastic_any_more() -> None:
    edges = [
        (f"{SUIT}.front/neck", f"{SUIT}.front/neck_pit"),
        (f"{SUIT}.back/neck", f"{SUIT}.back/side_neck_point"),
    ]
    assert set(cuts(banded_run(SUIT, edges))) == {"leg elastic", "armhole elastic"}


def test_two_sides_that_differ_have_an_elastic_each_and_one_round_the_body() -> None:
    run = drafted(SUIT, two_sided(SUIT, "shoulder_length"))
    found = cuts(run)
    assert found["right armhole elastic"][0] == found["left armhole elastic"][0] == 1
    assert found["neck elastic"][0] == 1
    elastic = run.pattern.elastics[f"{SUIT}/neck_elastic"]
    by_hand = sum(
        length(run.pattern, edge) * (1 if run.pattern.piece_of(edge).cut == "single" else 2)
        for edge in elastic.edges
    )
    assert found["neck elastic"][1] == pytest.approx(0.95 * by_hand + LAP, abs=0.1)
    one_sided = cuts(drafted(SUIT, two_sided(SUIT)))["neck elastic"][1]
    assert found["neck elastic"][1] == pytest.approx(one_sided, abs=12.0)


def test_sides_alike_keep_their_two() -> None:
    found = cuts(drafted(SUIT, two_sided(SUIT)))
    assert {title: times for title, (times, _) in found.items()} == {
        "leg elastic": 2,
        "neck elastic": 1,
        "armhole elastic": 2,
    }


def test_an_edge_that_is_gone_is_told() -> None:
    pattern = stretch_run(SUIT).pattern
    elastic = pattern.elastics[f"{SUIT}/leg_elastic"]
    assert lost_edges(pattern, elastic) == ()
    away = replace(elastic, edges=(*elastic.edges, f"{SUIT}.front/nowhere"))
    assert lost_edges(pattern, away) == (f"{SUIT}.front/nowhere",)


def test_elastics_are_stored_and_read_in_the_third_form() -> None:
    pattern = stretch_run(SUIT).pattern
    data = pattern_to_data(pattern)
    assert data["format"] == 3
    assert pattern_from_data(data).elastics == pattern.elastics
    assert "elastics" not in pattern_to_data(replace(pattern, elastics={}))


@pytest.mark.parametrize(
    ("key", "value"), [("share", "much"), ("goes_round", "arm"), ("edges", ["Not A Name"]), ("name", 3)]
)
def test_a_damaged_elastic_is_refused(key: str, value: Any) -> None:
    data = pattern_to_data(stretch_run(SUIT).pattern)
    data["elastics"][0][key] = value
    with pytest.raises(InputError) as refused:
        pattern_from_data(data)
    assert refused.value.code == "pattern-data-damaged"


def test_a_style_line_through_a_leg_keeps_its_elastic() -> None:
    """An edge that is cut in two is a group, which the elastic goes on over."""
    body = whole()
    run = stretch_run(SUIT, body)
    before = cuts(run)["leg elastic"]
    line = {
        "start": {"edge": f"{SUIT}.back/leg_opening", "from_point": f"{SUIT}.back/leg_side", "fraction": 0.4},
        "end": {"edge": f"{SUIT}.back/side_seam", "from_point": f"{SUIT}.back/leg_side", "fraction": 0.5},
    }
    recipe = add_step(run.recipe, "cut_style_line", {"lines": [line]}, base=body)
    after = replay(recipe, body)
    assert after.suspended is None
    assert cuts(after)["leg elastic"] == pytest.approx(before, abs=0.01)
