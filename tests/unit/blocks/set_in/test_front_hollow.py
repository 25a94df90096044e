"""The cap is hollower in front also where front and back armhole are nearly alike."""

from collections.abc import Iterator

import numpy as np
import pytest

from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.given import ArmholeGiven
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.geometry import Path, Point, Transform
from support.armholes import changes_of_side, dense, half_armhole, laid_gap, length_of, sleeve

NOWHERE = "notchbook.blocks.set_in.draft.hollower_in_front"


def alike(wider: float) -> ArmholeGiven:
    """An armhole whose front is as tall as its back, and about as wide."""
    front = half_armhole(57.0 + wider, 170.0, 72.0, 42.0 + wider, 23.0)
    back = half_armhole(62.0, 172.0, 88.0, 48.0, 17.0)
    mirrored = back.transformed(Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0)))
    return ArmholeGiven(front, mirrored, front.segments[0].length, back.segments[0].length)


CASES = [(-10.0, 300.0), (-10.0, 320.0), (-6.0, 300.0), (-3.0, 300.0)]
"""How much wider the front, mm, and the biceps."""


@pytest.fixture
def unscooped(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Caps as they are solved at first."""
    monkeypatch.setattr(NOWHERE, lambda _given, cap, _lengths: cap)
    yield
    monkeypatch.undo()


def depth(half: Path) -> float:
    """How far half a cap strays below the straight way from its underarm to the shoulder seam, as a share."""
    points = dense(half)
    way = points[-1] - points[0]
    offsets = points - points[0]
    aside = (way[0] * offsets[:, 1] - way[1] * offsets[:, 0]) / float(way @ way)
    hollow_side = np.sign(aside[len(aside) // 8])
    return float((hollow_side * aside).max())


def is_hollower_in_front(half: SleeveHalf) -> bool:
    return depth(half.cap_front) > depth(half.cap_back)


@pytest.mark.usefixtures("unscooped")
@pytest.mark.parametrize(("wider", "biceps"), CASES)
def test_at_first_these_are_hollower_behind(wider: float, biceps: float) -> None:
    assert not is_hollower_in_front(draft_sleeve(sleeve(alike(wider), biceps=biceps)))


@pytest.mark.parametrize(("wider", "biceps"), CASES)
def test_the_front_is_scooped_and_everything_still_agrees(wider: float, biceps: float) -> None:
    given = sleeve(alike(wider), biceps=biceps)
    half = draft_sleeve(given)
    assert is_hollower_in_front(half)
    assert half.biceps == pytest.approx(biceps, abs=1e-3)
    for cap, hole, share in (
        (half.cap_front, given.armhole.front, 0.45),
        (half.cap_back, given.armhole.back, 0.55),
    ):
        more = length_of(dense(cap)) - length_of(dense(hole))
        assert more == pytest.approx(share * given.cap_ease, abs=0.01)
        assert changes_of_side(dense(cap)) == 1
    # A patternmaker's review: 3 mm in front, 4 behind, over the first 60.
    assert laid_gap(half.cap_front, half.front_seam, given.armhole.front, 1.0) <= 3.0
    assert laid_gap(half.cap_back, half.back_seam[0], given.armhole.back, -1.0) <= 4.0


@pytest.mark.parametrize(("wider", "biceps"), CASES)
def test_only_as_much_as_it_takes(wider: float, biceps: float) -> None:
    half = draft_sleeve(sleeve(alike(wider), biceps=biceps))
    assert depth(half.cap_front) - depth(half.cap_back) < 0.5 / 150.0


@pytest.mark.parametrize("biceps", [300.0, 325.0, 340.0])
def test_a_cap_that_is_hollower_in_front_keeps_its_line(
    biceps: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    half = draft_sleeve(sleeve(biceps=biceps))
    monkeypatch.setattr(NOWHERE, lambda _given, cap, _lengths: cap)
    assert draft_sleeve(sleeve(biceps=biceps)) == half


def test_where_no_scoop_serves_the_cap_is_left_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """A front so narrow that its cap would stand up like a wall: the check says it."""
    given = sleeve(alike(-14.0), biceps=335.0)
    half = draft_sleeve(given)
    assert not is_hollower_in_front(half)
    monkeypatch.setattr(NOWHERE, lambda _given, cap, _lengths: cap)
    assert draft_sleeve(given) == half


def test_a_cap_height_that_was_asked_for_stays(monkeypatch: pytest.MonkeyPatch) -> None:
    given = sleeve(alike(-10.0), keep="cap_height", cap_height=125.0)
    half = draft_sleeve(given)
    assert half.cap_height == pytest.approx(125.0, abs=1e-6)
    monkeypatch.setattr(NOWHERE, lambda _given, cap, _lengths: cap)
    assert draft_sleeve(given) == half
