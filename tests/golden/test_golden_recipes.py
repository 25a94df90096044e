"""Recipes of every release are opened for ever and still give the pattern that they gave."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from notchbook.body import set_from_data
from notchbook.pattern import frozen_map, pattern_to_data
from notchbook.recipe import change_step, recipe_from_json, recipe_to_json
from notchbook.recipe import replay as run_again

FOLDER = Path(__file__).parent
GOLDEN = sorted(path.name.removesuffix(".recipe.json") for path in FOLDER.glob("*.recipe.json"))
CLOSE = 1e-6
"""mm within which coordinates agree on another machine; names, words and order agree exactly."""


def text(name: str, what: str) -> str:
    return (FOLDER / f"{name}.{what}.json").read_text(encoding="utf-8")


def differences(found: Any, wanted: Any, where: str = "") -> list[str]:
    """Where two readings of JSON differ; numbers may differ by a millionth."""
    if isinstance(wanted, dict) and isinstance(found, dict):
        if list(found) != list(wanted):
            return [f"{where}: keys {list(found)} for {list(wanted)}"]
        return [line for key in wanted for line in differences(found[key], wanted[key], f"{where}/{key}")]
    if isinstance(wanted, list) and isinstance(found, list):
        if len(found) != len(wanted):
            return [f"{where}: {len(found)} parts for {len(wanted)}"]
        pairs = enumerate(zip(found, wanted, strict=True))
        return [line for index, pair in pairs for line in differences(*pair, f"{where}/{index}")]
    numbers = all(isinstance(one, (int, float)) and not isinstance(one, bool) for one in (found, wanted))
    if numbers and abs(found - wanted) <= CLOSE:
        return []
    return [] if found == wanted and type(found) is type(wanted) else [f"{where}: {found!r} for {wanted!r}"]


def test_a_golden_recipe_is_there() -> None:
    assert "yoke_skirt-0.1" in GOLDEN


@pytest.mark.parametrize("name", GOLDEN)
def test_a_golden_recipe_gives_the_pattern_that_it_gave(name: str) -> None:
    recipe = recipe_from_json(text(name, "recipe"))
    done = run_again(recipe, set_from_data(json.loads(text(name, "measures"))))
    assert done.suspended is None
    found = replace(done.pattern, operations=frozen_map())  # words, not shapes
    assert differences(pattern_to_data(found), json.loads(text(name, "pattern"))) == []


@pytest.mark.parametrize("name", GOLDEN)
def test_a_golden_recipe_is_written_as_it_is_now(name: str) -> None:
    recipe = recipe_from_json(text(name, "recipe"))
    assert recipe_from_json(recipe_to_json(recipe)) == recipe


def test_a_drift_of_a_hundredth_or_another_order_is_seen() -> None:
    name = "yoke_skirt-0.1"
    measures = set_from_data(json.loads(text(name, "measures")))
    recipe = recipe_from_json(text(name, "recipe"))
    longer = change_step(recipe, "change_length-1", {"amount": "50.01 mm"}, base=measures)
    wanted = json.loads(text(name, "pattern"))
    assert differences(pattern_to_data(run_again(longer, measures).pattern), wanted)
    turned = json.loads(text(name, "pattern"))
    turned["pieces"].reverse()
    assert differences(turned, wanted)
    assert differences({"a": 1}, {"a": True})
    assert differences(["x", 1.0], ["x", 1.0 + 2e-6])
    assert not differences(["x", 1.0], ["x", 1.0 + 5e-7])
