"""Bodies that are alike on both sides cost nothing: one run, one draft; a side that changes runs again."""

from dataclasses import replace

import pytest

from notchbook.app.drafting import draft
from notchbook.blocks.upper.kept_bodice import kept_bodice
from notchbook.body import Measure, MeasureSet
from notchbook.pattern import pattern_to_data
from notchbook.recipe import StepContext, replay
from support.bodice_bodies import bodice_recipe, body
from support.two_sided import BLOCKS, drafted
from support.yoke_skirt import FORM_A, run, skirt_recipe


def context(measures: MeasureSet, *asked: str) -> StepContext:
    found = StepContext(measures, "test", "test-1")
    for key in asked:
        found.find(key)
    return found


def test_sides_are_alike_where_all_that_was_asked_for_is() -> None:
    uneven = FORM_A.with_value("hip_depth", 200.0, "left")
    assert context(uneven, "waist_girth", "hip_girth").sides_are_alike()
    assert not context(uneven, "waist_girth", "hip_depth").sides_are_alike()
    assert context(FORM_A, "hip_depth", "belly_girth").sides_are_alike()


def test_a_side_that_was_taken_is_not_like_one_that_was_estimated() -> None:
    guessed = Measure(206.0, status="estimated", error=8.0)
    uneven = replace(FORM_A, values={**FORM_A.values, "hip_depth@left": guessed})
    assert uneven.value("hip_depth", "left") == uneven.value("hip_depth", "right")
    assert not context(uneven, "hip_depth").sides_are_alike()


def test_a_measure_of_one_side_only_is_no_measure_of_both() -> None:
    assert not context(FORM_A.with_value("thigh_girth", 580.0, "left"), "thigh_girth").sides_are_alike()


def test_what_was_asked_counts_as_asked_of_the_other_side_too() -> None:
    asked = context(FORM_A, "hip_depth")
    asked.sides_are_alike()
    assert asked.reads == {("hip_depth", "right"): 206.0, ("hip_depth", "left"): 206.0}


def test_a_side_that_becomes_another_runs_the_other_again() -> None:
    first = run(skirt_recipe())
    uneven = FORM_A.with_value("hip_depth", 194.0, "left")
    again = replay(skirt_recipe(), uneven, first)
    assert again.reused == 0
    assert pattern_to_data(again.pattern) == pattern_to_data(replay(skirt_recipe(), uneven).pattern)


def drafts_of(measures: MeasureSet) -> int:
    """How many halves of the bodice are drafted for this body."""
    recipe = bodice_recipe(measures)
    kept_bodice.cache_clear()
    replay(recipe, measures)
    return kept_bodice.cache_info().misses


@pytest.mark.parametrize(
    ("key", "value", "drafts"),
    [("shoulder_slope", 24.3, 1), ("knee_depth", 560.0, 1), ("shoulder_slope", 27.0, 2)],
)
def test_only_sides_that_differ_are_drafted_apart(key: str, value: float, drafts: int) -> None:
    """Each run asks for both, since each must know where the other's center comes: they are drafted once."""
    assert drafts_of(body().with_value(key, value, "left")) == drafts


def test_what_settles_the_choices_is_drafted_once() -> None:
    kept_bodice.cache_clear()
    draft("bodice", body())
    assert kept_bodice.cache_info().misses == 1


@pytest.mark.parametrize("name", BLOCKS)
def test_a_side_that_says_the_same_changes_no_byte(name: str) -> None:
    measures = BLOCKS[name].body()
    key = BLOCKS[name].reads[0]
    done = drafted(name, measures)
    told = drafted(name, measures.with_value(key, measures.value(key), "left"))
    assert told.left is None
    assert pattern_to_data(told.pattern) == pattern_to_data(done.pattern)
    assert not any(text.endswith(("@left", "@right")) for text in done.pattern.index)
