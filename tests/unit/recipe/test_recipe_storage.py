"""The stored form: read as written, led up from older forms, and refused in words when damaged."""

import json
from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from notchbook.errors import InputError
from notchbook.recipe import recipe_from_data, recipe_from_json, recipe_to_data, recipe_to_json
from support.odd_steps import OneNumber, nothing, odd_step, register
from support.yoke_skirt import skirt_recipe, yoke_recipe

GOOD = recipe_to_json(yoke_recipe())


def refused(text: str) -> InputError:
    with pytest.raises(InputError) as caught:
        recipe_from_json(text)
    assert str(caught.value).endswith(f"[{caught.value.code}]")
    return caught.value


def changed(edit: Callable[[dict[str, Any]], object]) -> str:
    data = deepcopy(json.loads(GOOD))
    edit(data)
    return json.dumps(data)


def test_there_and_back_and_the_same_bytes() -> None:
    recipe = yoke_recipe()
    assert recipe_from_json(GOOD) == recipe
    assert recipe_to_json(recipe_from_json(GOOD)) == GOOD
    assert GOOD.endswith("}\n")


def test_keys_in_any_order_give_the_same_recipe() -> None:
    turned = json.dumps(dict(reversed(list(json.loads(GOOD).items()))))
    assert recipe_to_json(recipe_from_json(turned)) == GOOD


DAMAGE: list[tuple[str, Callable[[dict[str, Any]], object], str]] = [
    ("no format", lambda d: d.pop("format"), "format"),
    ("another format", lambda d: d.update(format="recipe"), "format"),
    ("format 0", lambda d: d.update(format_version=0), "format_version"),
    ("format true", lambda d: d.update(format_version=True), "format_version"),
    ("format in words", lambda d: d.update(format_version="1"), "format_version"),
    ("a word too many", lambda d: d.update(script="rm"), "script"),
    ("name a number", lambda d: d.update(name=4), "name"),
    ("steps a text", lambda d: d.update(steps="none"), "steps"),
    ("id without number", lambda d: d["steps"][0].update(id="skirt"), "steps.0.id"),
    ("id with number 0", lambda d: d["steps"][0].update(id="skirt-0"), "steps.0.id"),
    ("id without end", lambda d: d["steps"][0].update(id="skirt-1" + "0" * 5000), "steps.0.id"),
    ("slug with a dot", lambda d: d["steps"][0].update(slug="a.b"), "steps.0.slug"),
    ("version below 1", lambda d: d["steps"][0].update(version=0), "steps.0.version"),
    ("a side", lambda d: d["steps"][0].update(side="front"), "steps.0.side"),
    ("a phase", lambda d: d["steps"][0].update(phase="later"), "steps.0.phase"),
    ("parameters a list", lambda d: d["steps"][0].update(parameters=[]), "steps.0.parameters"),
    ("no parameters", lambda d: d["steps"][0].pop("parameters"), "steps.0.parameters"),
    ("counter below 0", lambda d: d["counters"].update(skirt=-1), "counters.skirt"),
    ("counter a part", lambda d: d["counters"].update(skirt=1.5), "counters.skirt"),
    ("target", lambda d: d["steps"][0].update(targets=[{"parameter": "a"}]), "steps.0.targets.0.wish"),
    ("bound to one", lambda d: d["steps"][0].update(rebound=[["a"]]), "steps.0.rebound.0"),
    ("id of another operation", lambda d: d["steps"][0].update(id="vent-7"), "vent-7"),
]


@pytest.mark.parametrize(("edit", "place"), [row[1:] for row in DAMAGE], ids=[row[0] for row in DAMAGE])
def test_damage_is_refused_with_its_place(edit: Callable[[dict[str, Any]], object], place: str) -> None:
    error = refused(changed(edit))
    assert error.code == "recipe-damaged"
    assert str(error.facts["place"]).startswith(place)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        GOOD[:-10],
        "\x00",
        "[" * 100_000,
        '{"a":' * 5000,
        '{"name": NaN}',
        '{"name": Infinity}',
        '{"name": "a", "name": "b"}',
        "1" * 5000,
        "{'name': 1}",
        GOOD + GOOD,
    ],
    ids=lambda text: text[:12],
)
def test_text_that_is_no_json_is_refused(text: str) -> None:
    assert refused(text).code == "recipe-not-json"


