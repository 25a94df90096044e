"""Personal data over the wire: told first, then put under a code, handed out, erased."""

import io
import zipfile
from dataclasses import replace

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.app.style_edits import Rename, SetBody


@pytest.fixture
def client(studio: Studio, style: int) -> int:
    """The client of the demonstration, with the style of the demonstration in her name."""
    [marta] = [entry.id for entry in studio.list_bodies() if entry.name == "Marta V."]
    studio.edit_style(style, 1, SetBody(marta))
    studio.edit_style(style, 2, Rename("Skirt for Marta V."))
    return marta


def test_what_holds_her_data_is_told(page: TestClient, client: int, style: int) -> None:
    told = page.get(f"/api/bodies/{client}/personal-data").json()
    assert (told["name"], told["free_code"]) == ("Marta V.", told["number"].replace("M-", "K-"))
    assert [one["id"] for one in told["styles"]] == [style]
    assert "Skirt for Marta V." in {one["text"] for one in told["mentions"]}
    assert told["not_reached"]
    assert page.get(f"/api/bodies/{style}/personal-data").json()["code"] == "entry-not-body"


def test_a_code_in_the_stead_of_her_name(page: TestClient, client: int) -> None:
    asked = {"expected_version": 1, "code": "K-17", "in_other_texts": True}
    told = page.post(f"/api/bodies/{client}/code", json=asked).json()
    changed = told.pop("changed")
    assert told == {"code": "K-17", "mentions": [], "copies": [], "clean": True}
    assert ("Skirt for Marta V.", "Skirt for K-17", True) in {
        (one["text"], one["after"], one["changes"]) for one in changed
    }
    shelf = page.get("/api/shelf").json()
    assert "K-17" in [entry["name"] for entry in shelf["bodies"]]
    assert [entry["name"] for entry in shelf["styles"]] == ["Skirt for K-17"]
    late = {**asked, "code": "K-18"}
    assert page.post(f"/api/bodies/{client}/code", json=late).status_code == 409


def test_an_archive_is_handed_out_without_her_name_on_it(page: TestClient, client: int) -> None:
    answer = page.get(f"/api/bodies/{client}/export")
    assert answer.headers["content-type"] == "application/zip"
    assert "Marta" not in answer.headers["content-disposition"]
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        assert b"Marta V." in archive.read("README.txt")


def test_an_erasure(page: TestClient, studio: Studio, client: int, style: int) -> None:
    undecided = page.post(
        f"/api/bodies/{client}/erase", json={"expected_version": 1, "confirm": " Marta V. "}
    )
    assert (undecided.status_code, undecided.json()["code"]) == (422, "erasure-styles-undecided")
    form, number = studio.list_bodies()[0].id, studio.open_body(client).number
    asked = {"expected_version": 1, "confirm": number, "other_body": form, "in_other_texts": True}
    told = page.post(f"/api/bodies/{client}/erase", json=asked).json()
    assert (told["whole"], len(told["erased"])) == (True, 1)
    assert page.get(f"/api/bodies/{client}").status_code == 404
    assert page.get(f"/api/styles/{style}").json()["name"] == "Skirt for (erased)"


@pytest.mark.parametrize("typed", ["", "marta v.", "M-1", "M-101"])
def test_nothing_is_erased_unless_she_is_named(
    page: TestClient, studio: Studio, client: int, typed: str
) -> None:
    asked = {"expected_version": 1, "also_styles": True, "confirm": typed}
    answer = page.post(f"/api/bodies/{client}/erase", json=asked)
    assert (answer.status_code, answer.json()["code"]) == (422, "erasure-not-confirmed")
    unsaid = page.post(f"/api/bodies/{client}/erase", json={"expected_version": 1, "also_styles": True})
    assert unsaid.status_code == 422
    assert studio.open_body(client).measures.name == "Marta V."


def test_a_second_writer_is_told(page: TestClient, studio: Studio, client: int) -> None:
    body = studio.open_body(client)
    studio.new_body(replace(body.measures, name="Another"))
    asked = {"expected_version": 7, "confirm": "Marta V.", "also_styles": True}
    assert page.post(f"/api/bodies/{client}/erase", json=asked).status_code == 409
    assert studio.open_body(client).measures.name == "Marta V."
