"""Bust, width across the back, shoulder and arm share one width: which of them gives way, and how far."""

from dataclasses import replace
from math import pi

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from notchbook.blocks.stretch import StretchSleeveGiven, TorsoGiven, TorsoHalf, draft_torso
from support.armhole_hand import armhole_hand
from support.stretch_shapes import PLUS, TOLERANCE, WOMAN, points

SLENDER = replace(
    WOMAN,
    bust=737.2,
    bust_limits=(722.0, 760.0),
    is_close=True,
    waist=610.0,
    hip=842.0,
    neck=346.0,
    shoulder=125.0,
    shoulder_slope=24.0,
    across_back=331.9,
    across_chest=304.4,
    armhole_depth=201.0,
    back_length=379.0,
    sleeve=StretchSleeveGiven(biceps=224.9, hem=190.0, length=420.0),
)
"""A slender woman with a broad back, bust 76 in jersey 3 % smaller (usual: 0 to 5). Invented."""

FULL = replace(
    PLUS,
    bust=1241.6,
    bust_limits=(1216.0, 1280.0),
    is_close=True,
    waist=1198.0,
    hip=1269.0,
    neck=418.0,
    shoulder=128.0,
    shoulder_slope=24.0,
    across_back=409.8,
    across_chest=402.9,
    armhole_depth=214.0,
    back_length=396.0,
    sleeve=StretchSleeveGiven(biceps=393.0, hem=250.0, length=430.0),
)
"""A full woman with narrow shoulders, bust 128. Invented."""


def lever(half: TorsoHalf, name: str) -> float:
    return next(one.pulled for one in half.levers if one.name == name)


def rooms(half: TorsoHalf) -> tuple[float, float]:
    """From where each armhole is inmost to the underarm, mm, by an outside ruler."""
    front, back = (armhole_hand(points(panel.armhole, 200)).room for panel in (half.front, half.back))
    return front, back


def test_the_bust_gives_before_the_back_is_cut_narrower_than_the_body() -> None:
    """It was 33 mm narrower across the back, to leave an arm of 23 cm more room than it fills."""
    half = draft_torso(SLENDER)
    assert lever(half, "bust_wider") == pytest.approx(760.0 - 737.2, abs=TOLERANCE)
    assert -20.0 < lever(half, "across_back") < 0.0
    assert half.back.underarm.x == pytest.approx(190.0, abs=TOLERANCE)
    kept = draft_torso(replace(SLENDER, bust_limits=None))
    assert lever(kept, "across_back") < lever(half, "across_back") - 8.0
    assert kept.back.underarm.x == pytest.approx(737.2 / 4.0, abs=TOLERANCE), "an ease of her own is left"


@pytest.mark.parametrize("given", [SLENDER, WOMAN, replace(WOMAN, across_back=350.0)], ids=str)
def test_the_armhole_is_as_wide_as_the_arm_at_least(given: TorsoGiven) -> None:
    """A size table's width of the armhole is about the diameter of its arm: 92 mm for an arm of 28 cm (from
    memory)."""
    assert given.sleeve is not None
    assert sum(rooms(draft_torso(given))) > given.sleeve.biceps / pi - 1.0


def test_a_full_bust_is_drawn_in_before_back_and_shoulder_go_out() -> None:
    half = draft_torso(FULL)
    assert 1216.0 - TOLERANCE <= 4.0 * half.back.underarm.x < 1241.6
    assert abs(lever(half, "across_back")) < 20.0
    assert -20.0 < lever(half, "shoulder_narrowed") < 0.0
    loose = draft_torso(replace(FULL, is_close=False, bust_limits=None))
    assert lever(loose, "shoulder_narrowed") < -30.0, "a loose shoulder may drop over the arm"


def test_a_bust_that_suits_is_left_as_it_is() -> None:
    given = replace(WOMAN, across_back=312.0, across_chest=300.0, bust_limits=(770.0, 810.0))
    half = draft_torso(given)
    assert lever(half, "bust_wider") == 0.0
    assert half.back.underarm.x == pytest.approx(given.bust / 4.0, abs=TOLERANCE)


def test_a_garment_without_sleeves_keeps_its_bust() -> None:
    half = draft_torso(replace(SLENDER, sleeve=None, shoulder_in=10.0))
    assert lever(half, "bust_wider") == 0.0


@drawn(
    across=st.floats(310.0, 350.0),
    bust=st.floats(720.0, 860.0),
    biceps=st.floats(215.0, 290.0),
    shoulder=st.floats(110.0, 132.0),
)
def test_the_armhole_of_any_such_body_hollows_low_and_stands_upright(
    across: float, bust: float, biceps: float, shoulder: float
) -> None:
    """Whatever gives way: no slant, no hollow half way up, and no more of the bust than its limits."""
    given = replace(
        SLENDER,
        bust=bust,
        bust_limits=(0.95 * bust, 1.03 * bust),
        across_back=across,
        across_chest=across - 20.0,
        shoulder=shoulder,
        sleeve=StretchSleeveGiven(biceps, 190.0, 420.0),
    )
    for panel in (half := draft_torso(given)).front, half.back:
        hand = armhole_hand(points(panel.armhole, 200))
        assert hand.hollow < 0.4, "of a narrow armhole a little higher than a third"
        assert hand.lean < 6.0
    assert -0.05 * bust <= lever(half, "bust_wider") <= 0.03 * bust + TOLERANCE
