"""What the measure sheet of the page is told: words, figures, what is to be looked at again."""

from dataclasses import replace
from typing import Any

import pytest
import svgpathtools
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.body import MeasureSet, measure_table
from notchbook.recipe import definition

TAKEN = {
    "height": "168",
    "bust_girth": "92",
    "waist_girth": "74",
    "hip_girth": "98",
    "back_waist_length": "40.5",
    "arm_length": "57",
    "inside_leg": "78",
}
"""Invented measures of an invented woman, cm."""


def edit(page: TestClient, body: int, asked: dict[str, Any], unit: str = "cm") -> dict[str, Any]:
    version = page.get(f"/api/bodies/{body}").json()["version"]
    sent = {"expected_version": version, "edit": asked}
    return dict(page.post(f"/api/bodies/{body}/edits?unit={unit}", json=sent).json())


@pytest.fixture
def woman(page: TestClient) -> int:
    """An invented woman in the book, held against women."""
    body = int(page.post("/api/bodies", json={"name": "Client K"}).json()["id"])
    edit(page, body, {"do": "set-population", "population": "women"})
    for key, text in TAKEN.items():
        edit(page, body, {"do": "set-measure", "key": key, "text": text})
    return body


def looked_over(page: TestClient, body: int, unit: str = "cm") -> dict[str, Any]:
    return dict(page.get(f"/api/bodies/{body}/looked-over?unit={unit}").json())


def test_the_words_of_every_measure_in_measuring_order(page: TestClient) -> None:
    told = page.get("/api/vocabulary").json()
    assert [one["key"] for one in told["measures"]] == list(measure_table())
    assert [one["number"] for one in told["measures"]] == list(range(1, len(measure_table()) + 1))
    assert all(one["how"] for one in told["measures"])
    twice = {one["key"] for one in told["measures"] if one["twice"]}
    assert {"bust_girth", "waist_girth", "hip_girth"} <= twice
    waist = next(one for one in told["measures"] if one["key"] == "waist_girth")
    assert waist["repeat_text"] == "1.0 cm"
    assert page.get("/api/vocabulary?unit=in").json()["measures"][0]["repeat_text"].endswith('"')


def test_the_short_sheet_of_a_block_is_what_the_block_needs(page: TestClient) -> None:
    skirt = next(one for one in page.get("/api/vocabulary").json()["blocks"] if one["block"] == "skirt")
    needs = definition("skirt").needs
    assert (skirt["said"], tuple(skirt["needed"])) == ("skirt block", needs.needed)
    assert tuple(skirt["helpful"]) == needs.helpful


@pytest.mark.parametrize("people", ["women", "men"])
def test_a_figure_is_drawn_in_paths_that_others_can_read(page: TestClient, people: str) -> None:
    told = page.get(f"/api/figures/{people}").json()
    assert {"front", "back", "side"} <= {view["name"] for view in told["views"]}
    for view in told["views"]:
        assert all(len(svgpathtools.parse_path(path)) > 0 for path in view["outline"])
        for tape in view["tapes"]:
            assert len(svgpathtools.parse_path(tape["path"])) > 0
            assert tape["title"] == measure_table()[tape["key"]].label
            assert tape["number"] == measure_table()[tape["key"]].number
    assert page.get("/api/figures/horses").status_code == 422


def test_a_good_set_is_quiet_and_says_against_whom_it_was_held(page: TestClient, woman: int) -> None:
    told = looked_over(page, woman)
    assert told["doubts"] == []
    assert "women" in told["against"] and "not a civilian population" in told["against"]
    expected = {one["key"]: one for one in told["expected"]}
    assert " to " in expected["arm_length"]["range_text"]
    assert {"bust_girth", "waist_girth", "hip_girth"} <= {one["key"] for one in told["twice"]}
    assert "waist_girth" in {one["key"] for one in told["unseen"]}


def test_without_a_population_it_says_that_nothing_was_held_against_it(page: TestClient, body: int) -> None:
    told = looked_over(page, body)
    assert "no population" in told["against"]
    assert told["expected"] == []


