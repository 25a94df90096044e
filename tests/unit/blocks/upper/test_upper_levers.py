"""Each lever moves when its measures disagree, is seen, and stops at its limit."""

from dataclasses import replace

import pytest

from notchbook.blocks.upper import BodiceGiven, BodiceHalf, Lever, draft_bodice, proportion, slope_drop
from notchbook.geometry import Path
from support.upper_given import CHILD, MAN, WOMAN, settled, shaped


def lever(half: BodiceHalf, name: str) -> Lever:
    return next(lever for lever in half.levers if lever.name == name)


def test_nothing_is_pulled_on_an_ordinary_woman() -> None:
    half = draft_bodice(WOMAN)
    for name in ("across_back", "across_chest", "shoulder", "shoulder_tilt", "center_front"):
        assert lever(half, name).pulled == 0.0
    assert not any(one.at_limit for one in half.levers)


@pytest.mark.parametrize("body", [MAN, CHILD], ids=["man", "child"])
def test_men_and_children_are_left_straight(body: BodiceGiven) -> None:
    half = draft_bodice(body)
    assert not any(one.at_limit for one in half.levers)
    assert half.front.side.start.x == pytest.approx(half.front.side.end.x)
    assert half.back.side.start.x == pytest.approx(half.back.side.end.x)
    assert half.front.dart_angle == 0.0
    assert half.front.waist_darts == half.back.waist_darts == ()
    assert half.fallen_waist == pytest.approx(body.bust)


def test_a_waist_over_the_bust_leans_the_sides_out() -> None:
    half = draft_bodice(replace(MAN, waist=1160.0))
    assert half.front.side.end.x > half.front.side.start.x
    assert lever(half, "side_tilt").pulled < 0.0
    assert half.fallen_waist is None


def test_a_short_shoulder_narrows_the_width_then_is_lengthened() -> None:
    short = [draft_bodice(replace(WOMAN, shoulder=shoulder)) for shoulder in (116.0, 110.0, 104.0, 96.0)]
    narrowed = [lever(half, "across_back").pulled for half in short]
    lengthened = [lever(half, "shoulder").pulled for half in short]
    assert narrowed == sorted(narrowed, reverse=True)
    assert lengthened == sorted(lengthened)
    assert narrowed[-1] < 0.0 < lengthened[-1]
    assert lever(draft_bodice(replace(WOMAN, shoulder=88.0)), "shoulder").at_limit


def test_the_widths_give_way_to_a_full_arm_as_far_as_two_readings_differ() -> None:
    plain = draft_bodice(WOMAN)
    arms = [draft_bodice(replace(WOMAN, upper_arm=arm)) for arm in (260.0, 305.0, 360.0, 420.0)]
    for name in ("across_back", "across_chest"):
        pulled = [lever(half, name).pulled for half in arms]
        assert pulled[0] == 0.0
        assert pulled == sorted(pulled, reverse=True)
        assert -10.0 < pulled[-1] < -9.0
        assert pulled[-1] == pulled[-2]
    assert lever(arms[-1], "armhole_width").pulled > lever(plain, "armhole_width").pulled + 9.0
    assert arms[0].front.armhole.length == plain.front.armhole.length
    assert arms[-1].front.armhole.length > plain.front.armhole.length


def test_a_long_shoulder_widens_the_width() -> None:
    half = draft_bodice(replace(WOMAN, shoulder=166.0))
    assert lever(half, "across_back").pulled > 0.0
    assert lever(half, "across_chest").pulled > 0.0
    assert lever(draft_bodice(replace(WOMAN, shoulder=180.0)), "across_back").at_limit


def test_the_tip_tilts_where_one_side_can_spare_it() -> None:
    half = draft_bodice(replace(WOMAN, across_chest=300.0, across_back=376.0, shoulder=134.0))
    assert lever(half, "shoulder_tilt").pulled < 0.0


def test_a_wide_armhole_takes_from_the_widths() -> None:
    wide = replace(WOMAN, bust=1120.0, across_back=352.0, across_chest=330.0)
    assert lever(draft_bodice(wide), "across_back").pulled > 0.0


def test_a_narrow_armhole_gives_to_the_arm() -> None:
    half = draft_bodice(replace(WOMAN, across_back=420.0, across_chest=396.0, shoulder=148.0))
    assert lever(half, "across_back").pulled < 0.0


def test_a_neck_too_deep_is_raised_and_said() -> None:
    half = draft_bodice(shaped(center_front=330.0))
    depth = half.front.neck.end.y - half.front.neck.start.y
    assert depth == pytest.approx(proportion("neck.most_depth_share") * WOMAN.neck)
    assert half.contour == lever(half, "center_front").pulled > 5.0


def test_a_neck_too_shallow_is_lowered_and_said() -> None:
    half = draft_bodice(shaped(center_front=388.0))
    depth = half.front.neck.end.y - half.front.neck.start.y
    assert depth == pytest.approx(proportion("neck.least_depth_share") * WOMAN.neck)
    assert half.contour == lever(half, "center_front").pulled < -5.0


def test_a_bust_dart_is_not_lost_without_a_word() -> None:
    half = draft_bodice(shaped(front_length=408.0, center_front=325.0))
    assert half.front.dart_angle == 0.0
    assert lever(half, "bust_dart").at_limit
    assert lever(half, "bust_dart").pulled < proportion("bust.least_dart")


