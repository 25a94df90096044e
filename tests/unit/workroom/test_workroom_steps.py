"""The pattern steps as the page reads them: sentences, stops, candidates, choices."""

import re
from typing import Any

import pytest
from fastapi.testclient import TestClient


def edit(page: TestClient, style: int, version: int, **words: Any) -> dict[str, Any]:
    sent = {"expected_version": version, "edit": words}
    answer = page.post(f"/api/styles/{style}/edits", json=sent)
    assert answer.status_code == 200, answer.text
    return dict(answer.json())


def test_a_step_reads_like_an_order(page: TestClient, style: int) -> None:
    first, vent, *_ = page.get(f"/api/styles/{style}").json()["steps"]
    assert first["sentence"] == "waist ease 1.5 cm, hip ease 5 cm, length 62 cm at center back"
    assert vent["sentence"] == "18 cm high, 4 cm wide at back, center back"


def test_no_sentence_shows_a_name_or_a_brace(page: TestClient, style: int) -> None:
    for step in page.get(f"/api/styles/{style}?unit=in").json()["steps"]:
        assert not re.search(r"[{}_/]{1}(?![0-9])", step["sentence"]), step["sentence"]


def test_a_lost_edge_stops_the_step_and_the_later_ones_wait(page: TestClient, style: int) -> None:
    told = edit(page, style, 1, do="remove-step", step="vent-1")
    standing = {step["id"]: step["standing"] for step in told["steps"]}
    assert standing == {"skirt-1": "done", "zip_opening-1": "stopped", "waistband-1": "waiting"}
    stop = next(step["stop"] for step in told["steps"] if step["standing"] == "stopped")
    assert stop["kind"] == "gone"
    assert stop["name"]["name"] == "skirt.back/center_back/seam"
    assert told["pieces"], "the last good state stays"


def test_binding_anew_goes_on(page: TestClient, style: int) -> None:
    edit(page, style, 1, do="remove-step", step="vent-1")
    old, new = "skirt.back/center_back/seam", "skirt.back/center_back"
    told = edit(page, style, 2, do="rebind", step="zip_opening-1", old=old, new=new)
    assert {step["standing"] for step in told["steps"]} == {"done"}


def test_a_step_can_be_added_moved_and_taken_out(page: TestClient, style: int) -> None:
    parameters = {"hems": ["skirt.front/hem", "skirt.back/hem"], "amount": "4"}
    told = edit(page, style, 1, do="add-step", operation="change_length", parameters=parameters)
    added = next(step for step in told["steps"] if step["id"] == "change_length-1")
    assert added["sentence"] == "4 cm at front, hem and back, hem"
    told = edit(page, style, 2, do="move-step", step="change_length-1", before="vent-1")
    assert [step["id"] for step in told["steps"]][:2] == ["skirt-1", "change_length-1"]
    told = edit(page, style, 3, do="remove-step", step="change_length-1")
    assert "change_length-1" not in [step["id"] for step in told["steps"]]


def test_every_step_that_is_offered_has_a_form_that_the_page_knows(page: TestClient) -> None:
    known = {
        "amount",
        "edge",
        "point",
        "piece",
        "intake",
        "inner_dart",
        "pivot",
        "seam",
        "notch",
        "word",
        "stretch",
        "recovery",
        "level",
        "allowance_class",
        "material",
    }
    offers = page.get("/api/steps").json()
    assert {"skirt", "vent", "waistband"} <= {offer["operation"] for offer in offers}
    for offer in offers:
        assert kinds(offer["form"]) <= known, offer["operation"]
        assert offer["title"]


def kinds(part: Any) -> set[str]:
    if isinstance(part, dict):
        own = {part["kind"]} if isinstance(part.get("kind"), str) and part.get("type") == "string" else set()
        return own.union(*(kinds(value) for value in part.values()))
    return set().union(*(kinds(value) for value in part)) if isinstance(part, list) else set()


def test_defaults_are_in_the_readers_unit(page: TestClient) -> None:
    def default(unit: str) -> str:
        offers = page.get(f"/api/steps?unit={unit}").json()
        vent = next(offer for offer in offers if offer["operation"] == "vent")
        return str(vent["defaults"]["width"])

    assert default("cm") == "4 cm"
    assert default("in") == '1 9/16"'


def test_the_measures_that_the_style_needs_come_first(page: TestClient, style: int) -> None:
    told = page.get(f"/api/styles/{style}").json()
    assert told["measures_needed"] == ["waist_girth", "hip_girth", "hip_depth"]
    assert told["measures_read"][:3] == told["measures_needed"]
    assert "front_hip_arc" in told["measures_read"]


@pytest.mark.parametrize("edge", ["skirt.back/waist", "skirt.front/hem"])
def test_edges_and_groups_are_offered_with_their_ends(page: TestClient, style: int, edge: str) -> None:
    told = page.get(f"/api/styles/{style}").json()
    choice = next(one for one in told["choices"][""]["edges"] if one["name"] == edge)
    names = {point["name"] for piece in told["pieces"] for point in piece["points"]}
    assert {end["name"] for end in choice["ends"]} <= names


def edges_for(told: dict[str, Any], step: str) -> set[str]:
    return {edge["name"] for edge in told["choices"][step]["edges"]}


def test_a_step_is_offered_the_names_that_it_finds(page: TestClient, style: int) -> None:
    told = page.get(f"/api/styles/{style}").json()
    assert edges_for(told, "skirt-1") == set()
    assert "skirt.back/center_back" in edges_for(told, "vent-1")
    assert "skirt.back/center_back/seam" not in edges_for(told, "vent-1")
    assert "skirt.back/center_back/seam" in edges_for(told, "zip_opening-1")
    assert "waistband.band/upper" in edges_for(told, "")


def test_where_the_sides_differ_a_step_still_speaks_of_both(page: TestClient, style: int, body: int) -> None:
    measure = {"do": "set-measure", "key": "hip_depth", "text": "19.5", "side": "left"}
    page.post(f"/api/bodies/{body}/edits", json={"expected_version": 1, "edit": measure})
    told = page.get(f"/api/styles/{style}").json()
    assert any(piece["name"].endswith("@left") for piece in told["pieces"])
    for step in ("vent-1", ""):
        assert not [name for name in edges_for(told, step) if "@" in name]
        assert "skirt.back/center_back" in edges_for(told, step)


def test_a_look_offers_nothing(page: TestClient, style: int) -> None:
    step = {"do": "change-step", "step": "skirt-1", "changes": {"length": "60"}}
    assert page.post(f"/api/styles/{style}/preview", json=step).json()["choices"] == {}
