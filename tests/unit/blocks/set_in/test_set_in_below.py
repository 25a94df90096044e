"""Below the biceps line: equal seams, a hem square to them, the elbow."""

import math

import numpy as np
import pytest

from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.geometry import Path
from support.armholes import dense, length_of, sleeve


def angle_between(first: Path, second: Path) -> float:
    """The angle at which the second line leaves the end of the first, degrees, from their polylines."""
    arriving, leaving = np.diff(dense(first)[-2:], axis=0)[0], np.diff(dense(second)[:2], axis=0)[0]
    turn = math.atan2(arriving[0] * leaving[1] - arriving[1] * leaving[0], float(np.dot(arriving, leaving)))
    return 180.0 - math.degrees(turn)


def back_length(half: SleeveHalf) -> float:
    return sum(length_of(dense(part)) for part in half.back_seam)


@pytest.mark.parametrize("hem", [200.0, 215.0, 260.0, 330.0, 360.0])
def test_seams_are_equal_and_the_hem_is_square_to_them(hem: float) -> None:
    half = draft_sleeve(sleeve(hem=hem))
    assert back_length(half) == pytest.approx(length_of(dense(half.front_seam)), abs=1e-3)
    assert length_of(dense(half.hem)) == pytest.approx(hem, abs=5e-3)
    assert half.hem_girth == pytest.approx(hem, abs=1e-5)
    assert angle_between(half.back_seam[0], half.hem) == pytest.approx(90.0, abs=0.2)
    assert angle_between(half.hem, half.front_seam.reversed()) == pytest.approx(90.0, abs=0.2)
    assert half.crown.y - half.hem_middle.y == pytest.approx(585.0, abs=1e-6)


def test_the_cap_is_square_to_the_underarm_seams() -> None:
    half = draft_sleeve(sleeve())
    assert angle_between(half.front_seam.reversed(), half.cap_front) == pytest.approx(90.0, abs=0.5)


def test_a_full_elbow_widens_the_hem() -> None:
    plain = draft_sleeve(sleeve(elbow=250.0))
    full = draft_sleeve(sleeve(elbow=300.0))
    assert plain.hem_girth == pytest.approx(215.0, abs=1e-5)
    assert full.hem_girth > 230.0
    assert full.elbow_width == pytest.approx(300.0, abs=1e-3)
    (lever,) = [lever for lever in full.levers if lever.name == "hem_widened"]
    assert lever.at_limit


@pytest.mark.parametrize("amount", [6.0, 15.0, 22.0])
def test_an_elbow_dart_opens_in_the_back_seam_and_leaves_it_smooth(amount: float) -> None:
    half = draft_sleeve(sleeve(back_ease=amount, elbow_dart=True))
    dart = half.elbow_dart
    assert dart is not None
    assert dart.first.distance_to(dart.second) == pytest.approx(amount, abs=1e-5)
    legs = [dart.point.distance_to(end) for end in (dart.first, dart.second)]
    assert legs[0] == pytest.approx(legs[1], abs=1e-9)
    assert back_length(half) == pytest.approx(length_of(dense(half.front_seam)), abs=1e-3)
    upper, lower = half.back_seam
    closed = angle_between(upper, Path.line(dart.first, dart.point)) + angle_between(
        Path.line(dart.point, dart.second), lower
    )
    assert closed == pytest.approx(180.0, abs=0.5)
    assert half.crown.y - half.hem_middle.y == pytest.approx(585.0, abs=1e-5)
    assert half.hem_girth == pytest.approx(215.0, abs=1e-4)


@pytest.mark.parametrize("amount", [4.0, 8.0, 12.0])
def test_elbow_ease_makes_the_back_seam_longer_by_just_that(amount: float) -> None:
    half = draft_sleeve(sleeve(back_ease=amount))
    assert back_length(half) - length_of(dense(half.front_seam)) == pytest.approx(amount, abs=2e-3)
    assert not half.back_seam[0].corners(0.1)
    assert not half.front_seam.corners(0.1)
    assert half.hem_middle.x > draft_sleeve(sleeve()).hem_middle.x, "the lower arm turns forward"


def test_a_sleeve_that_ends_under_the_arm_keeps_its_whole_cap() -> None:
    half = draft_sleeve(sleeve(below_underarm=30.0, hem=310.0, elbow_length=None))
    long = draft_sleeve(sleeve(hem=310.0))
    assert half.hem_middle.y == pytest.approx(-30.0, abs=1e-6)
    assert half.cap_front.length == pytest.approx(long.cap_front.length, abs=1e-6)
    assert half.elbow_line is None
    assert length_of(dense(half.front_seam)) == pytest.approx(back_length(half), abs=1e-3)
