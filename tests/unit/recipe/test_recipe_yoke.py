"""A whole style on fifty surveyed bodies, and on one whose sides differ."""

import numpy as np
import pytest

from notchbook.body import MeasureSet
from notchbook.pattern import Pattern, sewn_length, walk_seam
from notchbook.recipe import Replay, add_step, change_step, replay
from support.yoke_skirt import (
    FACING,
    FORM_A,
    FRONT,
    VENT,
    WAISTBAND,
    ZIP,
    body,
    run,
    skirt_recipe,
    survey_women,
    with_steps,
    yoke_recipe,
)

RECIPE = yoke_recipe()
ON_BASE = run(RECIPE)
WOMEN = survey_women()


def misfits(pattern: Pattern) -> list[str]:
    return [s.name for s in pattern.seams.values() if abs(walk_seam(pattern, s).misfit) > 0.01]


def test_the_style_has_the_pieces_that_a_patternmaker_expects() -> None:
    assert list(ON_BASE.pattern.pieces) == [
        "yoke.front_above",
        "yoke.front_below",
        "whole_back.back",
        "waist_facing.front",
        "waist_facing.back",
        "waistband.band",
    ]
    assert misfits(ON_BASE.pattern) == []


@pytest.mark.parametrize("woman", WOMEN, ids=lambda woman: woman.name)
def test_on_every_body_nothing_is_lost_and_every_name_stands(woman: MeasureSet) -> None:
    pattern = run(RECIPE, woman).pattern
    assert list(pattern.index) == list(ON_BASE.pattern.index)
    assert list(pattern.groups) == list(ON_BASE.pattern.groups)
    assert pattern.fates == ON_BASE.pattern.fates
    assert misfits(pattern) == []
    # Facing and waistband follow the waist of this body.
    waist = 2.0 * sum(sewn_length(pattern, f"skirt.{panel}/waist") for panel in ("front", "back"))
    assert waist == pytest.approx(woman.value("waist_girth") + 15.0, abs=0.01)
    band = pattern.pieces["waistband.band"]
    sewn = sum(band.edge(f"waistband.band/lower/{side}").length for side in ("right", "left"))
    faced = sum(sewn_length(pattern, f"waist_facing.{panel}/upper") for panel in ("front", "back"))
    assert sewn == pytest.approx(waist, abs=0.01)
    assert 2.0 * faced == pytest.approx(waist, abs=0.01)


def test_facing_and_waistband_follow_a_change_of_the_block() -> None:
    changed = change_step(RECIPE, "skirt-1", {"waist_ease": "35 mm"}, base=FORM_A)
    pattern = run(changed).pattern
    before, after = (
        sum(p.edges[f"waist_facing.{panel}/upper"].length for panel in ("front", "back"))
        for p in (ON_BASE.pattern, pattern)
    )
    assert after - before == pytest.approx(10.0, abs=0.01)
    assert misfits(pattern) == []


# ---------------------------------------------------------------- sides

UNEVEN = FORM_A.with_value("hip_depth", 196.0, "left").with_value("hip_depth", 210.0, "right")


def test_alike_sides_run_once() -> None:
    assert ON_BASE.left is None
    assert run(RECIPE, FORM_A.with_value("hip_depth", 206.0, "left")).left is None
    # A measure that no step reads may differ without costing a second run.
    assert run(RECIPE, FORM_A.with_value("knee_depth", 560.0, "left")).left is None


def test_uneven_sides_give_a_whole_front_with_named_sides() -> None:
    done = run(RECIPE, UNEVEN)
    assert done.left is not None
    assert list(done.left.pattern.index) == list(done.right.pattern.index)
    names = {name.split("@")[0] for name in done.pattern.index}
    assert names >= set(ON_BASE.pattern.index)
    # What was the fold is marked by notches at both its ends, and nothing else is new.
    new = {name for name in names - set(ON_BASE.pattern.index) if not name.endswith("_notch")}
    assert new == set()
    every = [name for piece in done.pattern.pieces.values() for name in piece.names()]
    assert len(every) == len(set(every))
    assert "skirt.front/side_seam/above@left" in done.pattern.index
    whole = done.pattern.pieces["yoke.front_above"]
    assert (whole.cut, whole.side) == ("single", "both")
    assert done.pattern.pieces["whole_back.back@left"].side == "left"
    assert misfits(done.pattern) == []


