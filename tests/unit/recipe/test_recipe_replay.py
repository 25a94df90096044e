"""Replay: pure, the same bytes every time, and only what must run again."""

import hashlib
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from notchbook.body import Measure, MeasureSet
from notchbook.pattern import pattern_to_data
from notchbook.recipe import (
    Replay,
    StepContext,
    add_step,
    canonical_json,
    change_step,
    move_step,
    remove_step,
    rename_step,
    replay,
)
from support.yoke_skirt import (
    BACK,
    FORM_A,
    FRONT,
    WAISTBAND,
    body,
    run,
    skirt_recipe,
    with_steps,
    yoke_recipe,
)

RECIPE = yoke_recipe()
ON_BASE = run(RECIPE)


def fingerprint(done: Replay) -> str:
    """The hash of all that a pattern is."""
    return hashlib.sha256(canonical_json(pattern_to_data(done.pattern)).encode()).hexdigest()


def test_the_same_bytes_twice() -> None:
    assert fingerprint(run(RECIPE)) == fingerprint(ON_BASE)
    assert run(RECIPE).key == ON_BASE.key


def test_the_same_bytes_in_a_fresh_process() -> None:
    tests = Path(__file__).parents[2]
    code = "from unit.recipe.test_recipe_replay import *\nprint(fingerprint(ON_BASE)); print(ON_BASE.key)"
    environment = {**os.environ, "PYTHONPATH": str(tests), "PYTHONHASHSEED": "11"}
    done = subprocess.run(
        [sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True
    )
    assert done.stdout.split() == [fingerprint(ON_BASE), ON_BASE.key]


def test_another_amount_gives_another_pattern() -> None:
    changed = change_step(RECIPE, "change_length-1", {"amount": "51 mm"}, base=FORM_A)
    assert fingerprint(run(changed)) != fingerprint(ON_BASE)


def test_an_edit_runs_the_suffix_only() -> None:
    for step, kept in (("skirt-1", 0), ("cut_style_line-1", 2), ("change_length-1", 4), ("zip_opening-1", 6)):
        index = [record.id for record in RECIPE.steps].index(step)
        assert index == kept
        field = {
            "skirt-1": {"length": "61 cm"},
            "cut_style_line-1": {"first_title": "upper"},
            "change_length-1": {"amount": "7 cm"},
            "zip_opening-1": {"length": "20 cm"},
        }[step]
        changed = change_step(RECIPE, step, field, base=FORM_A)
        again = replay(changed, FORM_A, ON_BASE)
        assert again.reused == kept, step
        assert fingerprint(again) == fingerprint(run(changed))


def test_nothing_runs_again_when_nothing_changed() -> None:
    again = replay(RECIPE, FORM_A, ON_BASE)
    assert again.reused == len(RECIPE.steps)
    assert again.pattern is ON_BASE.pattern


def test_a_measure_that_no_step_reads_runs_nothing_again() -> None:
    again = replay(RECIPE, FORM_A.with_value("knee_depth", 560.0), ON_BASE)
    assert again.reused == len(RECIPE.steps)


def test_a_measure_that_appears_runs_the_step_again_that_looked_for_it() -> None:
    helped = FORM_A.with_value("front_waist_arc", 350.0)
    assert replay(RECIPE, helped, ON_BASE).reused == 0


def test_a_step_runs_again_when_its_own_measure_changes() -> None:
    recipe = with_steps(
        skirt_recipe(), ("change_length", "longer", {"hems": [f"{FRONT}/hem"], "amount": "1/8 knee_depth"})
    )
    knee = FORM_A.with_value("knee_depth", 560.0)
    first = run(recipe, knee)
    again = replay(recipe, FORM_A.with_value("knee_depth", 600.0), first)
    assert again.reused == 1
    before, after = (done.pattern.edges[f"{FRONT}/center_front"].length for done in (first, again))
    assert after - before == pytest.approx(5.0, abs=1e-6)


def test_titles_and_notes_run_nothing_again_and_are_shown() -> None:
    renamed = rename_step(RECIPE, "vent-1", "Kick vent")
    noted = change_step(renamed, "vent-1", {}, base=FORM_A, note="after the second muslin")
    again = replay(noted, FORM_A, ON_BASE)
    assert again.reused == len(RECIPE.steps)
    (record,) = [state.record for state in again.states if state.record.id == "vent-1"]
    assert (record.title, record.note) == ("Kick vent", "after the second muslin")
    assert again.pattern is ON_BASE.pattern


def test_undo_is_an_earlier_recipe_and_gives_the_earlier_pattern() -> None:
    changed = change_step(RECIPE, "skirt-1", {"waist_ease": "4 cm"}, base=FORM_A)
    away = replay(changed, FORM_A, ON_BASE)
    back = replay(RECIPE, FORM_A, away)
    assert fingerprint(back) == fingerprint(ON_BASE)


def test_steps_run_phase_by_phase_wherever_they_are_written() -> None:
    recipe = with_steps(skirt_recipe(), WAISTBAND)
    recipe = with_steps(recipe, ("change_length", "longer", {"hems": [f"{FRONT}/hem"], "amount": "1 cm"}))
    assert [record.slug for record in recipe.steps] == ["skirt", "waistband", "longer"]
    assert [record.slug for record in recipe.ordered()] == ["skirt", "longer", "waistband"]
    assert [state.record.slug for state in run(recipe).states] == ["skirt", "longer", "waistband"]


def test_an_edit_before_the_whole_runs_the_whole_again() -> None:
    recipe = with_steps(skirt_recipe(), WAISTBAND)
    first = run(recipe)
    changed = change_step(recipe, "skirt-1", {"waist_ease": "2 cm"}, base=FORM_A)
    again = replay(changed, FORM_A, first)
    assert again.reused == 0
    assert fingerprint(again) == fingerprint(run(changed))


def test_steps_reordered_or_removed_run_what_follows() -> None:
    moved = move_step(RECIPE, "zip_opening-1", "vent-1")
    again = replay(moved, FORM_A, ON_BASE)
    assert again.reused == 5
    assert fingerprint(again) == fingerprint(run(moved))
    shorter = remove_step(RECIPE, "vent-1")
    assert replay(shorter, FORM_A, ON_BASE).reused == 5


def test_a_state_tells_what_it_read_and_what_it_made() -> None:
    first = ON_BASE.states[0]
    assert {key for key, _, _ in first.reads} >= {"waist_girth", "hip_girth", "hip_depth"}
    assert {"skirt.front", "skirt.front/center_front", "skirt/side_seam"} <= set(first.entry.created)
    flare = ON_BASE.states[1]
    assert flare.reads == ()
    assert f"{FRONT}/hem" in flare.entry.modified
    assert f"{BACK}/hem" not in flare.entry.modified
    assert dict(flare.entry.removed)[f"{FRONT}/waist_dart"]
    assert flare.entry.merged == ((f"{FRONT}/waist_dart/side_mouth", (f"{FRONT}/waist_dart/center_mouth",)),)


def test_a_context_remembers_what_was_asked_for() -> None:
    context = StepContext(FORM_A, "x", "x-1")
    assert context.mm("1/4 hip + 1 cm") == pytest.approx(245.0)
    assert context.find("knee_depth") is None
    assert context.reads == {("hip_girth", "right"): 940.0, ("knee_depth", "right"): None}


def test_the_key_depends_on_each_thing_that_the_step_is_made_of() -> None:
    recipe = with_steps(skirt_recipe(), WAISTBAND)
    record = recipe.steps[1]
    keys = {run(recipe).key}
    for other in (
        replace(record, slug="band"),
        replace(record, id="waistband-2"),
        replace(record, parameters={**record.parameters, "depth": "36 mm"}),
    ):
        keys.add(run(recipe.with_steps((recipe.steps[0], other))).key)
    keys.add(run(recipe, FORM_A.with_value("hip_depth", 207.0)).key)
    assert len(keys) == 5


def test_an_added_step_may_stand_before_another() -> None:
    recipe = add_step(
        RECIPE,
        "set_allowance",
        {"edges": [f"{FRONT}/hem"], "width": "4 cm"},
        base=FORM_A,
        before="vent-1",
    )
    assert [record.id for record in recipe.steps].index("set_allowance-1") == 5
    assert replay(recipe, FORM_A, ON_BASE).reused == 5


def _as_estimate(measures: MeasureSet, key: str) -> MeasureSet:
    return measures.with_value(key, replace(measures.get(key), status="estimated", error=12.0))


def _read_twice(measures: MeasureSet, key: str) -> MeasureSet:
    found = measures.get(key)
    return measures.with_value(key, replace(found, readings=(found.value, found.value)))


OTHER_SETS: dict[str, Callable[[], MeasureSet]] = {
    "population": lambda: replace(FORM_A, population="men"),
    "kind": lambda: replace(FORM_A, kind="form"),
    "waist level": lambda: replace(FORM_A, waist_level="navel", waist_drop=35.0),
    "status": lambda: _as_estimate(FORM_A, "hip_depth"),
    "readings": lambda: _read_twice(FORM_A, "hip_depth"),
}
"""Sets with the same values, of which another thing is told that a step may look at."""


@pytest.mark.parametrize("told", OTHER_SETS)
def test_the_same_values_told_differently_run_again(told: str) -> None:
    changed = OTHER_SETS[told]()
    again, fresh = replay(RECIPE, changed, ON_BASE), replay(RECIPE, changed)
    assert again.reused == 0
    assert again.key == fresh.key != ON_BASE.key
    assert again.notes == fresh.notes


def test_a_status_that_no_step_read_runs_nothing_again() -> None:
    changed = FORM_A.with_value("wrist_girth", Measure(160.0, "estimated", 5.0))
    assert replay(RECIPE, changed, ON_BASE).key == ON_BASE.key


def test_a_skirt_taken_to_the_navel_says_what_a_fresh_draft_says() -> None:
    taken = body(680.0, 940.0, 205.0, height=1680.0)
    recipe = skirt_recipe(taken, length="103 cm")  # Ends on the floor where it hangs from the navel.
    natural = replay(recipe, taken)
    navel = replace(taken, waist_level="navel", waist_drop=60.0)
    assert replay(recipe, navel, natural).notes == replay(recipe, navel).notes != natural.notes
