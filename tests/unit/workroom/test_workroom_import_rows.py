"""Rows that the book has already, and rows in another unit, over the wire. All lists are invented."""

import time
from typing import Any

from fastapi.testclient import TestClient

from notchbook.app.studio import Studio

LIST = "Name,Bust (cm),Waist (cm)\nVera S.,94,76\nTilda F.,88,70\n"


def previewed(page: TestClient, text: str, **said: Any) -> dict[str, Any]:
    return dict(page.post("/api/imports/preview?unit=cm", json={"text": text, **said}).json())


def stored(page: TestClient, text: str, **said: Any) -> dict[str, Any]:
    job = page.post("/api/imports", json={"text": text, **said}).json()
    until = time.monotonic() + 20
    while job["state"] == "running" and time.monotonic() < until:
        time.sleep(0.02)
        job = page.get(f"/api/imports/{job['id']}").json()
    return dict(job)


def test_the_same_list_again_is_asked_about_row_by_row(page: TestClient, studio: Studio) -> None:
    assert stored(page, LIST)["state"] == "done"
    before = [entry.name for entry in studio.list_bodies()]
    told = previewed(page, LIST)
    [question] = told["questions"]
    assert (question["about"], question["rows"], told["ready"]) == ("again", [2, 3], False)
    [vera, _tilda] = told["rows"]
    assert vera["in_book"].startswith("M-") and vera["choice"] is None
    assert stored(page, LIST)["refused"]["code"] == "import-not-ready"
    assert [entry.name for entry in studio.list_bodies()] == before
    rows = [{"number": 2, "choice": "skip"}, {"number": 3, "choice": "add"}]
    answered = previewed(page, LIST, rows=rows)
    assert (answered["ready"], answered["good"], answered["left_out"]) == (True, 1, 1)
    job = stored(page, LIST, rows=rows)
    assert (job["state"], job["left"], job["left_out"]) == ("done", 0, 1)
    assert [entry.name for entry in studio.list_bodies()] == [*before, "Tilda F."]
    assert stored(page, LIST, again="skip")["refused"]["code"] == "import-all-left-out"


def test_a_row_in_another_unit_is_one_question(page: TestClient) -> None:
    text = "Name,Bust (in),Waist (in)\nVera S.,37,30\nTilda F.,88,70\n"
    told = previewed(page, text)
    [question] = told["questions"]
    assert (question["about"], question["options"], question["rows"]) == ("row_unit", ["cm", "in"], [3])
    tilda = told["rows"][1]
    assert (tilda["state"], tilda["looks_like"], tilda["refusals"]) == ("asked", "cm", [])
    answered = previewed(page, text, rows=[{"number": 3, "unit": "cm"}])
    assert answered["ready"] and answered["rows"][1]["cells"][1]["stored_text"] == "88.0 cm"
    assert page.post("/api/imports/preview", json={"text": text, "rows": [{"number": 9}]}).status_code == 422
