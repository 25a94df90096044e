"""The written schema of a recipe is that of the program, and a foreign validator agrees with it."""

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

import make_recipe_pages
from house import ROOT
from notchbook.recipe import recipe_to_data
from support.yoke_skirt import yoke_recipe

GOLDEN = sorted((Path(__file__).parents[2] / "golden").glob("*.recipe.json"))


def schema() -> dict[str, Any]:
    text = (ROOT / make_recipe_pages.SCHEMA).read_text(encoding="utf-8")
    read: dict[str, Any] = json.loads(text)
    return read


def test_the_pages_are_up_to_date() -> None:
    assert make_recipe_pages.out_of_date() == [], "run tools/make_recipe_pages.py"


def test_an_old_page_is_found_and_mended(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(make_recipe_pages, "ROOT", tmp_path)
    assert make_recipe_pages.main(["--check"]) == 1
    assert make_recipe_pages.SCHEMA in capsys.readouterr().out
    assert make_recipe_pages.main([]) == 0
    assert make_recipe_pages.main(["--check"]) == 0
    (tmp_path / make_recipe_pages.NAMES).write_text("by hand")
    assert make_recipe_pages.out_of_date() == [make_recipe_pages.NAMES]


def test_the_schema_is_a_schema_of_the_named_draft() -> None:
    assert schema()["$schema"] == Draft202012Validator.META_SCHEMA["$id"]
    Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("path", GOLDEN, ids=lambda path: path.name)
def test_a_golden_recipe_is_valid_by_the_schema(path: Path) -> None:
    # Outside: the jsonschema library, which knows nothing of how recipes are read here.
    Draft202012Validator(schema()).validate(json.loads(path.read_text(encoding="utf-8")))


def test_a_recipe_of_now_is_valid_and_a_damaged_one_is_not() -> None:
    validator = Draft202012Validator(schema())
    good = recipe_to_data(yoke_recipe())
    assert list(validator.iter_errors(json.loads(json.dumps(good)))) == []
    for edit in ({"format": "recipe"}, {"steps": [{"id": "vent-0"}]}, {"script": 1}, {"format_version": 0}):
        bad = {**deepcopy(good), **edit}
        assert list(validator.iter_errors(json.loads(json.dumps(bad)))), edit
