"""Beginning a style from the rack in the workroom: what it asks of a body, its picture, the style made."""

from fastapi.testclient import TestClient

from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.studio import Studio
from notchbook.body import set_from_data


def test_every_style_of_the_rack_says_what_it_asks_of_the_body(page: TestClient, studio: Studio) -> None:
    body = studio.new_body(set_from_data(BODY_OF_PICTURES).without("hip_girth")).id
    told = {one["number"]: one for one in page.get(f"/api/bodies/{body}/rack").json()}
    assert len(told) == 12
    standings = {one["key"]: one["standing"] for one in told["S-205"]["needed"]}
    assert standings["waist_girth"] == "taken"
    assert standings["hip_girth"] == "missing"


def test_the_picture_of_a_style_is_an_image(page: TestClient) -> None:
    answer = page.get("/api/rack/S-203/picture")
    assert answer.headers["content-type"].startswith("image/svg+xml")
    assert answer.text.startswith("<?xml")


def test_an_unknown_style_is_refused_in_words(page: TestClient) -> None:
    assert page.get("/api/rack/S-999/picture").json()["code"] == "rack-style-unknown"


def test_a_style_of_the_rack_goes_into_the_book_under_the_next_number(
    page: TestClient, studio: Studio
) -> None:
    body = studio.new_body(set_from_data(BODY_OF_PICTURES)).id
    sent = {"name": " ", "number": "S-203", "body": body}
    made = page.post("/api/styles/from-rack", json=sent).json()
    kept = studio.list_styles()[-1]
    assert (made["id"], kept.name) == (kept.id, "Six-gore skirt")
    assert kept.number == "S-102"
