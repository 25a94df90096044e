"""Every closure that a stretch block promises can fail: drafted from other numbers than were asked, it does.

The numbers are falsified between the step and the code that draws, as a fault in that code would; what is
promised must not follow them.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from notchbook.blocks.stretch import BodysuitGiven, TorsoGiven, draft_bodysuit, draft_leggings, draft_torso
from notchbook.blocks.stretch import armholes as stretch_armholes
from notchbook.blocks.stretch.armhole_curve import ArmholePlan, draw_armhole
from notchbook.blocks.stretch.given import StretchSleeveGiven
from notchbook.checks.promised import promised
from notchbook.geometry import Path
from notchbook.recipe import Replay
from support.stretch_bodies import BODIES, stretch_run, whole

AGREES = 0.1
"""mm: the house's limit for closures."""

DRAWS: dict[str, Callable[[Any], Any]] = {
    "stretch_torso": draft_torso,
    "bodysuit": draft_bodysuit,
    "leggings": draft_leggings,
}

Change = Callable[[Any], Any]


def broken(run: Replay) -> set[str]:
    """The promises that the finished pattern does not keep, without the name of their block."""
    assert run.suspended is None, str(run.suspended)
    found = ((promise, promised(run.pattern, promise)) for promise in run.expectations)
    return {
        promise.name.rpartition("/")[2]
        for promise, (measured, gone) in found
        if gone or abs(measured - promise.wanted) > AGREES
    }


def more(field: str, by: float) -> Change:
    return lambda given: replace(given, **{field: getattr(given, field) + by})


def of_torso(change: Callable[[TorsoGiven], TorsoGiven]) -> Callable[[BodysuitGiven], BodysuitGiven]:
    return lambda given: replace(given, torso=change(given.torso))


def of_sleeve(field: str, by: float) -> Callable[[TorsoGiven], TorsoGiven]:
    def changed(given: TorsoGiven) -> TorsoGiven:
        assert isinstance(given.sleeve, StretchSleeveGiven)
        return replace(given, sleeve=more(field, by)(given.sleeve))

    return changed


TORSO = "stretch_torso"
FITTED = {"fit": "fitted"}


@pytest.mark.parametrize(
    ("block", "parameters", "change", "closure"),
    [
        (TORSO, {}, more("bust", 12.0), "bust_girth"),
        (TORSO, FITTED, more("waist", 12.0), "waist_girth"),
        (TORSO, {}, more("hip", 12.0), "hip_girth"),
        (TORSO, {}, more("across_back", 8.0), "across_back"),
        (TORSO, {}, more("armhole_depth", 8.0), "scye_depth"),
        (TORSO, {}, more("back_length", 8.0), "back_waist_length"),
        (TORSO, {}, more("shoulder", 5.0), "shoulder_length"),
        (TORSO, {"neck": "base", "back": "base"}, more("neck", 6.0), "neck_base_girth"),
        (TORSO, {}, of_sleeve("biceps", 10.0), "upper_arm_girth"),
        (TORSO, {}, of_sleeve("hem", 10.0), "hem_girth"),
        (TORSO, {}, of_sleeve("length", 10.0), "sleeve_length"),
        ("bodysuit", {}, of_torso(more("bust", 12.0)), "bust_girth"),
        ("bodysuit", {"back": "low"}, of_torso(more("bust", 12.0)), "bust_girth"),  # its line is cut short
        ("bodysuit", {}, of_torso(more("waist", 12.0)), "waist_girth"),
        ("bodysuit", {}, more("crotch_back", 10.0), "crotch_length"),
        ("bodysuit", {}, more("crotch_width", 8.0), "front_crotch_width"),
        ("bodysuit", {}, more("leg_opening", 15.0), "thigh_girth"),
        ("leggings", {}, more("waist", 12.0), "waist_girth"),
        ("leggings", {}, more("hip", 12.0), "hip_girth"),
        ("leggings", {}, more("thigh", 12.0), "thigh_girth"),
        ("leggings", {}, more("knee", 12.0), "knee_girth"),
        ("leggings", {}, more("calf", 12.0), "calf_girth"),
        ("leggings", {}, more("ankle", 12.0), "ankle_girth"),
        ("leggings", {}, more("crotch_back", 10.0), "crotch_length"),
    ],
)
def test_a_block_from_other_numbers_breaks_its_promise(
    monkeypatch: pytest.MonkeyPatch, block: str, parameters: dict[str, Any], change: Change, closure: str
) -> None:
    assert broken(stretch_run(block, **parameters)) == set()
    draw = DRAWS[block]
    monkeypatch.setattr(f"notchbook.blocks.{block}.{draw.__name__}", lambda given: draw(change(given)))
    assert closure in broken(stretch_run(block, **parameters))


def test_an_armhole_drawn_elsewhere_than_planned_breaks_the_promise(monkeypatch: pytest.MonkeyPatch) -> None:
    """The lever says what was planned: what comes out otherwise is no lever."""

    def wider(plan: ArmholePlan) -> Path:
        return draw_armhole(replace(plan, across=replace(plan.across, x=plan.across.x + 4.0)))

    monkeypatch.setattr(stretch_armholes, "draw_armhole", wider)
    assert "across_back" in broken(stretch_run(TORSO))


@pytest.mark.parametrize("across", [300.0, 325.0, 350.0, 400.0])
@pytest.mark.parametrize("name", ["woman", "man"])
def test_an_across_back_that_gives_way_is_promised_as_its_lever_says(name: str, across: float) -> None:
    """From too narrow for the shoulder to too wide for the bust."""
    assert broken(stretch_run(TORSO, whole(name, across_back=across))) == set()


@pytest.mark.parametrize("block", DRAWS)
@pytest.mark.parametrize("name", BODIES)
def test_real_blocks_keep_every_promise(block: str, name: str) -> None:
    assert broken(stretch_run(block, whole(name))) == set()
