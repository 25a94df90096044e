"""On which part of an edge each fold lies is written: another body gives the same parts, or it is said.

That a style keeps its folds on the same panels in every size is common practice, no source.
"""

from dataclasses import replace
from typing import Any

import pytest

from notchbook.pattern import Pattern, require, sewn_length
from notchbook.recipe import Recipe, add_step, change_step, replay
from support.bodice_bodies import body
from support.style_lines import WOMAN, code, good
from support.yoke_skirt import skirt_recipe

WAIST, CENTER, SIDE = "skirt.front/waist", "skirt.front/waist/center", "skirt.front/waist/side"
RECIPE = skirt_recipe(WOMAN, front_darts=1, back_darts=2)
SLIM = body(waist_girth=600.0)
"""The same woman with a waist of 60, whose panels beside the dart are shorter; invented."""

ENDS = {
    "edge": WAIST,
    "from_point": "skirt.front/waist_center",
    "across": "skirt.front/hem",
    "across_point": "skirt.front/hem_center",
    "run": "grain",
}
PLAIN, PLAIN_SLIM = (good(replay(RECIPE, one)) for one in (WOMAN, SLIM))


def added(operation: str, **more: Any) -> Recipe:
    return add_step(RECIPE, operation, {**ENDS, **more}, base=WOMAN, slug="folds")


def beside_dart(pattern: Pattern) -> float:
    """How long the part between center and dart is."""
    return sewn_length(pattern, CENTER)


def test_the_parts_are_written_when_the_step_is_added() -> None:
    recipe = added("pleats", number=2, first_distance="3 cm", spacing="8 cm", depth="1 cm")
    assert recipe.steps[-1].parameters["parts"] == [CENTER, SIDE]
    assert beside_dart(PLAIN) < 110.0


def test_one_edge_needs_no_parts() -> None:
    told = {**ENDS, "edge": "skirt.front/hem", "from_point": "skirt.front/hem_center", "across": WAIST}
    told["across_point"] = "skirt.front/waist_center"
    recipe = add_step(RECIPE, "slash_and_spread", {**told, "number": 3}, base=WOMAN)
    assert recipe.steps[-1].parameters["parts"] == []


def test_a_pleat_that_would_lie_on_another_part_is_said_and_not_done() -> None:
    near = beside_dart(PLAIN) - 3.0
    assert beside_dart(PLAIN_SLIM) < near
    recipe = added("pleats", number=1, first_distance=f"{near} mm", depth="1 cm")
    assert recipe.steps[-1].parameters["parts"] == [CENTER]
    assert code(replay(recipe, WOMAN)) == ""
    assert code(replay(recipe, SLIM)) == "fold-elsewhere"


def test_an_old_recipe_without_parts_runs_as_it_did() -> None:
    recipe = added("pleats", number=1, first_distance=f"{beside_dart(PLAIN) - 3.0} mm", depth="1 cm")
    record = recipe.steps[-1]
    old = recipe.with_steps((*recipe.steps[:-1], _without_parts(record)))
    assert code(replay(old, SLIM)) == ""


def _without_parts(record: Any) -> Any:
    return replace(record, parameters={k: v for k, v in record.parameters.items() if k != "parts"})


def test_changing_the_step_writes_the_parts_anew() -> None:
    recipe = added("pleats", number=1, first_distance="3 cm", depth="1 cm")
    moved = change_step(
        recipe, recipe.steps[-1].id, {"first_distance": f"{beside_dart(PLAIN) + 20.0} mm"}, base=WOMAN
    )
    assert moved.steps[-1].parameters["parts"] == [SIDE]


@pytest.mark.parametrize("operation", ["slash_and_spread", "gather_edge"])
def test_even_slashes_stay_on_their_parts_on_another_body(operation: str) -> None:
    more: dict[str, Any] = {"number": 7}
    if operation == "slash_and_spread":
        more |= {"taken_up": "gather", "opens": "1 cm"}
    recipe = added(operation, **more)
    written = recipe.steps[-1].parameters["parts"]
    assert set(written) == {CENTER, SIDE}
    for one, plain in ((WOMAN, PLAIN), (SLIM, PLAIN_SLIM)):
        pattern = good(replay(recipe, one))
        total = sum(intake.amount for intake in pattern.intakes.values() if intake.kind == "gather")
        for part in (CENTER, SIDE):
            opened = sum(pattern.edges[name].length for name in require(pattern, part)) - sewn_length(
                plain, part
            )
            share = written.count(part) / len(written)
            assert opened == pytest.approx(share * total, rel=0.02), part


def test_a_part_that_opens_by_nothing_keeps_its_intake_of_nothing() -> None:
    recipe = added("gather_edge", number=1, from_distance="2 cm", to_distance="12 cm")
    assert recipe.steps[-1].parameters["parts"] == [CENTER]
    for one in (WOMAN, SLIM):
        pattern = good(replay(recipe, one))
        gathers = {name: dart.amount for name, dart in pattern.intakes.items() if dart.kind == "gather"}
        assert set(gathers) == {"folds.front/waist_center_gather", "folds.front/waist_side_gather"}
        assert gathers["folds.front/waist_center_gather"] > 90.0
        assert gathers["folds.front/waist_side_gather"] == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize(
    ("parts", "wanted"),
    [([CENTER, CENTER], "parts-not-all"), (["skirt.front/side_seam"], "part-of-other-edge")],
)
def test_parts_that_do_not_fit_the_places_are_refused(parts: list[str], wanted: str) -> None:
    recipe = added("gather_edge", number=1, parts=parts)
    assert code(replay(recipe, WOMAN)) == wanted


def test_a_part_without_room_is_said() -> None:
    recipe = added("gather_edge", number=6, from_distance="1 cm", to_distance="8 cm", parts=[SIDE] * 6)
    assert code(replay(recipe, WOMAN)) == "part-too-short"
