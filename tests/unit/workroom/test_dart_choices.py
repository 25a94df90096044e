"""What the forms of the steps on darts may be filled with, and how such a step is said."""

from notchbook.app.step_sentence import sentence
from notchbook.recipe import definition
from notchbook.workroom.answers.choices import name_choices
from notchbook.workroom.reader import Reader
from support.dart_shapes import FRONT, done, transfer


def test_pivots_are_the_bust_point_and_the_points_of_darts() -> None:
    choices = name_choices(done(), Reader("cm"))
    names = {one.name for one in choices.pivots}
    assert {f"{FRONT}/bust_point", f"{FRONT}/waist_dart/point", "bodice.back/shoulder_dart/point"} <= names
    assert not [name for name in names if name.endswith("_mouth")]
    gathered = done(("convert_dart", {"darts": [f"{FRONT}/waist_dart"], "into": "gather"}))
    assert f"{FRONT}/waist_dart/point" not in {
        one.name for one in name_choices(gathered, Reader("cm")).pivots
    }


def test_darts_with_two_points_are_offered_by_themselves() -> None:
    choices = name_choices(done(length="hip"), Reader("cm"))
    inner = {one.name for one in choices.inner_darts}
    assert inner
    assert not inner & {one.name for one in choices.intakes}


def test_a_transfer_is_said_as_an_order() -> None:
    step, parameters = transfer("shoulder")
    order = "front, bust dart, to front, shoulder 50 % from side neck point"
    assert sentence(definition(step).sentence, parameters) == order
    into = {"darts": parameters["darts"], "places": [], "into": [{"intake": f"{FRONT}/waist_dart"}]}
    assert sentence(definition(step).sentence, into) == "front, bust dart, into front, waist dart"
