"""A top edge below the waist."""

import pytest

from notchbook.blocks.legs import LevelGirth, draft_trousers, girth_below, lowered
from notchbook.errors import DraftRefused
from support.legs_given import WOMAN
from support.legs_judge import waist

LEVELS = (LevelGirth(720.0, 0.0), LevelGirth(900.0, 100.0), LevelGirth(960.0, 205.0))


def test_girth_between_levels_is_straight() -> None:
    assert girth_below(LEVELS, 0.0) == pytest.approx(720.0)
    assert girth_below(LEVELS, 50.0) == pytest.approx(810.0)
    assert girth_below(LEVELS, 152.5) == pytest.approx(930.0)
    assert girth_below(LEVELS, 300.0) == pytest.approx(960.0)


@pytest.mark.parametrize("drop", [20.0, 60.0, 110.0])
def test_the_lower_edge_has_its_girth_and_the_rest_stays(drop: float) -> None:
    girth = girth_below(LEVELS, drop) + 20.0
    given = lowered(WOMAN, drop, girth)
    half, whole = draft_trousers(given), draft_trousers(WOMAN)
    assert 2.0 * (waist(half.front) + waist(half.back)) == pytest.approx(girth, abs=0.1)
    assert half.crotch == pytest.approx(WOMAN.crotch - 2.04 * drop, abs=1e-3)
    assert half.hip == pytest.approx(WOMAN.hip)
    below = half.front.side.length - given.hip_depth
    assert below == pytest.approx(whole.front.side.length - WOMAN.hip_depth, abs=1e-3)
    assert half.front.hip - half.depth == pytest.approx(whole.front.hip - whole.depth, abs=1e-6)


def test_no_edge_at_the_hip() -> None:
    with pytest.raises(DraftRefused) as refused:
        lowered(WOMAN, 170.0, 940.0)
    assert refused.value.code == "trousers-waist-drop"
    assert refused.value.facts["most"] == pytest.approx(165.0)


def test_no_drop_changes_nothing() -> None:
    assert lowered(WOMAN, 0.0, 1.0) is WOMAN