def test_a_measure_that_was_read_twice_is_no_longer_asked_for(page: TestClient, woman: int) -> None:
    edit(page, woman, {"do": "set-reading", "key": "waist_girth", "reading": 1, "text": "74.4"})
    told = looked_over(page, woman)
    assert "waist_girth" not in {one["key"] for one in told["twice"]}
    assert "waist_girth" not in {one["key"] for one in told["unseen"]}


def test_inches_typed_as_centimeters_are_named_and_repaired_in_one_step(page: TestClient, woman: int) -> None:
    edit(page, woman, {"do": "set-measure", "key": "inside_leg", "text": "30.7"})  # 78 cm as inches
    told = looked_over(page, woman)
    assert [doubt["at"] for doubt in told["doubts"]] == ["inside_leg"]
    doubt = told["doubts"][0]
    assert doubt["level"] == "stop"
    repair = doubt["repairs"][0]
    assert repair["said"] == "78.0 cm was meant"
    assert repair["values"] == {"inside_leg": pytest.approx(780.0, abs=1.0)}
    kept = page.get(f"/api/bodies/{woman}").json()
    assert next(line for line in kept["lines"] if line["key"] == "inside_leg")["values"][0]["value"] == 307.0
    edit(page, woman, {"do": "repair-measures", "values": repair["values"]})
    assert looked_over(page, woman)["doubts"] == []


def test_a_repair_keeps_the_note_and_is_one_step_back(page: TestClient, woman: int) -> None:
    edit(page, woman, {"do": "note-measure", "key": "hip_girth", "note": "over the slip", "error": ""})
    values = {"hip_girth": 975.0, "waist_girth": 745.0}
    after = edit(page, woman, {"do": "repair-measures", "values": values})
    told = {line["key"]: line["values"] for line in after["lines"]}
    assert [told[key][0]["value"] for key in values] == [975.0, 745.0]
    assert told["hip_girth"][0]["note"] == "over the slip"
    back = page.post(f"/api/bodies/{woman}/undo", json={"expected_version": after["version"]}).json()
    before = {line["key"]: line["values"] for line in back["lines"]}
    assert [before[key][0]["value"] for key in values] == [980.0, 740.0]


def test_a_value_that_was_only_reckoned_says_so_in_its_note(page: TestClient, woman: int) -> None:
    edit(page, woman, {"do": "note-measure", "key": "hip_girth", "note": "over the slip", "error": ""})
    sent = {"do": "repair-measures", "values": {"hip_girth": 975.0}, "is_reckoned": True}
    told = {line["key"]: line["values"] for line in edit(page, woman, sent)["lines"]}
    words = "reckoned from the other measures, before: 98.0 cm; take it again; over the slip"
    assert told["hip_girth"][0]["note"] == words


@pytest.mark.parametrize(
    ("values", "code"),
    [({"nose": 10.0}, "measure-unknown"), ({"hip_girth": 9.0}, "measure-impossible")],
)
def test_a_repair_that_no_body_has_is_refused(
    page: TestClient, woman: int, values: dict[str, float], code: str
) -> None:
    assert edit(page, woman, {"do": "repair-measures", "values": values})["code"] == code


def test_a_set_in_another_unit_is_told_once_over_all_lines(page: TestClient, studio: Studio) -> None:
    large = {"height": 178, "bust_girth": 116, "waist_girth": 104, "hip_girth": 122, "inside_leg": 80}
    inches = {key: round(cm / 2.54, 1) * 10.0 for key, cm in large.items()}
    body = studio.new_body(replace(MeasureSet.from_mm("Client L", inches), population="women")).id
    told = looked_over(page, body)
    over = [doubt for doubt in told["doubts"] if doubt["at"] == ""]
    assert over, "what is wrong with the whole set is not told line by line"
    assert any(len(repair["values"]) > 3 for doubt in over for repair in doubt["repairs"])


def test_what_to_measure_next_for_a_block(page: TestClient, woman: int) -> None:
    told = page.get(f"/api/bodies/{woman}/next?block=skirt").json()
    assert told["lines"][0]["key"] == "hip_depth"
    assert page.get(f"/api/bodies/{woman}/next?block=tent").json()["code"] == "block-unknown"