def test_a_very_wide_bust_dart_is_flagged() -> None:
    assert lever(draft_bodice(shaped(front_length=470.0, center_front=375.0)), "bust_dart").at_limit


def test_the_upper_bust_is_second_evidence() -> None:
    """A smaller upper bust asks for a wider dart, a larger one for a narrower, each within its limit."""
    plain = draft_bodice(WOMAN)
    small, large = (draft_bodice(replace(WOMAN, upper_bust=girth)) for girth in (920.0, 1000.0))
    assert small.front.dart_angle > plain.front.dart_angle > large.front.dart_angle
    assert lever(small, "upper_bust").pulled > lever(large, "upper_bust").pulled
    assert lever(draft_bodice(replace(WOMAN, upper_bust=820.0)), "upper_bust_turn").at_limit


def test_the_upper_bust_that_the_lengths_foretell_changes_nothing() -> None:
    plain = draft_bodice(WOMAN)
    same = replace(WOMAN, upper_bust=2.0 * (plain.front.underarm.x + plain.back.underarm.x))
    assert draft_bodice(same).front.dart_angle == pytest.approx(plain.front.dart_angle, abs=1e-3)


def test_a_man_s_unmeasured_balance_gives_way_to_his_center_front() -> None:
    free = draft_bodice(MAN)
    longer = draft_bodice(replace(MAN, center_front=free.front.neck.start.y + 10.0))
    assert longer.front.neck.start.y == pytest.approx(free.front.neck.start.y + 10.0)
    assert longer.balance < free.balance
    depths = [half.front.neck.end.y - half.front.neck.start.y for half in (free, longer)]
    # The balance takes about half of it, the depth of the neck the other half.
    assert 3.0 < depths[0] - depths[1] < 7.0
    far = draft_bodice(replace(MAN, center_front=free.front.neck.start.y + 80.0))
    assert far.contour < 0.0
    assert lever(far, "balance").at_limit


def test_a_steep_shoulder_leans_the_neck() -> None:
    assert lever(draft_bodice(replace(WOMAN, shoulder_slope=44.0)), "neck_lean").pulled > 7.0


def test_wide_waist_darts_are_flagged() -> None:
    half = draft_bodice(settled(replace(WOMAN, waist=600.0)))
    assert not lever(half, "back_waist_dart").at_limit
    assert lever(draft_bodice(settled(replace(WOMAN, waist=500.0))), "back_waist_dart").at_limit
    one = draft_bodice(replace(WOMAN, waist=700.0, front_darts=1, back_darts=1))
    assert lever(one, "back_waist_dart").at_limit


def test_a_lever_at_rest_is_not_at_its_limit() -> None:
    assert not Lever("x", 0.0, 0.0, 5.0, 0.0).at_limit
    assert Lever("x", 5.0, 0.0, 5.0, 0.0).at_limit
    assert Lever("x", 0.0, 0.0, 5.0, 2.0).at_limit


def test_square_shoulders_lift_the_armhole() -> None:
    """By as much as the shoulder point: 123 mm at 10 instead of 20 degrees (sine table: 0.1736, 0.3420)."""
    assert slope_drop(123.0, 10.0, 20.0) == pytest.approx(-123.0 * (0.3420 - 0.1736), abs=0.02)
    assert slope_drop(123.0, 20.0, 20.0) == 0.0
    assert slope_drop(123.0, 32.0, 20.0) > 0.0


LEANING_BACK = replace(WOMAN, bust=1040, waist=880, across_back=330, across_chest=372, shoulder=106)
"""Narrow in the back and wide in the chest on a short shoulder: its front would be less hollow."""


def hollow(armhole: Path) -> float:
    """The greatest distance from the straight way, as a share of it; by sampling alone."""
    start, way = armhole.start, armhole.end - armhole.start
    places = [armhole.point_at(armhole.length * number / 400.0) for number in range(401)]
    return max(abs(way.cross(place - start)) for place in places) / way.norm() ** 2


def test_a_front_that_would_lean_back_is_made_hollower() -> None:
    half = draft_bodice(LEANING_BACK)
    assert lever(half, "front_hollower").pulled > 0.0
    assert hollow(half.front.armhole) > hollow(half.back.armhole)


def test_without_its_levers_that_front_leans_back(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("notchbook.blocks.upper.armhole_lengths.leans_back", lambda _armholes: False)
    half = draft_bodice(LEANING_BACK)
    assert hollow(half.front.armhole) < hollow(half.back.armhole)


def test_widths_give_way_by_two_readings_before_the_shoulder_and_no_more_while_it_can() -> None:
    for shoulder in (100.0, 98.0, 96.0):
        half = draft_bodice(replace(WOMAN, shoulder=shoulder))
        extended = lever(half, "shoulder")
        if not extended.at_limit and extended.pulled > 0.0:
            assert lever(half, "across_back").pulled == pytest.approx(-9.8, abs=0.01)


def test_an_upper_bust_far_off_turns_the_dart_no_farther() -> None:
    """Beyond twice the error of the difference it is a slip: 0.3 of 14.4 degrees (own judgment)."""
    turns = [
        lever(draft_bodice(replace(WOMAN, upper_bust=girth)), "upper_bust_turn").pulled
        for girth in (1080.0, 1040.0, 1000.0, 880.0, 840.0)
    ]
    assert turns == sorted(turns)
    assert turns[0] == -4.3
    assert turns[-1] == 4.3
