"""Surveyed people with one hip fuller or deeper: the two legs meet along the crotch, and both close.

A few rows of each; the differences are invented.
"""

from typing import Any

import pytest

from make_bodies import Group
from make_lower_bodies import lower_body
from notchbook.body import Side
from notchbook.pattern import pattern_to_data, walk_seam
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.lower_judge import lower_misses
from support.one_side import one_side
from survey_rows import rows

LEFT: dict[str, dict[str, float]] = {
    "fuller hip": {"hip_girth": 20.0},
    "smaller hip, larger waist": {"hip_girth": -12.0, "waist_girth": 12.0},
    "deeper hip, longer leg": {"hip_depth": 10.0, "outside_leg": 10.0, "inside_leg": 8.0},
    "higher crotch": {"standing_rise": -6.0},
}


def two_legged(group: Group, row: int, left: dict[str, float]) -> Replay:
    base = lower_body(rows(group)[row], "natural", "measured", group).measures
    recipe = add_step(Recipe("Trousers"), "trousers", {}, base=base)
    measures = base
    for key, more in left.items():
        measures = measures.with_value(key, base.value(key) + more, "left")
    return replay(recipe, measures)


@pytest.mark.parametrize("left", LEFT.values(), ids=LEFT.keys())
@pytest.mark.parametrize(
    ("group", "row"), [("women", 11), ("women", 402), ("women", 903), ("men", 77), ("men", 2010)]
)
def test_the_legs_meet(group: Group, row: int, left: dict[str, float]) -> None:
    done = two_legged(group, row, left)
    assert done.suspended is None, str(done.suspended.error)
    assert done.left is not None
    for seam in ("front_crotch_seam", "back_crotch_seam"):
        assert walk_seam(done.pattern, done.pattern.seams[f"trousers/{seam}"]).misfit == pytest.approx(
            0.0, abs=0.1
        )
    data: dict[str, Any] = pattern_to_data(done.pattern)
    tracks: tuple[tuple[Side, Any], ...] = (("right", done.right), ("left", done.left))
    for side, track in tracks:
        promises = (promise for state in track.states for promise in state.expectations)
        wanted = {promise.measure: promise.wanted for promise in promises if promise.measure}
        assert lower_misses(one_side(data, side), wanted) == []
