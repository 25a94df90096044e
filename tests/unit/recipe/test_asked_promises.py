"""What steps were asked to change of what a draft promised; names of one side; steps for one side."""

import pytest

from notchbook.errors import HouseFault
from notchbook.pattern import Fate, Pattern, frozen_map
from notchbook.pattern.resolve import Lost, resolve
from notchbook.recipe import Change, Recipe, StepRecord, add_step, replay
from notchbook.recipe.asked_promises import promises_of
from notchbook.recipe.ledger import account
from support.edge_steps import applied, side_seams, skirt
from support.yoke_skirt import FORM_A, FRONT, skirt_recipe

RECORD = StepRecord("unfold-1", "unfold", 1, "unfold", {}, "Unfold")


def waist_ease(recipe: Recipe) -> float:
    run = replay(recipe, FORM_A)
    assert run.suspended is None, run.suspended
    return next(one for one in run.expectations if one.name == "skirt/waist_girth").ease


def widened(recipe: Recipe, amount: str) -> Recipe:
    parameters = {"amount": amount, "seams": side_seams("0 cm", "18 cm")}
    return add_step(recipe, "change_width", parameters, base=FORM_A)


def test_what_was_asked_is_added_up_step_by_step() -> None:
    plain = skirt_recipe()
    once = widened(plain, "2 cm")
    assert waist_ease(once) - waist_ease(plain) == pytest.approx(20.0, abs=1e-9)
    twice = widened(once, "-5 mm")
    assert waist_ease(twice) - waist_ease(plain) == pytest.approx(15.0, abs=1e-9)


def test_the_promise_moves_only_from_the_step_on() -> None:
    run = applied(skirt(), "change_width", amount="2 cm", seams=side_seams("0 cm", "18 cm"))
    states = run.right.states
    before = {one.name: one.ease for one in promises_of(states[:1])}
    after = {one.name: one.ease for one in promises_of(states)}
    assert {name for name in before if before[name] != after[name]} == {"skirt/waist_girth"}


def test_a_name_of_one_side_may_take_the_place_of_one_that_was_removed() -> None:
    before = replay(skirt_recipe(), FORM_A).pattern
    piece = before.pieces[FRONT].renamed(lambda name: name if name == FRONT else f"{name}@left")
    gone = {name: "unfolded" for name in before.pieces[FRONT].names() if name != FRONT}
    bare = Pattern(pieces=frozen_map({FRONT: before.pieces[FRONT]}))
    after = Pattern(pieces=frozen_map({FRONT: piece}))
    _, entry = account(bare, Change(after, removals=gone), RECORD)
    assert f"{FRONT}/hem@left" in entry.created
    with pytest.raises(HouseFault) as fault:
        # Not so where the plain name is only forgotten, or the new name has no such origin.
        other = before.pieces[FRONT].renamed(lambda name: name if name == FRONT else f"{name}_new@left")
        account(bare, Change(Pattern(pieces=frozen_map({FRONT: other})), removals=gone), RECORD)
    assert fault.value.code == "ledger-foreign-name"


def test_a_removed_name_offers_its_two_sides() -> None:
    pattern = applied(skirt(), "unfold", pieces=["skirt.front"]).pattern
    answer = resolve(pattern, "skirt.front/hem")
    assert isinstance(answer, Lost)
    assert answer.candidates == ("skirt.front/hem@left", "skirt.front/hem@right")
    told = Pattern(fates=frozen_map({"skirt.front/hem": Fate("removed", (), "x-1", "gone")}))
    assert resolve(told, "skirt.front/hem").candidates == ()  # type: ignore[union-attr]  # it is Lost


def test_a_step_that_names_a_side_waits_for_the_whole() -> None:
    recipe = add_step(skirt_recipe(), "unfold", {"pieces": [FRONT]}, base=FORM_A)
    sided = add_step(recipe, "set_allowance", {"edges": [f"{FRONT}/hem@left"], "width": "1 cm"}, base=FORM_A)
    plain = add_step(recipe, "set_allowance", {"edges": [f"{FRONT}/hem"], "width": "1 cm"}, base=FORM_A)
    assert sided.steps[-1].phase == "whole"
    assert plain.steps[-1].phase == "shaping"
    assert replay(sided, FORM_A).suspended is None
    assert replay(plain, FORM_A).suspended is None, "before it is unfolded the plain name is there"
