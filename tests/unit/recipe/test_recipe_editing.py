"""Writing in a recipe: ids, slugs and counters are kept, and nothing is run."""

from dataclasses import replace

import pytest

from notchbook.errors import InputError
from notchbook.recipe import (
    Recipe,
    StepContext,
    Target,
    add_step,
    change_step,
    move_step,
    names_in,
    rebind,
    remove_step,
    rename_step,
)
from notchbook.recipe.registry import definition
from notchbook.recipe.track import read_parameters
from support.closure_steps import STAND, upper_sets
from support.edge_steps import bodice
from support.odd_steps import NoParameters, nothing, odd_step, register
from support.yoke_skirt import (
    BACK,
    FORM_A,
    FRONT,
    LONGER,
    WAISTBAND,
    ZIP,
    skirt_recipe,
    with_steps,
    yoke_recipe,
)


def identity(recipe: Recipe) -> list[tuple[str, str, str]]:
    return [(record.id, record.operation, record.slug) for record in recipe.steps]


def code(call: object, *arguments: object, **more: object) -> str:
    assert callable(call)
    with pytest.raises(InputError) as caught:
        call(*arguments, **more)
    assert str(caught.value)
    return caught.value.code


def test_ids_count_by_operation_and_slugs_are_free_words() -> None:
    recipe = with_steps(skirt_recipe(), LONGER, LONGER, ("change_length", "", LONGER[2]))
    assert identity(recipe)[1:] == [
        ("change_length-1", "change_length", "longer"),
        ("change_length-2", "change_length", "longer_2"),
        ("change_length-3", "change_length", "change_length"),
    ]


def test_numbers_and_slugs_of_removed_steps_are_never_given_again() -> None:
    recipe = remove_step(with_steps(skirt_recipe(), LONGER), "change_length-1")
    assert recipe.retired == ("longer",)
    again = with_steps(recipe, LONGER)
    assert identity(again)[-1] == ("change_length-2", "change_length", "longer_2")


def test_changing_moving_renaming_and_binding_keep_ids_slugs_and_counters() -> None:
    recipe = yoke_recipe()
    others = [
        change_step(recipe, "change_length-1", {"amount": "2 cm"}, base=FORM_A),
        rename_step(recipe, "change_length-1", "Longer by two"),
        rebind(recipe, "zip_opening-1", f"{BACK}/center_back", f"{BACK}/side_seam"),
    ]
    for other in others:
        assert identity(other) == identity(recipe)
        assert (other.counters, other.retired) == (recipe.counters, recipe.retired)
    moved = move_step(recipe, "zip_opening-1", "vent-1")
    assert sorted(identity(moved)) == sorted(identity(recipe))
    assert moved.counters == recipe.counters
    assert [record.id for record in moved.steps].index("zip_opening-1") == 5
    assert move_step(recipe, "vent-1", "vent-1") == recipe
    assert [record.id for record in move_step(recipe, "vent-1", None).steps][-1] == "vent-1"


def test_the_recipe_that_was_is_not_touched() -> None:
    recipe = yoke_recipe()
    before = repr(recipe)
    change_step(recipe, "skirt-1", {"length": "50 cm"}, base=FORM_A)
    rebind(recipe, "zip_opening-1", f"{BACK}/center_back", f"{BACK}/side_seam")
    remove_step(recipe, "vent-1")
    assert repr(recipe) == before


def test_amounts_are_kept_in_their_canonical_text() -> None:
    recipe = with_steps(skirt_recipe(length=600), ("change_length", "x", {**LONGER[2], "amount": "5cm"}))
    assert recipe.steps[0].parameters["length"] == "600 mm"
    assert recipe.steps[1].parameters["amount"] == "5 cm"


def test_what_was_settled_is_settled_anew_only_with_what_it_hangs_on() -> None:
    buttons = {**STAND, "number": 5}
    stand = {"above_level": None, "spacing": "80 mm"}
    medium = upper_sets()["medium-92"]
    recipe = add_step(bodice().recipe, "button_stand", {**buttons, **stand}, base=medium)
    kept = change_step(recipe, "button_stand-1", {"facing": "separate", "button": "18 mm"}, base=medium)
    again = change_step(recipe, "button_stand-1", {"spacing": "80 mm"}, base=medium)
    anew = change_step(recipe, "button_stand-1", {"spacing": "40 mm"}, base=medium)
    said = change_step(recipe, "button_stand-1", {"spacing": "40 mm", "number": 3}, base=medium)
    numbers = [one.step("button_stand-1").parameters["number"] for one in (recipe, kept, again, anew, said)]
    assert numbers[:3] == [5, 5, 5]
    assert numbers[3] > 5
    assert numbers[4] == 3


