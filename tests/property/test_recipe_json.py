"""Whatever JSON is opened as a recipe: a recipe, or a refusal in words, never a traceback."""

import json
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from notchbook.errors import InputError, NotchbookError
from notchbook.recipe import (
    Recipe,
    StepRecord,
    Target,
    definition,
    recipe_from_data,
    recipe_from_json,
    recipe_to_data,
    recipe_to_json,
    replay,
)
from support.yoke_skirt import FORM_A, yoke_recipe

SCALARS = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text()
    | st.sampled_from(["1/4 hip", "skirt.front/hem", "yoke", "5 cm", "-3 mm"])
)
ANY_JSON = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=20,
)
GOOD = recipe_to_data(yoke_recipe())


@given(ANY_JSON)
def test_arbitrary_json_is_only_ever_an_input_error(data: Any) -> None:
    try:
        recipe_from_json(json.dumps(data))
    except InputError as error:
        assert str(error)
    else:
        raise AssertionError("no arbitrary JSON is a recipe")


@given(st.text(alphabet=st.characters(exclude_categories=[])))
def test_arbitrary_text_is_only_ever_an_input_error(text: str) -> None:
    try:
        recipe_from_json(text)
    except InputError as error:
        assert str(error)
    else:
        raise AssertionError("no arbitrary text is a recipe")


def paths(data: Any, here: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The way to every value within JSON data."""
    found = [here]
    parts = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, value in parts:
        found += paths(value, (*here, key))
    return found


PATHS = [path for path in paths(GOOD) if path]


@settings(max_examples=150)
@given(st.sampled_from(PATHS), ANY_JSON)
def test_a_recipe_with_one_value_changed_runs_or_says_why_not(path: tuple[Any, ...], value: Any) -> None:
    data = json.loads(json.dumps(GOOD))
    owner = data
    for key in path[:-1]:
        owner = owner[key]
    owner[path[-1]] = value
    try:
        recipe = recipe_from_json(json.dumps(data))
        assert recipe_from_json(recipe_to_json(recipe)) == recipe
        done = replay(recipe, FORM_A)
    except NotchbookError as error:
        assert isinstance(error, InputError)
        assert str(error)
        return
    if done.suspended is not None:
        assert str(done.suspended.error)


words = st.from_regex(r"[a-z][a-z0-9]{0,6}(_[a-z0-9]{1,4}){0,2}", fullmatch=True)
plain_text = st.text(alphabet=st.characters(codec="utf-8"), max_size=20)
plain = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False)
    | plain_text,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(plain_text, inner, max_size=3),
    max_leaves=8,
)
records = st.builds(
    StepRecord,
    id=st.integers(1, 10**6).map(lambda number: f"vent-{number}"),
    operation=st.just("vent"),
    version=st.just(definition("vent").version),
    slug=words,
    parameters=st.dictionaries(plain_text, plain, max_size=3),
    title=plain_text,
    side=st.sampled_from(["both", "left", "right"]),
    phase=st.sampled_from(["shaping", "derived", "whole"]),
    note=plain_text,
    targets=st.lists(
        st.builds(Target, plain_text, plain_text, st.floats(allow_nan=False, allow_infinity=False)),
        max_size=2,
    ).map(tuple),
    rebound=st.lists(st.tuples(plain_text, plain_text), max_size=2).map(tuple),
)


@given(plain_text, plain_text, st.lists(records, max_size=4), st.lists(words, max_size=3))
def test_a_recipe_there_and_back_is_the_same(
    name: str, number: str, steps: list[StepRecord], retired: list[str]
) -> None:
    assume(len({record.id for record in steps}) == len({record.slug for record in steps}) == len(steps))
    most = max((int(record.id.removeprefix("vent-")) for record in steps), default=0)
    recipe = Recipe(name, number, tuple(steps), {"vent": most}, tuple(retired))
    text = recipe_to_json(recipe)
    assert recipe_from_json(text) == recipe
    assert recipe_to_json(recipe_from_data(json.loads(text))) == text
