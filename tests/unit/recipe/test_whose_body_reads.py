"""A step that went by whose body it is runs again when that becomes another's, and only then."""

from typing import Any

import pytest

from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.bodice_bodies import CHILD as UPPER_CHILD
from support.sleeve_bodies import sleeve_recipe
from support.stretch_bodies import WHOLE_CHILD
from support.trouser_bodies import CHILD, WOMAN, without

SMALL = {"waist_girth": 500.0, "hip_girth": 560.0, "height": 1160.0}
"""Whatever else was taken: a child's height and girths."""


def nobody(values: dict[str, float], **more: float) -> MeasureSet:
    """A body of which nobody said whose it is."""
    return MeasureSet.from_mm("Invented, nobody's", {**values, **more})


def told(run: Replay) -> tuple[Any, ...]:
    """All that a run says and promises."""
    return run.key, run.expectations, run.notes, str(run.suspended)


def of_block(block: str, base: MeasureSet, **parameters: Any) -> Recipe:
    return add_step(Recipe(block), block, parameters, base=base)


CLOTH = {"across": "50 %", "along": "50 %"}

CASES = {
    "trousers": ("trousers", without(CHILD), {}),
    "leggings": ("leggings", without(WHOLE_CHILD, "bust_girth"), CLOTH),
    "bodysuit": ("bodysuit", WHOLE_CHILD | SMALL, CLOTH),
    "bodice": ("bodice", UPPER_CHILD, {}),
}


@pytest.mark.parametrize("case", CASES)
def test_a_girth_that_makes_it_no_child_runs_the_block_again(case: str) -> None:
    """A bust of 900 or a hip of 900 mm is no child's; the block asks for one of them at most."""
    block, values, parameters = CASES[case]
    grown = {"bodysuit": "height", "bodice": "hip_girth"}.get(case, "bust_girth")
    small = nobody(values)
    large = small.with_value(grown, 1700.0 if grown == "height" else 900.0)
    before = replay(of_block(block, small, **parameters), small)
    assert before.suspended is None, str(before.suspended)
    assert told(replay(before.recipe, large, before)) == told(replay(before.recipe, large))
    assert replay(before.recipe, large, before).right.reused == 0
    assert told(replay(before.recipe, small, before)) == told(before)


def test_a_sleeve_runs_again_when_a_bust_is_measured() -> None:
    """Where nobody said whose body it is, the measures of a bust do: a woman's cap has its whole ease. What
    the bodice below asked for does not count."""
    arm = {"upper_arm_girth": 190.0, "wrist_girth": 125.0, "arm_length": 400.0}
    bust = {"bust_point_width": 150.0, "front_waist_length": 330.0, "center_front_length": 270.0}
    small = nobody(UPPER_CHILD, **arm, **bust)
    before = replay(sleeve_recipe(small), small)
    assert before.suspended is None, str(before.suspended)
    larger = small.with_value("neck_to_bust_point", 170.0)
    after = replay(before.recipe, larger, before)
    assert told(after) == told(replay(before.recipe, larger))
    asked = {key for key, _, _ in before.right.states[-1].reads}
    assert {"neck_to_bust_point", "bust_girth"} <= asked


@pytest.mark.parametrize(("key", "value"), [("bust_girth", 900.0), ("across_back", 350.0)])
def test_a_girth_that_no_step_asked_for_runs_nothing_again(key: str, value: float) -> None:
    woman = nobody(WOMAN)
    before = replay(of_block("trousers", woman), woman)
    assert before.suspended is None
    after = replay(before.recipe, woman.with_value(key, value), before)
    assert (after.right.reused, after.key) == (1, before.key)
