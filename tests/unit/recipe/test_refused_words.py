"""A refused parameter is told in the words of the house, for every field of every step."""

from typing import Any

import pytest
from pydantic import BaseModel, ValidationError

from notchbook.errors import InputError, NotchbookError
from notchbook.recipe import all_definitions
from notchbook.recipe.refused_words import refused_words
from notchbook.recipe.track import parameter_error

JUNK: tuple[Any, ...] = (None, True, -1, 10**9, float("inf"), "", "zzz", [], [1], {}, {"a": 1}, "x" * 500)


class Fields(BaseModel):
    """Invented fields, one of each kind."""

    count: int = 0
    is_open: bool = False


def complaint(model: type[BaseModel], given: dict[str, Any]) -> str:
    with pytest.raises(ValidationError) as refused:
        model.model_validate(given)
    return refused_words(refused.value.errors()[0])


def test_a_choice_tells_what_may_be_chosen_and_what_was_given() -> None:
    skirt = next(one for one in all_definitions() if one.operation == "skirt")
    words = complaint(skirt.parameters, {"front_darts": 9})
    assert words == "it takes 'auto', 0, 1, 2 or 3, not 9."


def test_a_field_of_another_name_is_said() -> None:
    skirt = next(one for one in all_definitions() if one.operation == "skirt")
    assert complaint(skirt.parameters, {"lenght": "60"}) == "there is no field of this name."


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"count": "many"}, "it takes a whole number, not many."),
        ({"count": 1.5}, "it takes a whole number, not 1.5."),
        ({"is_open": "perhaps"}, "it takes true or false, not perhaps."),
    ],
)
def test_each_kind_of_field_says_what_it_takes(given: dict[str, Any], words: str) -> None:
    assert complaint(Fields, given) == words


def test_a_refusal_of_our_own_brings_along_what_to_do() -> None:
    leggings = next(one for one in all_definitions() if one.operation == "leggings")
    words = complaint(leggings.parameters, {"across": "loose"})
    assert words.startswith("“loose” is not a stretch test. Write what was measured: 10 cm to 14 cm")


def test_what_is_told_back_stays_short() -> None:
    assert len(complaint(Fields, {"count": "9" * 3 + "a" * 900})) < 90


def test_no_step_answers_in_the_words_of_a_library() -> None:
    for step in all_definitions():
        for field in (*step.parameters.model_fields, "no_such_field"):
            for junk in JUNK:
                _require_own_words(step.parameters, {field: junk})


def _require_own_words(model: type[BaseModel], given: dict[str, Any]) -> None:
    try:
        model.model_validate(given)
    except ValidationError as error:
        for one in error.errors():
            is_ours = isinstance(one.get("ctx", {}).get("error"), NotchbookError)
            assert is_ours or one["msg"] not in refused_words(one), (model, given, one)
        assert isinstance(parameter_error("step-1", error), InputError)
