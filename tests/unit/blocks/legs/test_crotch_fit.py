"""The crotch seam: what the levers reach, what is refused beyond, and its parts."""

from dataclasses import replace

import pytest

from notchbook.blocks.legs import LevelGirth, attainable_crotch, draft_trousers, usual_crotch
from notchbook.errors import DraftRefused, GeometryError
from support.legs_given import MAN, PLUS, WOMAN
from support.upper_judge import length


def test_the_usual_seam_needs_no_lever() -> None:
    half = draft_trousers(replace(WOMAN, crotch=usual_crotch(WOMAN)))
    assert half.crotch_steps == pytest.approx(0.0, abs=1e-6)
    assert half.depth == pytest.approx(WOMAN.depth_ease, abs=1e-6)


def test_a_longer_seam_pulls_every_lever_the_same_way() -> None:
    usual = draft_trousers(replace(WOMAN, crotch=usual_crotch(WOMAN)))
    longer = draft_trousers(replace(WOMAN, crotch=usual_crotch(WOMAN) + 40.0))
    assert longer.crotch_steps > 0.5
    assert longer.front.extension > usual.front.extension
    assert longer.back.extension > usual.back.extension
    assert longer.back.slant > usual.back.slant
    assert longer.depth > usual.depth


def test_depth_ease_and_lever_stay_within_thirty_over_the_rise_sitting() -> None:
    """Depth ease and its lever together go as far as the table of eases has it usual, 30 over the sitting
    rise (a patternmaker's review), and farther only where wide limits are asked for."""
    _, most = attainable_crotch(WOMAN)
    assert draft_trousers(replace(WOMAN, crotch=most - 1.0)).depth <= 30.0 + 1e-9
    standing = replace(WOMAN, rise=WOMAN.rise - 10.0, depth_ease=30.0, depth_most=40.0)
    _, most = attainable_crotch(standing)
    assert draft_trousers(replace(standing, crotch=most - 1.0)).depth <= 40.0 + 1e-9
    wide = replace(WOMAN, crotch_limits="wide")
    _, most = attainable_crotch(wide)
    assert 30.0 < draft_trousers(replace(wide, crotch=most - 1.0)).depth <= 50.0 + 1e-9


@pytest.mark.parametrize(("by", "code"), [(-5.0, "trousers-crotch-short"), (5.0, "trousers-crotch-long")])
def test_beyond_the_levers_the_refusal_says_what_would_agree(by: float, code: str) -> None:
    least, most = attainable_crotch(WOMAN)
    end = least if by < 0.0 else most
    assert draft_trousers(replace(WOMAN, crotch=end - by / 10.0)).crotch == pytest.approx(end - by / 10.0)
    with pytest.raises(DraftRefused) as refused:
        draft_trousers(replace(WOMAN, crotch=end + by))
    assert refused.value.code == code
    facts = refused.value.facts
    assert (facts["least"], facts["most"]) == pytest.approx((least, most), abs=1e-3)
    assert facts["off"] == pytest.approx(abs(by), abs=1e-3)
    assert facts["agrees"] == pytest.approx(end, abs=1e-3)
    assert isinstance(facts["rise_agrees"], float)
    agreeing = replace(WOMAN, crotch=end + by, rise=facts["rise_agrees"] + by)
    assert draft_trousers(agreeing).crotch == pytest.approx(end + by)


def test_a_seam_within_reach_that_is_not_found_is_called_neither_short_nor_long(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def fails(*_: object) -> float:
        raise GeometryError("no-solution", low=-1.0, high=1.0)

    monkeypatch.setattr("notchbook.blocks.legs.crotch_fit.closed", fails)
    with pytest.raises(DraftRefused) as refused:
        draft_trousers(WOMAN)
    assert refused.value.code == "trousers-crotch-unsettled"
    facts = refused.value.facts
    assert isinstance(facts["least"], float) and isinstance(facts["most"], float)
    assert facts["least"] < WOMAN.crotch < facts["most"]
    assert "rise_agrees" not in facts


def test_wide_limits_reach_farther_both_ways() -> None:
    least, most = attainable_crotch(WOMAN)
    wider_least, wider_most = attainable_crotch(replace(WOMAN, crotch_limits="wide"))
    assert wider_least < least - 20.0
    assert wider_most > most + 40.0
    assert draft_trousers(replace(WOMAN, crotch=most + 30.0, crotch_limits="wide")).crotch == pytest.approx(
        most + 30.0
    )


def test_parts_are_met_and_the_total_counts() -> None:
    usual = draft_trousers(WOMAN)
    front = usual.front.crotch.length + 4.0
    half = draft_trousers(replace(WOMAN, front_crotch=front, back_crotch=WOMAN.crotch - front))
    assert length(half.front.crotch) == pytest.approx(front, abs=0.1)
    assert length(half.front.crotch) + length(half.back.crotch) == pytest.approx(WOMAN.crotch, abs=0.1)
    assert half.split_miss == pytest.approx(0.0, abs=1e-3)
    assert half.front.extension > usual.front.extension
    assert half.back.extension < usual.back.extension


def test_parts_give_way_where_they_ask_for_too_much() -> None:
    front = draft_trousers(WOMAN).front.crotch.length + 60.0
    half = draft_trousers(replace(WOMAN, front_crotch=front, back_crotch=WOMAN.crotch - front))
    assert half.front.crotch.length + half.back.crotch.length == pytest.approx(WOMAN.crotch, abs=1e-3)
    assert half.split_miss < -30.0
    assert half.front.crotch.length - front == pytest.approx(half.split_miss, abs=1e-6)


def test_a_seat_as_low_as_the_crotch_is_drafted_and_told() -> None:
    low = replace(MAN, hip_depth=MAN.rise + 10.0)
    half = draft_trousers(replace(low, crotch=usual_crotch(low)))
    levers = {lever.name: lever for lever in half.levers}
    assert levers["hip_level"].pulled == pytest.approx(25.0)
    assert half.front.hip > 0.0
    with pytest.raises(DraftRefused) as refused:
        draft_trousers(replace(MAN, hip_depth=MAN.rise + 60.0))
    assert refused.value.code == "trousers-hip-below-crotch"


def test_a_leg_that_can_not_be_drawn_at_its_usual_stand_is_sought_elsewhere() -> None:
    """Without darts behind, the waist closes only where the center back slants."""
    bare = replace(PLUS, front_darts=0, back_darts=0, waist=PLUS.waist - 60.0)
    _, most = attainable_crotch(bare)
    half = draft_trousers(replace(bare, crotch=most - 2.0))
    assert half.crotch == pytest.approx(most - 2.0, abs=1e-3)
    assert half.back.slant > 12.0


def test_a_level_below_the_waist_that_is_reached_asks_for_nothing() -> None:
    small = replace(WOMAN, between=(LevelGirth(800.0, 100.0),))
    assert draft_trousers(small).hip == draft_trousers(WOMAN).hip
    with pytest.raises(DraftRefused) as refused:
        draft_trousers(replace(WOMAN, between=(LevelGirth(1500.0, 100.0),)))
    assert refused.value.code == "trousers-belly-unreachable"
