"""With what a style may begin: blocks with their pictures, and what each asks of one body."""

from typing import Any

import pytest
import svgpathtools
from fastapi.testclient import TestClient

from notchbook.app import picturing_blocks
from notchbook.app.block_families import family_of
from notchbook.app.needs.of_steps import needs_of_block
from notchbook.app.studio import Studio
from notchbook.body import MeasureSet, set_from_data
from notchbook.recipe import all_definitions

WOMAN = {
    "name": "Client K",
    "unit": "cm",
    "population": "women",
    "measures": {
        "height": 168,
        "bust_girth": 92,
        "waist_girth": 74,
        "hip_girth": 98,
        "hip_depth": {"value": 20.5, "status": "estimated", "error": 1.8},
    },
}
"""Invented measures of an invented woman: little was taken."""


def woman() -> MeasureSet:
    return set_from_data(WOMAN)


@pytest.fixture
def told(page: TestClient, studio: Studio) -> dict[str, dict[str, Any]]:
    """What the page is told of each block for the woman."""
    body = studio.new_body(woman()).id
    answer = page.get(f"/api/bodies/{body}/beginnings").json()
    return {one["block"]: one for one in answer}


def standings(block: dict[str, Any]) -> dict[str, str]:
    return {one["key"]: one["standing"] for one in block["needed"]}


def test_every_block_is_a_beginning(told: dict[str, dict[str, Any]]) -> None:
    assert set(told) == {step.operation for step in all_definitions() if step.kind == "block"}
    assert all(one["said"] and one["summary"] for one in told.values())


def test_what_is_needed_stands_as_it_is_in_this_body(told: dict[str, dict[str, Any]]) -> None:
    assert standings(told["skirt"]) == {
        "waist_girth": "taken",
        "hip_girth": "taken",
        "hip_depth": "estimated",
    }
    (depth,) = [one for one in told["skirt"]["needed"] if one["key"] == "hip_depth"]
    assert (depth["said"], depth["error_text"]) == ("hip depth", "± 1.8 cm")
    assert standings(told["bodice"])["scye_depth"] == "missing"


@pytest.mark.parametrize("kind", ["body", "form"])
def test_a_dress_form_lacks_the_arm_that_a_body_has(page: TestClient, studio: Studio, kind: str) -> None:
    """A dress form ends without arms (a fact of the trade): its sleeve cannot be measured on it."""
    body = studio.new_body(set_from_data({**WOMAN, "kind": kind})).id
    told = {one["block"]: one for one in page.get(f"/api/bodies/{body}/beginnings").json()}
    lacking = {one["key"] for one in told["sleeve"]["needed"] if one["not_on_form"]}
    assert "bust_girth" not in lacking
    assert ("upper_arm_girth" in lacking) is (kind == "form")


def test_a_block_that_is_drafted_with_another_asks_for_what_both_need(
    told: dict[str, dict[str, Any]],
) -> None:
    sleeve = told["sleeve"]
    assert [one["name"] for one in sleeve["with_blocks"]] == ["bodice"]
    assert set(standings(sleeve)) == set(needs_of_block("sleeve", woman()).needed)
    assert {"bust_girth", "upper_arm_girth"} <= set(standings(sleeve))


def test_blocks_come_by_family_the_plainest_first(told: dict[str, dict[str, Any]]) -> None:
    families = list(dict.fromkeys(one["family"] for one in told.values()))
    assert families == ["upper", "skirts", "trousers", "stretch"]
    skirts = [name for name, one in told.items() if one["family"] == "skirts"]
    assert skirts == ["skirt", "gored_skirt", "circle_skirt"]
    assert family_of("a_block_of_a_plugin") == "others"


def test_every_block_has_its_picture(page: TestClient, told: dict[str, dict[str, Any]]) -> None:
    for block in told:
        assert page.get(f"/api/blocks/{block}/picture").json(), block
    assert page.get("/api/blocks/no_such_block/picture").json() == []


def test_the_picture_is_a_draft_and_lies_in_its_box(page: TestClient) -> None:
    pieces = {piece["name"]: piece for piece in page.get("/api/blocks/sleeve/picture").json()}
    assert {name: piece["block"] for name, piece in pieces.items()} == {
        "bodice.front": "bodice",
        "bodice.back": "bodice",
        "sleeve.sleeve": "sleeve",
    }
    for piece in pieces.values():
        left, right, low, high = svgpathtools.parse_path(piece["outline"]).bbox()
        assert (left, low) == pytest.approx((piece["low"]["x"], piece["low"]["y"]), abs=0.01)
        assert (right, high) == pytest.approx((piece["high"]["x"], piece["high"]["y"]), abs=0.01)


def test_a_block_that_cannot_be_drafted_or_breaks_has_no_picture(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_asked: object) -> None:
        raise ZeroDivisionError

    picturing_blocks.pictured_block.cache_clear()
    try:
        assert picturing_blocks.pictured_block("no_such_block") is None
        monkeypatch.setattr(picturing_blocks, "trial_recipe", broken)
        assert picturing_blocks.pictured_block("skirt") is None
    finally:
        picturing_blocks.pictured_block.cache_clear()
