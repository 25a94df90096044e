"""Where the crease lies: legs without a knee share out what their seams run in."""

import pytest

from notchbook.blocks.legs.crease_place import hanging_places, short_places
from notchbook.blocks.legs.proportions import proportion

FRONT, BACK, HIP = 339.0, 425.0, 1010.0
"""Widths of the panels from side to crotch point, mm."""


def runs(hem_half: float) -> tuple[float, float, float, float]:
    """What front and back run in at the inseam, then at the side, mm."""
    places = short_places(FRONT, BACK, HIP, hem_half)
    front_hem = hem_half - proportion("crease.back_wider") / 2.0 - places.narrowed
    back_hem = 2.0 * hem_half - front_hem
    return (
        FRONT - places.front_side - front_hem,
        BACK - places.back_side - back_hem,
        places.front_side - front_hem,
        places.back_side - back_hem,
    )


@pytest.mark.parametrize("hem_half", [150.0, 174.0, 190.0])
def test_the_inseams_of_a_short_leg_share_what_they_run_in(hem_half: float) -> None:
    """15 of 40 in front, 25 behind (a patternmaker's review); the sides by halves."""
    front, back, front_side, back_side = runs(hem_half)
    assert front == pytest.approx(15.0 / 25.0 * back, rel=0.03)
    assert front_side == pytest.approx(back_side)
    assert front + back + front_side + back_side == pytest.approx(FRONT + BACK - 4.0 * hem_half)


def test_on_a_leg_with_a_knee_the_crease_lies_near_the_middle_of_the_front() -> None:
    places = hanging_places(FRONT, BACK, HIP)
    assert FRONT / 2.0 - places.front_side == pytest.approx(5.0)
    assert (BACK - 2.0 * places.back_side) / BACK <= 0.08 + 1e-9


def test_on_the_largest_bodies_it_lies_nearer_to_the_inseam() -> None:
    usual, plus = hanging_places(FRONT, BACK, HIP), hanging_places(FRONT, BACK, 1400.0)
    assert plus.front_side > usual.front_side
