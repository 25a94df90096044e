"""Every closure that trousers promise can fail: drafted from other numbers than were asked, it does.

The numbers are falsified between the step and the code that draws, as a fault in that code would; what is
promised must not follow them.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from notchbook.blocks.legs.draft import draft_trousers
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.checks import Subject
from notchbook.checks.closures import closures
from notchbook.recipe import Replay
from support.trouser_bodies import WOMAN, lower_body, trousers_run

DRAWS = "notchbook.blocks.trouser_pieces.drafting.draft_trousers"
"""Where the step calls the code that draws."""

WITH_PARTS = lower_body(WOMAN, front_crotch_length=310.0, back_crotch_length=390.0)


def broken(run: Replay) -> set[str]:
    """The closures that the finished pattern does not keep, without the name of the block."""
    assert run.suspended is None, str(run.suspended)
    found = closures(Subject(run.pattern, None, run.expectations))
    return {one.name.partition("/")[2] for one in found if abs(one.measured - one.wanted) > one.within}


def more(field: str, by: float) -> Callable[[Any], Any]:
    return lambda given: replace(given, **{field: getattr(given, field) + by})


def falsified(patch: pytest.MonkeyPatch, change: Callable[[TrousersGiven], TrousersGiven]) -> None:
    patch.setattr(DRAWS, lambda given: draft_trousers(change(given)))


@pytest.mark.parametrize(
    ("change", "closure"),
    [
        (more("waist", 4.0), "waist_girth"),
        (more("hip", 4.0), "hip_girth"),
        (more("crotch", 2.0), "crotch_length"),
        (more("length", 3.0), "outside_leg"),
        (more("rise", 3.0), "hip_to_crotch"),
        (more("hem", 4.0), "hem_girth"),
        (more("inseam_stretch", 2.0), "inseam"),
    ],
)
def test_a_leg_drawn_from_other_numbers_breaks_what_was_promised(
    change: Callable[[TrousersGiven], TrousersGiven], closure: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert broken(trousers_run()) == set()
    falsified(monkeypatch, change)
    assert closure in broken(trousers_run())


def test_a_knee_drawn_wider_breaks_its_promise(monkeypatch: pytest.MonkeyPatch) -> None:
    falsified(monkeypatch, lambda given: replace(given, knee=(given.knee or 0.0) + 4.0))
    assert "knee_girth" in broken(trousers_run())


@pytest.mark.parametrize("which", ["front", "back"])
def test_parts_of_the_crotch_that_are_drawn_otherwise_are_seen(
    which: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert broken(trousers_run(WITH_PARTS)) == set()
    falsified(monkeypatch, lambda given: replace(given, front_crotch=335.0, back_crotch=390.0))
    assert f"{which}_crotch_length" in broken(trousers_run(WITH_PARTS))


def test_parts_that_were_not_pursued_break_their_promise(monkeypatch: pytest.MonkeyPatch) -> None:
    """Only a lever that stands in the way excuses a miss: not a draft that leaves off before it."""
    monkeypatch.setattr("notchbook.blocks.legs.crotch_fit._ROUNDS", 0)
    assert {"front_crotch_length", "back_crotch_length"} <= broken(trousers_run(WITH_PARTS))


def test_parts_that_give_way_to_a_lever_are_promised_with_the_amount_that_is_told() -> None:
    parts = {"front_crotch_length": 320.0, "back_crotch_length": 380.0}
    run = trousers_run(lower_body(WOMAN | parts), inseam_forward="0 mm")
    told = next(note for note in run.notes if note.code == "trousers-crotch-parts-missed")
    front = next(one for one in run.expectations if one.name.endswith("/front_crotch_length"))
    assert told.measured is not None
    assert front.wanted == pytest.approx(320.0 + 12.5 + told.measured, abs=1e-6)
    assert broken(run) == set()
