"""Estimates and what to measure next over the wire; filling in is an edit like others."""

from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from support.bodies import four_measures


@pytest.fixture
def client(studio: Studio) -> int:
    """A new body of four measures."""
    return studio.new_body(four_measures()).id


def edited(page: TestClient, body: int, **edit: Any) -> Any:
    version = page.get(f"/api/bodies/{body}").json()["version"]
    return page.post(f"/api/bodies/{body}/edits", json={"expected_version": version, "edit": edit})


def estimates(page: TestClient, body: int, unit: str = "cm") -> dict[str, Any]:
    return dict(page.get(f"/api/bodies/{body}/estimates?unit={unit}").json())


def test_estimates_come_in_the_readers_unit_with_their_people(page: TestClient, client: int) -> None:
    told = estimates(page, client)
    line = next(one for one in told["lines"] if one["key"] == "hip_depth")
    assert line["text"].endswith(" cm")
    assert "±" in line["text"]
    assert line["low_text"] < line["high_text"]
    assert "women" in told["people"]
    assert (told["refused"], told["caution"]) == (None, "")
    assert "forward_shoulder" in {one["key"] for one in told["not_estimated"]}
    inches = next(one for one in estimates(page, client, "in")["lines"] if one["key"] == "hip_depth")
    assert inches["text"].endswith('"')
    assert inches["value"] == line["value"]


def test_a_body_without_population_is_told_why(page: TestClient, body: int) -> None:
    told = estimates(page, body)
    assert told["refused"]["code"] == "estimate-no-population"
    assert told["lines"] == []
    assert page.get(f"/api/bodies/{body}/next").json()["refused"]["code"] == "estimate-no-population"


def test_estimates_are_filled_in_and_refreshed_by_edits(page: TestClient, client: int) -> None:
    filled = edited(page, client, do="fill-estimates", keys=["inside_leg"])
    assert filled.status_code == 200
    line = next(one for one in filled.json()["lines"] if one["key"] == "inside_leg")
    assert line["values"][0]["status"] == "estimated"
    assert estimates(page, client)["held"] == ["inside_leg"]
    edited(page, client, do="set-measure", key="outside_leg", text="113")
    (stale,) = estimates(page, client)["stale"]
    assert stale["key"] == "inside_leg"
    assert stale["now"]["value"] > line["values"][0]["value"]
    assert edited(page, client, do="refresh-estimates").status_code == 200
    assert estimates(page, client)["stale"] == []
    again = edited(page, client, do="refresh-estimates", keys=["inside_leg"])
    assert (again.status_code, again.json()["code"]) == (422, "estimate-not-stale")


def test_what_to_measure_next_for_a_style_and_for_a_body(page: TestClient, client: int, style: int) -> None:
    told = page.get(f"/api/bodies/{client}/next?style={style}").json()
    first = told["lines"][0]
    assert (first["key"], first["reason"]) == ("hip_depth", "needed")
    assert first["moves_text"].endswith(" cm")
    assert first["words"].startswith("Take hip depth: ")
    general = page.get(f"/api/bodies/{client}/next").json()
    assert {one["reason"] for one in general["lines"]} == {"knows"}
    assert page.get(f"/api/bodies/{style}/next").status_code == 422


def test_a_style_that_rests_on_estimates_shows_them(page: TestClient, client: int, style: int) -> None:
    edited(page, client, do="fill-estimates", keys=["hip_depth"])
    edited(page, client, do="clear-measure", key="hip_girth")
    edited(page, client, do="fill-estimates", keys=["hip_girth"])
    version = page.get(f"/api/styles/{style}").json()["version"]
    sent = {"expected_version": version, "edit": {"do": "set-body", "body": client}}
    drawn = page.post(f"/api/styles/{style}/edits", json=sent).json()
    notes = [one for one in drawn["findings"]["notes"] if one["code"].startswith("estimates-")]
    # The hip girth that the depth of hip was estimated from is an estimate itself now.
    assert {one["code"]: ", now " in one["numbers"] for one in notes} == {
        "estimates-rested-on-stale": True,
        "estimates-rested-on": False,
    }
    assert all("±" in one["numbers"] and one["severity"] == "look" and one["why"] for one in notes)
    errors = {girth["measure"]: girth["body_error_text"] for girth in drawn["eases"]}
    assert errors["waist_girth"] == ""
    assert errors["hip_girth"].startswith("± ")
