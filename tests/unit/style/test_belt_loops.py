"""Belt loops: how many, how far apart, clear of everything that stands on the waist, or refused.

Double notches stand 10 to 13 mm apart (common practice, no source): what is nearer than 13 mm is read as one.
"""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.body.charts import shipped_chart
from notchbook.errors import StepRefused
from notchbook.pattern import Notch, Pattern, Place
from notchbook.recipe import Change, Replay, StepContext, add_step, replay
from notchbook.recipe.recipe import StepRecord
from notchbook.recipe.storage import lead_up
from notchbook.style.closures.half_waist import BandedEdge, half_waist, stations_on_half
from notchbook.style.closures.loop_places import loop_places
from support.closure_steps import FLY, FLY_WAIST, lower_sets, outside_length, polygon, stepped
from support.edge_steps import refusal, trousers
from support.odd_steps import NoParameters, odd_step, register

CLEAR = 13.0
FRONT_WAIST = "trousers.front/waist"


def flown() -> Replay:
    return stepped(trousers(), ("fly", FLY))


def with_notches(monkeypatch: pytest.MonkeyPatch, edge: str, start: str, *places: float) -> Replay:
    """Trousers with notches so far along an edge of the waist, mm, put there by a step of the test."""

    def marked(pattern: Pattern, _context: StepContext, _parameters: NoParameters) -> Change:
        found = (Notch(f"odd.waist/mark_{at:g}", Place(edge, start, at)) for at in places)
        return Change(pattern.with_notches(*found))

    register(monkeypatch, odd_step(marked))
    return stepped(trousers(), ("odd", {}), ("fly", FLY))


def loops_of(pattern: Pattern) -> list[float]:
    """How far from the opening the loops on the front waist stand, mm along it."""
    found = [one.place for one in pattern.notches.values() if one.purpose == "belt loop"]
    return sorted(place.amount for place in found if place.edge == FRONT_WAIST)


def test_a_loop_beside_two_marks_is_moved_clear_of_both(monkeypatch: pytest.MonkeyPatch) -> None:
    """The first loop would stand 70 mm from the opening: 2 mm after a mark, and 11 mm before the next one
    when it is moved 13 mm off the first. It moves to the other side."""
    done = with_notches(monkeypatch, FRONT_WAIST, "trousers.front/waist_center", 68.0, 92.0)
    pattern = stepped(done, ("belt_loops", {"edges": FLY_WAIST})).pattern
    assert loops_of(pattern)[0] == pytest.approx(55.0, abs=0.01)


def test_where_no_place_is_clear_the_loops_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    marks = [10.0 + 20.0 * index for index in range(9)]
    done = with_notches(monkeypatch, FRONT_WAIST, "trousers.front/waist_center", *marks)
    told = {"edges": FLY_WAIST[:1], "each_side": 1}
    assert refusal(done, "belt_loops", **told) == "loop-no-room"


def test_the_loop_at_the_center_stays_there_or_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    back = "trousers.back/waist"
    done = with_notches(monkeypatch, back, "trousers.back/waist_center", 6.0)
    assert refusal(done, "belt_loops", edges=FLY_WAIST) == "loop-no-room"
    free = with_notches(monkeypatch, back, "trousers.back/waist_center", 14.0)
    stepped(free, ("belt_loops", {"edges": FLY_WAIST}))


def test_loops_crowded_at_the_center_are_refused() -> None:
    """Four in 50 mm lie 12.5 mm apart: moved on to 13 mm from each other the last is too near the center."""
    half = half_waist(trousers().pattern, [BandedEdge(**one) for one in FLY_WAIST], "right")
    with pytest.raises(StepRefused) as refused:
        loop_places(trousers().pattern, half, half.length - 50.0, 4)
    assert refused.value.code == "loop-no-room"
    assert len(loop_places(trousers().pattern, half, half.length - 50.0, 3)) == 4


