"""Turning the sleeve: meeting points move by their share of the armhole, and every length still agrees."""

from typing import Any

import pytest

from notchbook.pattern import pattern_to_data, walk_seam
from notchbook.recipe import Replay, add_step, replay
from support.skirt_judge import Judge
from support.sleeve_bodies import sleeve_recipe, sleeve_run, spoken_of, woman

SLEEVE = "sleeve.sleeve"


def turned(degrees: float, **parameters: Any) -> Replay:
    base = woman()
    recipe = sleeve_recipe(base)
    return replay(add_step(recipe, "turn_sleeve", {"degrees": degrees, **parameters}, base=base), base)


def armhole(run: Replay) -> float:
    pattern = run.pattern
    return sum(
        walk_seam(pattern, pattern.seams[f"sleeve/{which}_armhole"]).first for which in ("front", "back")
    )


def pitch(run: Replay) -> float:
    return (
        next(
            note.measured
            for note in reversed(run.notes)
            if note.code.startswith("sleeve-") and note.unit == "deg"
        )
        or 0.0
    )


@pytest.mark.parametrize("degrees", [3.0, 8.0, -3.0, -8.0, 14.0])
def test_everything_moves_by_its_share_of_the_armhole(degrees: float) -> None:
    plain, run = sleeve_run(), turned(degrees)
    assert run.suspended is None, str(run.suspended)
    way = armhole(plain) * degrees / 360.0
    before, after = plain.pattern, run.pattern
    old, new = before.pieces[SLEEVE], after.pieces[SLEEVE]
    cap = before.edges[f"{SLEEVE}/cap_front"].path.joined(before.edges[f"{SLEEVE}/cap_back"].path)
    shoulder = cap.nearest(new.points[f"{SLEEVE}/cap_top"])
    assert shoulder.gap < 1e-6
    assert shoulder.distance_along == pytest.approx(
        before.edges[f"{SLEEVE}/cap_front"].length - way, abs=1e-5
    )
    assert old.sew_line.area() == pytest.approx(new.sew_line.area(), abs=1e-3), "nothing is redrawn"
    for which in ("front", "back"):
        seam = f"sleeve/{which}_armhole"
        walks = [walk_seam(pattern, pattern.seams[seam]) for pattern in (before, after)]
        assert walks[1].misfit == pytest.approx(0.0, abs=1e-5)
        for old_place, new_place in zip(walks[0].stations, walks[1].stations, strict=True):
            assert (new_place.notch, new_place.first) == (old_place.notch, old_place.first)
            assert new_place.second == pytest.approx(old_place.second, abs=1e-5)
    assert pitch(run) == pytest.approx(pitch(plain) + degrees, abs=1e-4)
    assert Judge(pattern_to_data(after)).polygon(SLEEVE).is_valid


def test_a_forward_turn_parts_the_back_under_the_arm() -> None:
    run = turned(6.0)
    way = armhole(run) * 6.0 / 360.0
    assert run.pattern.groups[f"{SLEEVE}/cap_back"].members == (
        f"{SLEEVE}/cap_back/above",
        f"{SLEEVE}/cap_back/below",
    )
    assert run.pattern.edges[f"{SLEEVE}/cap_back/below"].length == pytest.approx(way, abs=1e-5)
    first = run.pattern.seams["sleeve/front_armhole"].second
    assert [use.edge for use in first] == [f"{SLEEVE}/cap_back/below", f"{SLEEVE}/cap_front"]
    assert f"{SLEEVE}/cap_front" in turned(-6.0).pattern.groups


def test_no_check_has_a_word_to_say_of_a_turned_sleeve() -> None:
    for degrees in (5.0, -5.0):
        assert [finding.code for finding in spoken_of(turned(degrees))] == []


def test_a_turn_by_nothing_changes_nothing() -> None:
    assert pattern_to_data(turned(0.0).pattern) == pattern_to_data(sleeve_run().pattern)


def test_what_cannot_be_turned_is_refused() -> None:
    assert turned(5.0, sleeve="other").suspended is not None
    lost = turned(5.0, sleeve="other").suspended
    assert lost is not None
    assert lost.error.code == "turn-sleeve-no-sleeve"


def turned_twice(first: float, second: float) -> Replay:
    base = woman()
    recipe = add_step(sleeve_recipe(base), "turn_sleeve", {"degrees": first}, base=base)
    return replay(add_step(recipe, "turn_sleeve", {"degrees": second}, base=base), base)


@pytest.mark.parametrize(("first", "second"), [(4.0, 2.0), (6.0, -2.0), (-3.0, -4.0), (-6.0, 2.5)])
def test_a_second_turn_is_added_to_the_first(first: float, second: float) -> None:
    twice, once = turned_twice(first, second), turned(first + second)
    assert twice.suspended is None, str(twice.suspended)
    assert pitch(twice) == pytest.approx(pitch(once), abs=1e-4)
    edges = {name: edge for name, edge in twice.pattern.edges.items() if name.startswith(SLEEVE)}
    for name, edge in edges.items():
        assert edge.length == pytest.approx(once.pattern.edges[name].length, abs=1e-5)
    for which in ("front", "back"):
        seam = f"sleeve/{which}_armhole"
        walks = [walk_seam(run.pattern, run.pattern.seams[seam]) for run in (once, twice)]
        for old, new in zip(walks[0].stations, walks[1].stations, strict=True):
            assert (new.first, new.second) == pytest.approx((old.first, old.second), abs=1e-5)
    assert [finding.code for finding in spoken_of(twice)] == []


@pytest.mark.parametrize(("first", "second"), [(4.0, -4.0), (3.0, -5.0), (-3.0, 6.0)])
def test_a_turn_back_past_the_draft_is_refused(first: float, second: float) -> None:
    stop = turned_twice(first, second).suspended
    assert stop is not None
    assert stop.error.code == "turn-sleeve-parted"


def test_either_sleeve_of_two_can_be_turned() -> None:
    """On a body whose armholes differ both are turned; a turn for the left leaves the right as it is."""
    uneven = woman().with_value("shoulder_slope", 27.3, "left")
    both = replay(add_step(sleeve_recipe(uneven), "turn_sleeve", {"degrees": 5.0}, base=uneven), uneven)
    assert {f"{SLEEVE}/cap_back@{side}" for side in ("right", "left")} <= both.pattern.groups.keys()
    assert [finding.code for finding in spoken_of(both)] == []
    base = woman()
    recipe = add_step(sleeve_recipe(base), "turn_sleeve", {"degrees": 5.0}, base=base, side="left")
    left = replay(recipe, base)
    assert f"{SLEEVE}/cap_back@left" in left.pattern.groups
    assert f"{SLEEVE}/cap_back@right" in left.pattern.edges
    assert [finding.code for finding in spoken_of(left)] == []


def test_a_turn_that_carries_a_notch_past_the_underarm_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("notchbook.style.turn_sleeve._NEAREST", 110.0)
    stop = turned(14.0).suspended
    assert stop is not None
    assert stop.error.code == "turn-sleeve-no-room"
