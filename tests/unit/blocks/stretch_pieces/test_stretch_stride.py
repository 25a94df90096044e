"""A close hem below the seat is held against a walking step."""

import math

import pytest
import shapely
from shapely.geometry import Point

from notchbook.blocks.stretch_pieces.stride_notes import stride_girth
from notchbook.pattern import Finding
from support.stretch_bodies import codes, stretch_run, whole

TOLD = {"stretch-hem-stride", "stretch-hem-narrow"}


@pytest.mark.parametrize(
    ("below", "least", "most"), [(400.0, 1000.0, 1150.0), (600.0, 1300.0, 1450.0), (800.0, 1500.0, 1750.0)]
)
def test_the_girth_of_a_step_is_that_of_hems_to_walk_in(below: float, least: float, most: float) -> None:
    """Hems of narrow skirts without a slit, for walking: to the knee 100 to 115 cm, to the calf 130 to 145,
    to the ankle from 150 (drafting handbooks, from memory); hip 98 cm."""
    assert least < stride_girth(980.0, below) < most


def test_it_is_two_legs_with_a_thread_round_them() -> None:
    """Convex hull of two circles, by shapely."""
    leg, ahead, beside = 0.38 * 980.0, 0.80 * 400.0, 110.0
    circles = [Point(x, y).buffer(leg / (2.0 * math.pi), 64) for x, y in ((0.0, 0.0), (beside, ahead))]
    hull = shapely.union_all(circles).convex_hull
    assert stride_girth(980.0, 400.0) == pytest.approx(hull.length, rel=1e-3)


def told(length: str, across: str) -> Finding | None:
    run = stretch_run("stretch_torso", fit="fitted", own_length=length, across=across)
    return next((one for one in run.notes if one.code in TOLD), None)


def test_a_knee_length_dress_of_jersey_is_walked_in_and_says_by_how_much_it_stretches() -> None:
    found = told("60 cm", "50 %")
    assert found is not None and found.code == "stretch-hem-stride" and found.severity == "note"
    assert found.measured is not None and found.wanted is not None
    assert found.measured == pytest.approx(0.97 * 980.0), "straight below the hip"
    assert f"by {100.0 * (found.wanted / found.measured - 1.0):.0f} %" in found.message


@pytest.mark.parametrize(("length", "across"), [("60 cm", "12 %"), ("100 cm", "50 %")])
def test_a_hem_that_holds_the_legs_together_is_to_be_looked_at(length: str, across: str) -> None:
    found = told(length, across)
    assert found is not None and found.code == "stretch-hem-narrow" and found.severity == "look"


def test_a_top_says_nothing_of_steps() -> None:
    assert told("24 cm", "25 %") is None
    assert not TOLD & codes(stretch_run("stretch_torso"))
    assert not TOLD & codes(
        stretch_run("stretch_torso", whole(), fit="t_shirt", hip_ease="20 cm", own_length="60 cm")
    )