@settings(max_examples=60, deadline=None)
@given(
    marks=st.lists(st.floats(2.0, 170.0), max_size=9),
    first=st.floats(5.0, 120.0),
    each_side=st.integers(1, 8),
)
def test_every_loop_is_clear_of_all_that_stands_on_the_waist(
    marks: list[float], first: float, each_side: int
) -> None:
    """Measured on what comes out: marks, darts and seams by their stations, loops by each other."""
    notches = (
        Notch(f"odd.waist/mark_{index}", Place(FRONT_WAIST, "trousers.front/waist_center", at))
        for index, at in enumerate(marks)
    )
    pattern = trousers().pattern.with_notches(*notches)
    half = half_waist(pattern, [BandedEdge(**one) for one in FLY_WAIST], "right")
    try:
        places = loop_places(pattern, half, first, each_side)
    except StepRefused as refused:
        assert refused.code == "loop-no-room"
        return
    assert len(places) == each_side + 1
    assert places[-1] == half.length
    stops = [*stations_on_half(pattern, half)]
    for index, at in enumerate(places):
        others = [*stops, *places[:index], *places[index + 1 :]]
        assert min(abs(at - other) for other in others) >= CLEAR - 0.02
        assert 0.0 <= at <= half.length


def test_the_line_on_the_strip_is_where_the_raw_edges_meet_and_no_fold() -> None:
    """Cut twice as wide as finished, both raw edges are folded to the middle: nothing is folded on it."""
    strip = stepped(flown(), ("belt_loops", {"edges": FLY_WAIST, "width": "12 mm"})).pattern.pieces[
        "belt_loops.loops"
    ]
    assert not [one for one in strip.lines if one.kind == "fold_line"]
    (met,) = [one for one in strip.lines if one.kind == "placement"]
    west, south, east, north = polygon(strip).bounds
    assert (north - south, east - west) == pytest.approx((24.0, met.path.length))
    assert {met.path.start.y, met.path.end.y} == {12.0}


def test_loops_that_would_stand_far_apart_on_another_body_are_told() -> None:
    written = {"edges": FLY_WAIST, "each_side": 1, "follow_waist": False}
    done = stepped(flown(), ("belt_loops", written))
    assert "amount-unusual" in {one.code for one in done.states[-1].notes}
    usual = stepped(flown(), ("belt_loops", {"edges": FLY_WAIST}))
    assert "amount-unusual" not in {one.code for one in usual.states[-1].notes}


def test_where_the_sides_differ_the_longer_half_tells_whether_loops_stand_too_far_apart() -> None:
    """170 mm apart at the most (common practice): set so that the right half has just that."""
    base = lower_sets()["uneven"]
    pattern = replay(flown().recipe, base).pattern
    groups = [pattern.groups[f"trousers.{panel}/waist@right"] for panel in ("front", "back")]
    right = sum(outside_length(pattern, *group.members) for group in groups)
    told = {
        "edges": FLY_WAIST,
        "each_side": 2,
        "first": f"{right - 2.0 * 170.0:.3f} mm",
        "follow_waist": False,
    }
    recipe = add_step(flown().recipe, "belt_loops", told, base=base)
    (note,) = replay(recipe, base).states[-1].notes
    assert note.measured == pytest.approx(170.0 + 7.5 / 2.0, abs=0.1)


def waist_of(pattern: Pattern) -> float:
    """Half the waist, measured on the outlines, mm."""
    return sum(
        outside_length(pattern, *pattern.groups[f"trousers.{panel}/waist"].members)
        for panel in ("front", "back")
    )


@pytest.mark.parametrize(("size", "loops_each_side"), [(0, 3), (4, 3), (11, 4)])
def test_a_wider_waist_gets_more_loops_and_none_is_taken_away(size: int, loops_each_side: int) -> None:
    """Three on each side written; sizes 76, 92 and 128; 170 mm apart at most (common practice, no source)."""
    told = {"edges": FLY_WAIST, "each_side": 3}
    recipe = stepped(flown(), ("belt_loops", told)).recipe
    done = replay(recipe, shipped_chart("women").sizes[size])
    (strip,) = (one for one in done.pattern.pieces.values() if one.name == "belt_loops.loops")
    loops = len([one for one in strip.lines if one.kind == "cut_line"]) + 1
    stand = len([one for one in done.pattern.notches.values() if one.purpose == "belt loop"])
    least = math.ceil((waist_of(done.pattern) - 70.0) / 170.0)
    assert stand - 1 == (loops - 1) / 2 == max(3, least) == loops_each_side
    assert done.states[-1].notes == ()


def test_loops_of_an_older_recipe_stay_as_many_as_written() -> None:
    older = {"edges": FLY_WAIST, "each_side": 2}
    led = lead_up(StepRecord("belt_loops-1", "belt_loops", 1, "belt_loops", older))
    assert led.parameters == {**older, "follow_waist": False}
