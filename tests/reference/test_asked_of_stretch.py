"""What the outside judge wants of stretch blocks comes from body and tables, not from the draft itself."""

from dataclasses import replace
from typing import Any

import pytest

from lower_judged import JUDGES
from notchbook.blocks.stretch_fabric.reductions import Reduced, reduced
from notchbook.blocks.stretch_pieces import reading
from notchbook.checks.promised import promised
from support.asked_of_lower import asked_of_lower, gave_way, plainly_asked
from support.stretch_bodies import stretch_run, whole

BY_HAND: dict[str, dict[str, float]] = {
    # Bust 920 and 40 mm of ease; across 350 and a quarter of that; arm 285 and half as much again; scye 190
    # and 15.
    "stretch_torso": {
        "bust_girth": 960.0,
        "across_back": 360.0,
        "upper_arm_girth": 345.0,
        "scye_depth": 205.0,
    },
    # A cloth of 50 %: a tenth smaller round the body, a twentieth shorter; half of the tenth round the leg.
    "bodysuit": {
        "bust_girth": 828.0,
        "crotch_length": 665.0,
        "thigh_girth": 541.5,
        "back_waist_length": 380.0,
    },
    # A tenth smaller round the leg, eight tenths of that at the knee; a thirtieth shorter.
    "leggings": {
        "hip_girth": 882.0,
        "thigh_girth": 513.0,
        "knee_girth": 340.4,
        "crotch_length": 700.0 * 29 / 30,
    },
}
"""The usual woman in a cloth of 50 % both ways, mm, reckoned by hand from the tables of reductions."""


@pytest.mark.parametrize("block", BY_HAND)
def test_what_is_asked_agrees_with_hand_reckoning(block: str) -> None:
    asked = plainly_asked(stretch_run(block))
    for key, value in BY_HAND[block].items():
        assert asked[key] == pytest.approx(value, abs=0.01), key


@pytest.mark.parametrize("block", BY_HAND)
def test_a_block_reduced_too_much_keeps_its_promises_and_is_found_by_the_judge(
    block: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert JUDGES[block](stretch_run(block)).open == ()

    def too_much(*given: Any) -> Reduced:
        taken = reduced(*given)
        return replace(taken, pattern=0.98 * taken.pattern)

    monkeypatch.setattr(reading, "reduced", too_much)
    run = stretch_run(block)
    assert run.suspended is None
    assert all(abs(promised(run.pattern, one)[0] - one.wanted) < 0.1 for one in run.expectations)
    open_ = " ".join(JUDGES[block](run).open)
    assert "hip_girth" in open_ if block == "leggings" else "bust_girth" in open_


def test_what_a_lever_gave_way_is_allowed_by_the_amount_that_is_told() -> None:
    run = stretch_run("stretch_torso", whole(across_back=430.0))
    told = {note.code: note.measured for note in run.notes}
    by = told["stretch-across-changed"]
    assert by is not None and by < -5.0
    assert gave_way(run)["across_back"] == pytest.approx(by, abs=0.01)
    assert asked_of_lower(run)["across_back"] == pytest.approx(
        plainly_asked(run)["across_back"] + by, abs=0.01
    )
    assert JUDGES["stretch_torso"](run).open == ()