def test_each_side_closes_on_its_own_measures_and_they_meet_at_the_centers() -> None:
    done = run(skirt_recipe(), UNEVEN)
    pattern = done.pattern
    # The right hip lies 14 mm lower along its curve; waist and hem stay level, as nothing else was measured.
    hips = [_height_of_hip(pattern, side) for side in ("left", "right")]
    assert hips[0] - hips[1] == pytest.approx(14.0, abs=1.0)
    left, right = (pattern.edges[f"{FRONT}/side_seam@{side}"].length for side in ("left", "right"))
    assert right == pytest.approx(left, abs=1.0)
    waist = sum(
        sewn_length(pattern, f"skirt.{panel}/waist@{side}")
        for panel in ("front", "back")
        for side in ("left", "right")
    )
    assert waist == pytest.approx(695.0, abs=0.01)
    backs = [pattern.edges[f"skirt.back/center_back@{side}"].length for side in ("left", "right")]
    assert backs[0] == pytest.approx(backs[1], abs=1e-6)
    # The promises of both sides together are those of the whole waist.
    (promise,) = [one for one in done.expectations if one.measure == "waist_girth"]
    assert promise.times == 1
    assert sum(sewn_length(pattern, name) for name in promise.names) == pytest.approx(promise.wanted, abs=0.1)


def _height_of_hip(pattern: Pattern, side: str) -> float:
    return pattern.pieces[FRONT].line(f"{FRONT}/hip_line@{side}").path.start.y


def test_a_leg_that_is_shorter_lowers_hip_and_waist_of_its_side() -> None:
    """With both outside legs measured, the floor says how high each hip lies; the waist goes with it."""
    tall = FORM_A.with_value("outside_leg", 1040.0, "right").with_value("outside_leg", 1032.0, "left")
    pattern = run(skirt_recipe(), tall).pattern
    assert _height_of_hip(pattern, "right") - _height_of_hip(pattern, "left") == pytest.approx(8.0, abs=0.01)
    left, right = (pattern.edges[f"{FRONT}/side_seam@{side}"].length for side in ("left", "right"))
    assert right - left == pytest.approx(8.0, abs=0.01)


def test_even_sides_laid_together_are_the_half_twice() -> None:
    """A tiny difference on one side must give nearly what no difference gives."""
    nearly = FORM_A.with_value("hip_depth", 206.0 + 0.3, "left")
    whole = run(skirt_recipe(), nearly).pattern.pieces[FRONT]
    half = run(skirt_recipe()).pattern.pieces[FRONT]
    assert whole.sew_line.area() == pytest.approx(2.0 * half.sew_line.area(), rel=1e-3)
    assert np.isclose(whole.bounds.width, 2.0 * half.bounds.width, atol=1e-3)


def test_a_step_for_the_left_only_is_done_there_only() -> None:
    recipe = with_steps(skirt_recipe(), ZIP)
    recipe = add_step(
        recipe,
        "change_length",
        {"hems": [f"{FRONT}/hem"], "amount": "0 cm"},
        base=FORM_A,
        slug="level",
        side="left",
    )
    recipe = with_steps(recipe, WAISTBAND, FACING)
    done = run(recipe)
    assert done.left is not None
    assert [state.record.slug for state in done.left.states][-2:] == ["level", "waist_facing"]
    assert "level" not in [state.record.slug for state in done.right.states]
    assert misfits(done.pattern) == []


def test_a_vent_on_one_side_leaves_the_other_without() -> None:
    recipe = add_step(skirt_recipe(), *VENT[:1], VENT[2], base=FORM_A, slug="vent", side="right")
    pattern = run(recipe).pattern
    assert "vent.back/hem@right" in pattern.index
    assert "vent.back/hem@left" not in pattern.index


def test_a_fold_that_differs_from_side_to_side_is_said() -> None:
    recipe = add_step(
        skirt_recipe(),
        "change_length",
        {"hems": [f"{FRONT}/hem"], "amount": "3 cm"},
        base=FORM_A,
        slug="longer",
        side="left",
    )
    done = replay(recipe, FORM_A)
    assert done.suspended is not None
    assert (done.suspended.step, done.suspended.error.code) == ("both sides", "fold-sides-differ")
    assert done.suspended.error.facts["gap"] == pytest.approx(30.0)
    # The last good state stays in sight.
    assert list(done.pattern.pieces) == ["skirt.front", "skirt.back"]


def test_what_a_step_says_of_one_side_names_that_side() -> None:
    measures = body(600.0, 960.0, 205.0).with_value("hip_girth", 900.0, "left")
    done: Replay = run(skirt_recipe(FORM_A, front_darts=1, back_darts=1), measures)
    said = [note.where for note in done.notes if note.code == "dart-wide"]
    assert said
    assert all(where in done.pattern.index for where in said)