def test_the_same_amount_written_otherwise_counts_nothing_anew() -> None:
    """A count that was set by hand stays where what it hangs on is only typed again."""
    medium = upper_sets()["medium-92"]
    stand = {**STAND, "number": 5, "above_level": None, "spacing": "80 mm"}
    recipe = add_step(bodice().recipe, "button_stand", stand, base=medium)
    by_hand = change_step(recipe, "button_stand-1", {"number": 3}, base=medium)
    for written in ("80mm", " 80  mm", "80.0 mm"):
        again = change_step(by_hand, "button_stand-1", {"spacing": written}, base=medium)
        assert again.step("button_stand-1").parameters["number"] == 3


def test_an_empty_title_keeps_the_old_one() -> None:
    recipe = skirt_recipe()
    assert rename_step(recipe, "skirt-1", "  ").steps[0].title == "Draft skirt"
    assert rename_step(recipe, "skirt-1", " Base ").steps[0].title == "Base"


def test_a_target_stays_with_its_parameter_only_while_the_number_does() -> None:
    recipe = with_steps(skirt_recipe(), LONGER)
    record = replace(recipe.steps[1], targets=(Target("amount", "hem 60 cm above the floor", 50.0),))
    recipe = recipe.with_steps((recipe.steps[0], record))
    assert rename_step(recipe, "change_length-1", "x").steps[1].targets
    assert change_step(recipe, "change_length-1", {"hems": [f"{BACK}/hem"]}, base=FORM_A).steps[1].targets
    assert not change_step(recipe, "change_length-1", {"amount": "6 cm"}, base=FORM_A).steps[1].targets


def test_changed_parameters_that_do_not_fit_are_refused_in_words() -> None:
    recipe = with_steps(skirt_recipe(), LONGER)
    with pytest.raises(InputError) as caught:
        change_step(recipe, "change_length-1", {"amount": "five"}, base=FORM_A)
    assert caught.value.code == "parameter-refused"
    assert caught.value.facts["field"] == "amount"
    assert "five" in str(caught.value)
    unfit: list[dict[str, object]] = [
        {"unknown": 1},
        {"hems": []},
        {"hems": ["no name"]},
        {"amount": True},
        {"amount": [1]},
        {"amount": 10**400},
        {"amount": float("nan")},
    ]
    for changes in unfit:
        refused = code(change_step, recipe, "change_length-1", changes, base=FORM_A)
        assert refused == "parameter-refused", changes


def test_what_is_not_there_is_said() -> None:
    recipe = skirt_recipe()
    assert code(recipe.step, "vent-1") == "step-unknown"
    assert code(move_step, recipe, "skirt-1", "vent-1") == "step-unknown"
    assert code(add_step, recipe, "skirt", {}, base=FORM_A, before="vent-1") == "step-unknown"
    assert code(add_step, recipe, "skirt", {}, base=FORM_A, slug="Front yoke") == "parameter-not-word"
    assert code(rebind, recipe, "skirt-1", f"{FRONT}/hem", f"{BACK}/hem") == "rebind-nothing"
    assert code(rebind, recipe, "skirt-1", f"{FRONT}/hem", "hem") == "parameter-not-name"


def test_an_unknown_step_names_the_nearest() -> None:
    with pytest.raises(InputError) as caught:
        add_step(skirt_recipe(), "waist_band", {}, base=FORM_A)
    assert caught.value.code == "operation-unknown"
    assert caught.value.facts["nearest"] == "waistband"
    assert code(add_step, skirt_recipe(), "", {}, base=FORM_A) == "operation-unknown"


def test_a_step_that_works_on_a_derived_piece_goes_to_its_phase() -> None:
    recipe = with_steps(skirt_recipe(), WAISTBAND, ZIP)
    wide = with_steps(recipe, ("set_allowance", "wide", {"edges": ["waistband.band/upper"], "width": "2 cm"}))
    assert [record.phase for record in wide.steps] == ["shaping", "whole", "shaping", "whole"]


def test_the_names_of_a_step_are_found_in_all_its_fields() -> None:
    recipe = yoke_recipe()
    record = recipe.step("cut_style_line-1")
    names = names_in(read_parameters(definition(record.operation), record))
    assert f"{FRONT}/side_seam" in names
    assert f"{BACK}/waist_center" in names
    assert "above" not in names


def test_auto_is_settled_when_a_step_is_added_or_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    settled: list[str] = []

    def settle(context: StepContext, parameters: NoParameters) -> NoParameters:
        settled.append(context.step)
        return parameters

    register(monkeypatch, odd_step(nothing, settle=settle))
    recipe = with_steps(skirt_recipe(), ("odd", "odd", {}))
    change_step(recipe, "odd-1", {}, base=FORM_A)
    assert settled == ["odd-1", "odd-1"]
