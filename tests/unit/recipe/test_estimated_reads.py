"""Which estimates a pattern rests on: those that a step read, on its side, and no others."""

from dataclasses import replace

from notchbook.body import Measure, MeasureSet
from notchbook.recipe import Recipe, Replay, add_step, estimated_reads, keys_read, replay

TAKEN = {"waist_girth": 740.0, "hip_girth": 980.0, "hip_depth": 205.0}
GUESS = Measure(205.0, "estimated", 20.0)


def drafted(measures: MeasureSet) -> Replay:
    run = replay(add_step(Recipe("Skirt"), "skirt", {}, base=measures), measures)
    assert run.suspended is None
    return run


def body(**more: float) -> MeasureSet:
    return MeasureSet.from_mm("Invented", TAKEN | more)


def test_a_pattern_of_measures_rests_on_no_estimate() -> None:
    assert estimated_reads(drafted(body())) == {}


def test_an_estimate_that_a_step_read_is_told() -> None:
    run = drafted(body().with_value("hip_depth", GUESS))
    assert estimated_reads(run) == {"hip_depth": GUESS}
    assert {"waist_girth", "hip_girth", "hip_depth", "height"} <= set(keys_read(run))


def test_an_estimate_that_no_step_read_is_not() -> None:
    assert estimated_reads(drafted(body().with_value("wrist_girth", GUESS))) == {}


def test_a_measure_in_an_amount_counts_too() -> None:
    measures = body().with_value("knee_depth", Measure(590.0, "estimated", 30.0))
    run = replay(add_step(Recipe("Skirt"), "skirt", {"length": "knee_depth - 5 cm"}, base=measures), measures)
    assert list(estimated_reads(run)) == ["knee_depth"]


def test_of_two_sides_only_the_estimated_one_is_told() -> None:
    run = drafted(body().with_value("hip_depth", Measure(195.0, "estimated", 20.0), "left"))
    assert list(estimated_reads(run)) == ["hip_depth@left"]


def test_a_side_of_the_same_value_is_told_though_one_side_is_drafted_for_both() -> None:
    run = drafted(body().with_value("hip_depth", GUESS, "left"))
    assert run.left is not None  # what was taken and what was guessed are drafted each for itself
    assert {piece.side for piece in run.pattern.pieces.values()} == {"both"}
    assert list(estimated_reads(run)) == ["hip_depth@left"]
    # A step that asked for its own side alone, as most do.
    states = tuple(replace(state, reads=(("hip_depth", "right", 205.0),)) for state in run.right.states)
    asked = replace(run, left=None, right=replace(run.right, states=states))
    assert list(estimated_reads(asked)) == ["hip_depth@left"]


def test_a_plain_estimate_behind_two_measured_sides_is_not_told() -> None:
    both = body().with_value("hip_depth", GUESS).with_value("hip_depth", 195.0, "left")
    run = drafted(both.with_value("hip_depth", 205.0, "right"))
    assert estimated_reads(run) == {}
