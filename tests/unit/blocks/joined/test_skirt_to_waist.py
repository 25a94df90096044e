"""The skirt of a dress in numbers: its waist and darts are those it was given."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.blocks.joined.skirt_to_waist import SkirtGiven, draft_skirt, draft_with_shared_centers
from notchbook.errors import DraftRefused

DARTED = SkirtGiven(1040.0, 200.0, (72.0, 112.0), (60.0, 70.0, 80.0))


def parts(given: SkirtGiven) -> list[tuple[float, ...]]:
    half = draft_skirt(given)
    return [tuple(part.length for part in panel.parts) for panel in (half.front, half.back)]


def test_each_part_of_the_waist_is_as_long_as_above() -> None:
    assert parts(DARTED) == [pytest.approx(DARTED.front, abs=1e-4), pytest.approx(DARTED.back, abs=1e-4)]


def test_hip_is_kept_and_side_seams_are_one_curve() -> None:
    half = draft_skirt(DARTED)
    front, back = half.front.side, half.back.side
    assert 2.0 * (front.start.x + back.start.x) == pytest.approx(1040.0, abs=1e-6)
    assert front.length == pytest.approx(back.length, abs=1e-9) == pytest.approx(200.0, abs=1e-6)
    assert front.start.x - front.end.x == pytest.approx(back.start.x - back.end.x) == half.take_in


def test_the_back_takes_the_larger_part_of_the_darts() -> None:
    # A skirt's back darts take about two thirds (handbook draft T1); here the bodice may shift that a little.
    half = draft_skirt(DARTED)
    front, back = half.front.intake(0), half.back.intake(0) + half.back.intake(1)
    assert 0.3 <= front / (front + back) <= 0.47


def test_without_darts_the_sides_close_the_waist() -> None:
    half = draft_skirt(SkirtGiven(820.0, 200.0, (190.0,), (170.0,)))
    assert half.hip == pytest.approx(820.0)
    assert half.take_in > 20.0


def test_a_waist_larger_than_the_hip_leans_out_and_then_raises_the_hip() -> None:
    half = draft_skirt(SkirtGiven(700.0, 200.0, (72.0, 112.0), (210.0,)))
    assert half.take_in == -15.0
    assert half.hip > 700.0
    assert half.front.intake(0) == 0.0


def test_a_waist_that_only_darts_could_close_is_refused() -> None:
    with pytest.raises(DraftRefused) as refused:
        draft_skirt(SkirtGiven(1300.0, 200.0, (150.0,), (150.0,)))
    assert refused.value.code in ("dress-skirt-unreachable", "skirt-side-short")
    assert str(refused.value)


def test_darts_wider_than_long_are_refused() -> None:
    with pytest.raises(DraftRefused) as refused:
        draft_skirt(SkirtGiven(1700.0, 140.0, (40.0, 60.0), (40.0, 60.0)))
    assert refused.value.code in ("skirt-darts-too-wide", "skirt-side-short")


def test_two_sides_share_their_waist_at_the_centers() -> None:
    other = SkirtGiven(1070.0, 205.0, (74.0, 112.0), (60.0, 72.0, 80.0))
    (own, here), (beside, there) = (
        draft_with_shared_centers(*pair) for pair in ((DARTED, other), (other, DARTED))
    )
    # The other hip lies lower by as much as this one lies higher, and the waist is one height over the floor.
    assert here.hip_step == pytest.approx(-there.hip_step, abs=1e-9)
    assert own.front.height == pytest.approx(beside.front.height + here.hip_step, abs=1e-9)
    assert own.back.height == pytest.approx(beside.back.height + here.hip_step, abs=1e-9)
    # Neither is forced: both keep the waist that they have alone but for what front and back differ by.
    for given_, drawn in ((DARTED, own), (other, beside)):
        assert drawn.front.height == pytest.approx(draft_skirt(given_).front.height, abs=2.0)


@given(
    front=st.lists(st.floats(40.0, 110.0), min_size=1, max_size=3),
    back=st.lists(st.floats(40.0, 110.0), min_size=1, max_size=3),
    more=st.floats(20.0, 160.0),
    depth=st.floats(150.0, 250.0),
)
@settings(max_examples=60, deadline=None)
def test_closes_or_refuses(front: list[float], back: list[float], more: float, depth: float) -> None:
    given_ = SkirtGiven(2.0 * (sum(front) + sum(back)) + more, depth, tuple(front), tuple(back))
    try:
        found = parts(given_)
    except DraftRefused:
        return
    assert found == [pytest.approx(given_.front, abs=1e-4), pytest.approx(given_.back, abs=1e-4)]
