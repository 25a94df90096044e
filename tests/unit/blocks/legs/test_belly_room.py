"""Belly and high hip on the finished trousers, after the crotch was fitted; measured by other code."""

from dataclasses import replace

import pytest

from notchbook.blocks.legs import LevelGirth, TrousersGiven, draft_trousers
from notchbook.blocks.legs.between import girth_between
from support.legs_given import FULL_SEAT, MAN, PLUS, WOMAN
from support.legs_judge import belly

BELLY = 100.0
"""mm below the top edge."""


def with_belly(body: TrousersGiven, share: float, longer: float) -> TrousersGiven:
    level = LevelGirth(share * body.hip, BELLY)
    return replace(body, crotch=body.crotch + longer, between=(level,))


@pytest.mark.parametrize("body", [WOMAN, MAN, PLUS], ids=["woman", "man", "plus"])
@pytest.mark.parametrize("longer", [-20.0, 0.0, 30.0])
def test_a_belly_is_reached_whatever_the_crotch_takes(body: TrousersGiven, longer: float) -> None:
    given = with_belly(body, 1.02, longer)
    half = draft_trousers(given)
    assert belly(half.front, half.back, BELLY, given.hip_depth) >= 1.02 * body.hip - 0.1
    assert half.crotch == pytest.approx(given.crotch, abs=0.1)


def test_the_room_is_made_again_where_the_crotch_takes_of_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Made before the crotch is fitted alone, the belly comes out several mm short."""
    given = with_belly(FULL_SEAT, 1.02, 60.0)
    half = draft_trousers(given)
    assert half.crotch_steps > 2.0
    assert belly(half.front, half.back, BELLY, given.hip_depth) >= given.between[0].girth - 0.1
    monkeypatch.setattr("notchbook.blocks.legs.draft._ROUNDS", 0)
    before = draft_trousers(given)
    assert belly(before.front, before.back, BELLY, given.hip_depth) < given.between[0].girth - 3.0


@pytest.mark.parametrize("depth", [40.0, 70.0, 100.0, 150.0])
def test_the_girth_of_the_pieces_is_that_of_the_outline(depth: float) -> None:
    half = draft_trousers(WOMAN)
    told = girth_between(half, WOMAN, LevelGirth(0.0, depth))
    assert told == pytest.approx(belly(half.front, half.back, depth, WOMAN.hip_depth), abs=0.01)


def test_below_the_hip_counts_as_the_hip_and_the_edge_as_the_waist() -> None:
    half = draft_trousers(WOMAN)
    # Both crotch curves begin above the hip, where the cloth so lies out of the straight center.
    at_hip = belly(half.front, half.back, WOMAN.hip_depth, WOMAN.hip_depth)
    assert half.hip <= at_hip < half.hip + 25.0
    below = girth_between(half, WOMAN, LevelGirth(0.0, WOMAN.hip_depth + 30.0))
    assert below == pytest.approx(at_hip, abs=0.01)
    assert girth_between(half, WOMAN, LevelGirth(0.0, 0.0)) == pytest.approx(half.waist, abs=0.01)


def test_a_short_leg_changes_nothing_above_the_crotch() -> None:
    """A hem close below the knee: a crotch that the long leg reaches is reached too."""
    # Plus 128 of the sample sheets, close trousers, invented.
    long = replace(
        PLUS,
        waist=1140.0,
        hip=1360.0,
        hip_depth=205.0,
        rise=270.0,
        depth_ease=30.0,
        depth_most=40.0,
        crotch=873.0,
        thigh=840.0,
        knee_depth=605.0,
        length=980.0,
        knee=604.8,
        hem=520.0,
        front_darts=0,
        back_darts=1,
    )
    short = draft_trousers(replace(long, length=660.0))
    assert short.knee is None
    assert short.crotch == pytest.approx(draft_trousers(long).crotch, abs=0.1)
