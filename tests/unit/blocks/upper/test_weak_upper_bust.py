"""The upper bust is the weakest witness: it spoils neither bust dart nor armholes nor widths."""

from dataclasses import replace

import pytest

from notchbook.blocks.upper import BodiceHalf, Lever, draft_bodice, proportion
from support.upper_given import WOMAN, shaped


def lever(half: BodiceHalf, name: str) -> Lever:
    return next(one for one in half.levers if one.name == name)


def back_over_front(half: BodiceHalf) -> float:
    return half.back.armhole.length - half.front.armhole.length


@pytest.mark.parametrize("front_length", [412.0, 415.0, 418.0])
def test_it_leaves_a_dart_that_the_lengths_ask_for(front_length: float) -> None:
    body = shaped(front_length=front_length, center_front=330.0)
    alone, beside = draft_bodice(body), draft_bodice(replace(body, upper_bust=1000.0))
    assert 4.1 <= beside.front.dart_angle < alone.front.dart_angle
    assert not lever(beside, "bust_dart").at_limit
    assert lever(beside, "upper_bust_turn").pulled < 0.0


def test_it_makes_no_dart_where_the_lengths_ask_for_none() -> None:
    body = shaped(front_length=408.0, center_front=325.0)
    assert draft_bodice(body).front.dart_angle == 0.0
    half = draft_bodice(replace(body, upper_bust=1000.0))
    assert half.front.dart_angle == 0.0
    assert lever(half, "bust_dart").at_limit


NARROW_BACK = replace(WOMAN, across_back=320.0, across_chest=360.0, shoulder=120.0, upper_bust=1000.0)
"""Its back armhole is short, and a large upper bust would make it shorter beside the front."""


def test_without_a_limit_it_parts_the_armholes(monkeypatch: pytest.MonkeyPatch) -> None:
    # The package gives its function the name of its module.
    monkeypatch.setitem(draft_bodice.__globals__, "are_apart", lambda _armholes: False)
    assert back_over_front(draft_bodice(NARROW_BACK)) < proportion("armhole.least_back_over_front")


def test_it_narrows_the_dart_by_only_so_much_as_keeps_the_armholes_together(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    half = draft_bodice(NARROW_BACK)
    least = proportion("armhole.least_back_over_front")
    assert least <= back_over_front(half) < least + 1.5
    alone = draft_bodice(replace(NARROW_BACK, upper_bust=None))
    monkeypatch.setitem(draft_bodice.__globals__, "are_apart", lambda _armholes: False)
    unlimited = draft_bodice(NARROW_BACK)
    assert unlimited.front.dart_angle < half.front.dart_angle < alone.front.dart_angle


def test_armholes_that_other_measures_part_too_stay_and_are_said(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the upper bust alone does not part them, nothing is bent to hide it."""
    body = replace(
        shaped(front_length=454.0),
        across_back=300.0,
        across_chest=370.0,
        shoulder=110.0,
        shoulder_slope=26.0,
        scye_depth=215.0,
        upper_bust=1000.0,
    )
    half = draft_bodice(body)
    assert back_over_front(half) < proportion("armhole.least_back_over_front") - 5.0
    monkeypatch.setitem(draft_bodice.__globals__, "are_apart", lambda _armholes: False)
    assert draft_bodice(body) == half


def wide(upper_bust: float, bust: float = 1060.0) -> BodiceHalf:
    return draft_bodice(replace(WOMAN, bust=bust, upper_bust=upper_bust))


@pytest.mark.parametrize("upper_bust", [940.0, 980.0, 1020.0])
def test_the_widths_give_way_to_it_by_what_two_readings_differ(upper_bust: float) -> None:
    half = wide(upper_bust)
    assert lever(half, "across_back").pulled == pytest.approx(10.0)
    assert lever(half, "across_chest").pulled == pytest.approx(10.0)
    room = lever(half, "armhole_width")
    assert room.pulled <= proportion("armhole.most_width_share") * 530.0
    assert not room.at_limit


def test_a_room_too_wide_in_itself_takes_more_of_them() -> None:
    half = wide(1060.0, bust=1130.0)
    assert lever(half, "across_back").pulled > 10.0
    alone = draft_bodice(replace(WOMAN, bust=1130.0))
    assert lever(half, "across_back").pulled == pytest.approx(lever(alone, "across_back").pulled, abs=1.5)
