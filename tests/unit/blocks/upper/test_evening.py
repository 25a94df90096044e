"""A shoulder point far outside of the across width: the armhole is drawn more evenly, others stay."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.blocks.upper import BodiceGiven, BodiceHalf, draft_bodice
from notchbook.blocks.upper.bump import bump
from notchbook.checks.limits import Limits
from support.upper_given import CHILD, MAN, WOMAN
from support.upper_judge import hollow

BUMPY = [
    replace(WOMAN, shoulder=138.0, across_chest=310.0),
    replace(WOMAN, shoulder=142.0, across_chest=310.0, shoulder_slope=23.0),
    replace(WOMAN, shoulder=142.0, across_chest=325.0),
]
"""Invented: a long shoulder over a narrow chest."""


@pytest.fixture
def uneven(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Armholes as they are drawn at first."""
    monkeypatch.setitem(draft_bodice.__globals__, "even_out", lambda _frames, *drawn: drawn)
    yield
    monkeypatch.undo()


def worst(half: BodiceHalf) -> float:
    return max(bump(half.front.armhole), bump(half.back.armhole))


def evened(half: BodiceHalf) -> list[float]:
    return [lever.pulled for lever in half.levers if lever.name.endswith("_evened")]


@pytest.mark.usefixtures("uneven")
@pytest.mark.parametrize("body", BUMPY)
def test_at_first_there_is_a_bump(body: BodiceGiven) -> None:
    assert worst(draft_bodice(body)) > Limits().bump


@pytest.mark.parametrize("body", BUMPY)
def test_it_is_drawn_more_evenly_as_far_as_the_eye_asks(body: BodiceGiven) -> None:
    half = draft_bodice(body)
    assert Limits().bump - 1.0 < worst(half) < Limits().bump
    assert 0.0 < max(evened(half)) <= 1.0


@pytest.mark.parametrize("body", BUMPY)
def test_the_width_stays_and_its_level_goes_down_a_little(
    body: BodiceGiven, monkeypatch: pytest.MonkeyPatch
) -> None:
    half = draft_bodice(body)
    monkeypatch.setitem(draft_bodice.__globals__, "even_out", lambda _frames, *drawn: drawn)
    before = draft_bodice(body)
    assert half.front.across.x == before.front.across.x
    tall = half.front.shoulder.end.y - half.front.underarm.y
    assert 0.0 < before.front.across.y - half.front.across.y <= 0.06 * tall
    assert half.front.across.y >= half.front.underarm.y + 0.24 * tall
    assert half.front.armhole.end == before.front.armhole.end
    assert half.front.armhole.segments[0].end == half.front.across
    assert hollow(half.front.armhole) > hollow(half.back.armhole)


@given(st.floats(118.0, 146.0), st.floats(296.0, 345.0), st.floats(14.0, 30.0))
def test_whatever_the_shoulder_only_a_bump_is_evened(shoulder: float, chest: float, slope: float) -> None:
    body = replace(WOMAN, shoulder=shoulder, across_chest=chest, shoulder_slope=slope)
    half = draft_bodice(body)
    with pytest.MonkeyPatch.context() as patched:
        patched.setitem(draft_bodice.__globals__, "even_out", lambda _frames, *drawn: drawn)
        before = draft_bodice(body)
    for name in ("front", "back"):
        drawn, at_first = getattr(half, name).armhole, getattr(before, name).armhole
        assert drawn == at_first or bump(drawn) < Limits().bump < bump(at_first)


@pytest.mark.parametrize("body", [WOMAN, MAN, CHILD], ids=["woman", "man", "child"])
def test_an_armhole_without_a_bump_keeps_its_line(body: BodiceGiven, monkeypatch: pytest.MonkeyPatch) -> None:
    half = draft_bodice(body)
    monkeypatch.setitem(draft_bodice.__globals__, "even_out", lambda _frames, *drawn: drawn)
    assert draft_bodice(body) == half
    assert evened(half) == [0.0, 0.0]