def test_values_that_cannot_be_written_again_are_refused() -> None:
    for value in ("1e999", "-1e999", str(2**60), '"\\ud800"', '{"\\udfff": 1}', "[" * 30 + "]" * 30):
        text = GOOD.replace('"parameters": {', f'"parameters": {{"odd": {value},', 1)
        error = refused(text)
        assert error.code == "recipe-damaged", value


@pytest.mark.parametrize("text", ["null", "[]", "3", '"recipe"', "true"])
def test_json_that_is_no_object_is_refused(text: str) -> None:
    assert refused(text).code == "recipe-damaged"


def test_a_file_beyond_all_measure_is_not_read() -> None:
    assert refused(" " * 10_000_000).code == "recipe-too-large"


def test_a_newer_recipe_is_refused_as_such_whatever_else_is_in_it() -> None:
    error = refused(changed(lambda d: d.update(format_version=2, something="new")))
    assert error.code == "recipe-newer"
    assert (error.facts["found"], error.facts["known"]) == (2, 1)


def test_a_newer_step_is_refused_as_such() -> None:
    error = refused(changed(lambda d: d["steps"][5].update(version=9)))
    assert (error.code, error.facts["step"]) == ("step-newer", "vent-1")


def test_an_unknown_step_is_refused_with_the_nearest() -> None:
    error = refused(changed(lambda d: d["steps"][5].update(operation="vents", id="vents-1")))
    assert (error.code, error.facts["nearest"]) == ("operation-unknown", "vent")


def test_an_id_or_slug_that_stands_twice_is_refused() -> None:
    def slug_twice(data: dict[str, Any]) -> None:
        data["steps"][5]["slug"] = "skirt"

    def step_twice(data: dict[str, Any]) -> None:
        data["steps"].append(data["steps"][0])

    assert refused(changed(slug_twice)).facts["what"] == "slug"
    assert refused(changed(step_twice)).facts["what"] == "id"


def test_a_counter_is_never_below_a_number_that_stands() -> None:
    recipe = recipe_from_json(changed(lambda d: d.update(counters={})))
    assert recipe.counters == yoke_recipe().counters


def test_an_older_step_is_led_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """From version 1 (height in cm) over 2 (height) to 3 (depth): each way is gone once."""
    ways = {
        1: lambda old: {"height": 10 * old["height_cm"]},
        2: lambda old: {"depth": old["height"]},
    }
    step = odd_step(nothing, version=3, parameters=OneNumber, upcasters=ways)
    register(monkeypatch, step)
    data = recipe_to_data(skirt_recipe())
    old = {"id": "odd-1", "operation": "odd", "slug": "odd", "version": 1, "parameters": {"height_cm": 4}}
    data["steps"].append(old)
    record = recipe_from_data(data).steps[1]
    assert (record.version, record.parameters) == (3, {"depth": 40})
    old.update(version=2, parameters={"height": 25})
    assert recipe_from_data(data).steps[1].parameters == {"depth": 25}
    old.update(version=1, parameters={"width": 25})
    with pytest.raises(InputError, match="recipe-damaged"):
        recipe_from_data(data)
    assert old["parameters"] == {"width": 25}


def test_a_step_to_which_no_way_leads_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    register(monkeypatch, odd_step(nothing, version=2))
    data = recipe_to_data(skirt_recipe())
    data["steps"].append({"id": "odd-1", "operation": "odd", "slug": "odd", "version": 1, "parameters": {}})
    with pytest.raises(InputError, match="step-too-old"):
        recipe_from_data(data)
