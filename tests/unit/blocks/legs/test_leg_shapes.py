"""Silhouettes: what knee and hem make of a leg, and how levers and limits show."""

from dataclasses import replace

import pytest

from notchbook.blocks.legs import TrousersGiven, draft_trousers, usual_crotch
from notchbook.errors import DraftRefused
from support.legs_given import PLUS, STOUT, WOMAN
from support.legs_judge import bends, leg_width, x_at
from support.upper_judge import heading, length, turn


def test_culottes_fall_straight() -> None:
    bare = replace(WOMAN, knee=None, hem=None, length=720.0, cut="culottes")
    half = draft_trousers(replace(bare, crotch=usual_crotch(bare)))
    trousers = draft_trousers(WOMAN)
    for panel in (half.front, half.back):
        assert heading(panel.inseam, at_end=False) == pytest.approx(-90.0, abs=0.01)
        assert panel.hip_side.x == pytest.approx(x_at(panel.side, panel.hip - 300.0), abs=1e-6)
        assert panel.hem.start.x == pytest.approx(-panel.hem.end.x, abs=1e-6)
        assert panel.knee is None
    assert half.front.extension > 1.4 * trousers.front.extension
    assert half.thigh == pytest.approx(half.thigh_below, abs=1e-6)


def test_shorts_have_no_knee_and_a_hem_square_to_both_seams() -> None:
    half = draft_trousers(replace(WOMAN, knee=None, hem=630.0, length=440.0))
    hem = 0.0
    for panel in (half.front, half.back):
        assert panel.knee_side is None
        hem += panel.hem.start.distance_to(panel.hem.end)
    assert hem == pytest.approx(630.0, abs=0.1)
    across = [
        turn(heading(panel.hem, at_end=True), heading(panel.inseam, at_end=True) + 90.0)
        for panel in (half.front, half.back)
    ]
    assert sum(across) == pytest.approx(180.0, abs=2.0) or sum(map(abs, across)) == pytest.approx(
        360.0, abs=3.0
    )


def test_a_hem_near_the_knee_needs_none() -> None:
    half = draft_trousers(replace(WOMAN, length=WOMAN.knee_depth + 20.0))
    assert half.front.knee is None
    assert length(half.front.side) == pytest.approx(WOMAN.knee_depth + 20.0, abs=0.1)


def test_a_flared_hem() -> None:
    half = draft_trousers(replace(WOMAN, knee=460.0, hem=600.0))
    assert half.knee == pytest.approx(460.0, abs=1e-6)
    hem = sum(panel.hem.start.distance_to(panel.hem.end) for panel in (half.front, half.back))
    assert hem == pytest.approx(600.0, abs=0.1)


@pytest.mark.parametrize(
    ("body", "code"),
    [
        (replace(WOMAN, length=300.0), "trousers-hem-above-crotch"),
        (replace(WOMAN, knee_depth=280.0), "trousers-knee-above-crotch"),
        (replace(WOMAN, thigh=1000.0), "trousers-thigh-against-hip"),
        (replace(WOMAN, waist=300.0), "trousers-waist-unreachable"),
    ],
)
def test_what_no_hand_would_draw(body: TrousersGiven, code: str) -> None:
    with pytest.raises(DraftRefused) as refused:
        draft_trousers(body)
    assert refused.value.code == code
    assert str(refused.value)


def test_a_narrow_knee_under_a_large_thigh_is_made_wider_and_told() -> None:
    half = draft_trousers(replace(PLUS, knee=520.0, hem=460.0))
    levers = {lever.name: lever for lever in half.levers}
    assert half.knee is not None
    assert half.knee > 530.0
    assert levers["knee_girth"].pulled == pytest.approx(half.knee - 520.0, abs=1e-6)
    assert all(bends(panel.inseam) == 0 for panel in (half.front, half.back))


def test_a_large_thigh_lengthens_the_extensions() -> None:
    larger = replace(WOMAN, thigh=WOMAN.thigh + 60.0)
    half = draft_trousers(larger)
    levers = {lever.name: lever for lever in half.levers}
    assert levers["extension_for_thigh"].pulled > 5.0
    assert leg_width(half.front, 0.0) + leg_width(half.back, 0.0) >= larger.thigh - 0.1


def test_a_waist_over_the_hip_widens_the_hip_and_says_so() -> None:
    half = draft_trousers(STOUT)
    levers = {lever.name: lever for lever in half.levers}
    assert levers["hip_girth"].pulled == pytest.approx(half.hip - STOUT.hip)
    assert half.hip > STOUT.hip
    assert half.front.side_take_in >= -15.5
    assert half.moved_side > 0.0


def test_levers_of_an_ordinary_figure_are_at_no_limit() -> None:
    assert [lever.name for lever in draft_trousers(WOMAN).levers if lever.at_limit] == []
