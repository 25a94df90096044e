"""Readings and what is said of a set as a whole, over the wire; the shelf tells its entries apart."""

from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.body import MeasureSet
from notchbook.body.charts.chart import SizeChart


def edited(page: TestClient, body: int, unit: str = "cm", **edit: Any) -> dict[str, Any]:
    """The answer to an edit of the body as it is now."""
    version = page.get(f"/api/bodies/{body}").json()["version"]
    sent = {"expected_version": version, "edit": edit}
    answer = page.post(f"/api/bodies/{body}/edits?unit={unit}", json=sent)
    return {"status": answer.status_code, **answer.json()}


def value(answer: dict[str, Any], key: str) -> dict[str, Any]:
    """The plain value of a measure."""
    found = next(line for line in answer["lines"] if line["key"] == key)
    return dict(found["values"][0])


def test_a_second_reading_shows_both_and_their_mean(page: TestClient, body: int) -> None:
    edited(page, body, do="set-measure", key="hip_depth", text="20")
    told = edited(page, body, do="set-reading", key="hip_depth", reading=1, text="20,6")
    assert value(told, "hip_depth")["readings"] == ["20.0 cm", "20.6 cm"]
    assert value(told, "hip_depth")["value"] == 203.0
    told = edited(page, body, do="add-reading", key="hip_depth", text="23")
    assert value(told, "hip_depth")["value"] == 206.0
    told = edited(page, body, do="clear-reading", key="hip_depth", reading=2)
    assert value(told, "hip_depth")["readings"] == ["20.0 cm", "20.6 cm"]
    told = edited(page, body, do="set-measure", key="hip_depth", text="21")
    assert value(told, "hip_depth")["readings"] == []


def test_a_reading_that_cannot_be_read_is_refused_in_words(page: TestClient, body: int) -> None:
    told = edited(page, body, do="set-reading", key="hip_depth", reading=1, text="2.05")
    assert (told["status"], told["code"]) == (422, "measure-impossible")
    assert [offer["text"] for offer in told["offers"]] == ["20.5 cm"]
    assert (
        edited(page, body, do="set-reading", key="hip_depth", reading=7, text="20")["code"]
        == "reading-missing"
    )


def test_circumstances_are_said_one_by_one_in_the_readers_unit(page: TestClient, body: int) -> None:
    edited(page, body, do="set-circumstances", taken_on="2026-03-02", taken_by="Ines")
    told = edited(page, body, "in", do="set-circumstances", heel="2", undergarment="soft bra")
    assert told["circumstances"] == {
        "taken_on": "2026-03-02",
        "taken_by": "Ines",
        "undergarment": "soft bra",
        "heel_text": '2"',
    }
    assert page.get(f"/api/bodies/{body}?unit=cm").json()["circumstances"]["heel_text"] == "5.1 cm"
    assert edited(page, body, do="set-circumstances", taken_on="2.3.")["code"] == "date-unreadable"


def test_the_waist_level_with_its_drop(page: TestClient, body: int) -> None:
    told = edited(page, body, do="set-waist-level", level="lower", drop="3")
    assert (told["waist_level"], told["waist_drop_text"]) == ("lower", "3.0 cm")
    told = edited(page, body, do="set-waist-level", level="navel")
    assert (told["waist_level"], told["waist_drop_text"]) == ("navel", "")
    assert edited(page, body, do="set-waist-level", level="lower")["code"] == "waist-level"
    told = edited(page, body, do="set-waist-level", level="natural", drop="3")
    assert (told["waist_level"], told["waist_drop_text"]) == ("natural", "")


def test_what_is_said_of_the_set(page: TestClient, body: int) -> None:
    edited(page, body, do="set-population", population="women")
    edited(page, body, do="set-rise-method", method="sitting")
    edited(page, body, do="set-kind", kind="form", label_size="40")
    told = edited(page, body, do="note-set", note="padded")
    said = {key: told[key] for key in ("population", "rise_method", "kind", "label_size", "note")}
    assert said == {
        "population": "women",
        "rise_method": "sitting",
        "kind": "form",
        "label_size": "40",
        "note": "padded",
    }
    told = edited(page, body, do="set-population", population=None)
    assert told["population"] is None
    assert edited(page, body, do="set-population", population="people")["status"] == 422


@pytest.mark.parametrize("word", ["taken", "size"])
def test_a_word_that_no_edit_has_is_refused(page: TestClient, body: int, word: str) -> None:
    assert edited(page, body, do="set-circumstances", **{word: "x"})["status"] == 422


def test_the_shelf_tells_bodies_forms_and_charts_apart(page: TestClient, studio: Studio) -> None:
    studio.new_body(MeasureSet("Client Z"))
    studio.new_body(MeasureSet("Form Z", kind="form"))
    studio.new_chart(SizeChart("House chart"))
    shelf = page.get("/api/shelf").json()
    kinds = {entry["name"]: entry["kind"] for entry in (*shelf["bodies"], *shelf["charts"], *shelf["styles"])}
    assert (kinds["Client Z"], kinds["Form Z"], kinds["House chart"]) == ("body", "form", "chart")
    assert kinds["Straight skirt"] == "style"
    assert [entry["name"] for entry in shelf["charts"]] == ["House chart"]
