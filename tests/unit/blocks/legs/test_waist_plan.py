"""How the suppression is shared out, as the trade has it, and without jumps."""

from dataclasses import replace

import pytest

from notchbook.blocks.legs import count_darts
from notchbook.blocks.legs.top import dart_lengths
from notchbook.blocks.legs.waist_plan import Take, WaistPlan, panel_widths, plan_waist
from support.legs_given import CHILD, HOLLOW, MAN, STOUT, WOMAN


def shared(plan: WaistPlan, widths: tuple[float, float]) -> list[float]:
    """What is left of each hip width after center, side, darts and the sewn waist: 0 where it adds up."""
    return [
        width - take.center - take.side - take.darts - take.net
        for width, take in zip(widths, (plan.front, plan.back), strict=True)
    ]


@pytest.mark.parametrize("given", [WOMAN, HOLLOW, STOUT, MAN, CHILD])
def test_everything_adds_up(given: object) -> None:
    assert isinstance(given, type(WOMAN))
    plan = plan_waist(given, given.hip, 32.0)
    assert shared(plan, panel_widths(given, given.hip)) == pytest.approx([0.0, 0.0], abs=1e-9)
    assert plan.front.net + plan.back.net == pytest.approx(given.waist / 2.0)


def test_women_have_the_larger_darts_behind() -> None:
    """Front darts together at most 20, back two of 15 to 20, front side 35 to 40, back side little.

    Source: a patternmaker's review of earlier drafts.
    """
    plan = plan_waist(WOMAN, WOMAN.hip, 32.0)
    assert plan.front.darts <= 20.0
    assert plan.front.side <= 40.0
    assert 26.0 <= plan.back.darts <= 40.0
    assert 0.0 <= plan.back.side <= 12.0


def test_men_have_a_flat_front_and_one_dart_behind() -> None:
    assert (MAN.front_darts, MAN.back_darts) == (0, 1)
    plan = plan_waist(MAN, MAN.hip, 32.0)
    assert plan.front.darts == 0.0


def test_a_mans_front_side_keeps_more_before_his_back_gets_its_dart() -> None:
    """So the side seam leans back less (a patternmaker's look at the sheets)."""
    mans, nobodys = (plan_waist(replace(MAN, wearer=wearer), MAN.hip, 40.0) for wearer in ("men", None))
    assert mans.moved < nobodys.moved - 2.0
    assert mans.front.side == pytest.approx(18.0, abs=1e-6)
    assert nobodys.front.side == pytest.approx(14.0, abs=1e-6)


def test_what_is_too_much_for_the_front_moves_the_side_seam_back() -> None:
    plan = plan_waist(HOLLOW, HOLLOW.hip, 32.0)
    assert plan.moved > 5.0
    assert plan.front.side == pytest.approx(32.0, abs=1e-6)


def test_a_slant_that_takes_all_moves_the_side_seam_too() -> None:
    plan = plan_waist(MAN, MAN.hip, 70.0)
    assert plan.moved > 10.0
    assert plan.back.side >= 1.0 - 1e-9


def test_no_jump_from_body_to_body() -> None:
    """Half a millimeter of waist moves no part of the plan by more than two."""
    last: WaistPlan | None = None
    for half_millimeters in range(400):
        given = replace(WOMAN, waist=700.0 + half_millimeters / 2.0)
        plan = plan_waist(given, given.hip, 36.0)
        if last is not None:
            for now, before in zip((plan.front, plan.back), (last.front, last.back), strict=True):
                assert abs(now.side - before.side) < 2.0
                assert abs(now.darts - before.darts) < 2.0
        last = plan


def test_counts_by_the_figure() -> None:
    assert count_darts(replace(WOMAN, front_darts=0, back_darts=0)) == (1, 2)
    assert count_darts(STOUT) == (0, 0)
    assert count_darts(CHILD)[0] == 0


@pytest.mark.parametrize(("intake", "back"), [(5.0, 60.0), (9.0, 90.0), (30.0, 0.62 * 205.0)])
def test_a_narrow_dart_is_short(intake: float, back: float) -> None:
    """A patternmaker's review: 90 mm is enough for a dart of 9; none is shorter than 60 (common practice)."""
    take = Take(0.0, 0.0, intake, 200.0)
    given = replace(WOMAN, front_darts=0, back_darts=1)
    plan = WaistPlan(take, take, 0.0, 0.0)
    assert dart_lengths(given, plan)[1] == pytest.approx((back,))
    assert dart_lengths(replace(given, back_dart_length=127.0), plan)[1] == (127.0,)
