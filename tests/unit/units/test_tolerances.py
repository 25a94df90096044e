"""The house's tolerances and their reasons."""

import pytest

from notchbook.units import TOLERANCES, Tolerances, tolerance_reasons


def test_every_tolerance_has_its_reason_source_and_grade() -> None:
    reasons = tolerance_reasons()
    assert len(reasons) >= 7
    for item in reasons:
        assert item.reason.endswith(".")
        assert item.source
        assert item.grade in {"house", "common practice", "standard", "handbook", "memory"}
        assert item.unit in {"mm", "deg"}
        assert item.amount == getattr(TOLERANCES, item.name) > 0


def test_the_finer_tolerance_is_always_the_inner_one() -> None:
    assert TOLERANCES.sew_length < TOLERANCES.closure < TOLERANCES.seam_walk < TOLERANCES.trade_seam_walk
    assert TOLERANCES.angle < TOLERANCES.side_junction


def test_the_trade_tolerance_is_a_sixteenth_of_an_inch() -> None:
    # Common practice of the trade, no source: seams walk to 1/16 in.
    assert pytest.approx(25.4 / 16, abs=0.05) == TOLERANCES.trade_seam_walk


def test_a_house_may_set_its_own_but_not_change_the_shared_ones() -> None:
    own = Tolerances(seam_walk=1.0)
    assert [item.amount for item in tolerance_reasons(own) if item.name == "seam_walk"] == [1.0]
    with pytest.raises(AttributeError):
        TOLERANCES.seam_walk = 2.0  # type: ignore[misc]  # writing is the test
