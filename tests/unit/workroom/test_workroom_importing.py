"""Importing over the wire: nothing is guessed, nothing stored before it is asked for, all or nothing."""

import time
from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio

CLIENTS = "Name\tBust (cm)\tWaist (cm)\tHip\nVera S.\t94.5\t76\t102\nTilda F.\t88\tabout 70\t96\n"
"""Invented clients; the unit of the hip is not said, and one cell is no number."""

SIZES = "Size\tS\tM\tL\nBust (cm)\t84\t92\t100\nWaist (cm)\t68\t76\t84\n"


def previewed(page: TestClient, text: str, unit: str = "cm", **said: Any) -> dict[str, Any]:
    return dict(page.post(f"/api/imports/preview?unit={unit}", json={"text": text, **said}).json())


def answer_to(number: int, target: str = "", unit: str = "") -> dict[str, Any]:
    return {"number": number, "target": target, "unit": unit}


HIP = answer_to(4, "hip_girth", "cm")


def ended(page: TestClient, job: dict[str, Any]) -> dict[str, Any]:
    """The job when it runs no more."""
    until = time.monotonic() + 20
    while job["state"] == "running" and time.monotonic() < until:
        time.sleep(0.02)
        job = page.get(f"/api/imports/{job['id']}").json()
    return job


def names(studio: Studio) -> list[str]:
    return [entry.name for entry in studio.list_bodies()]


def test_what_is_not_sure_is_asked_at_its_column(page: TestClient, studio: Studio) -> None:
    before = names(studio)
    told = previewed(page, CLIENTS)
    hip = next(line for line in told["lines"] if line["number"] == 4)
    words = hip["question"]["words"]
    assert words.startswith("“Hip” may be hip girth or top hip girth: which, or leave the column out?")
    assert told["ready"] is False
    assert told["open_questions"] == 1
    only_meaning = previewed(page, CLIENTS, lines=[answer_to(4, "hip_girth")])
    unit = next(line for line in only_meaning["lines"] if line["number"] == 4)
    assert unit["question"]["about"] == "unit"
    assert previewed(page, CLIENTS, lines=[HIP])["ready"] is True
    assert names(studio) == before, "a preview stores nothing"


def test_cells_come_as_stored_and_refused_in_words(page: TestClient) -> None:
    told = previewed(page, CLIENTS, "in", lines=[HIP])
    vera, tilda = told["rows"]
    assert vera["good"] is True
    assert [cell["stored_text"] for cell in vera["cells"]] == ["", '37 3/16"', '29 15/16"', '40 3/16"']
    refused = tilda["cells"][2]
    assert (tilda["good"], refused["text"], refused["stored_text"]) == (False, "about 70", "")
    assert refused["refused"].startswith("“about 70” is not a number.")
    assert (told["good"], told["refused"], told["count"]) == (1, 1, 2)


def test_every_target_of_the_proposal_can_be_chosen(page: TestClient) -> None:
    told = previewed(page, CLIENTS)
    known = {target["name"] for target in told["targets"]}
    assert {line["target"] for line in told["lines"]} - {""} <= known
    assert {"name", "note", "bust_girth"} <= known
    left = previewed(page, CLIENTS, lines=[{**HIP, "left_out": True}])
    assert next(line for line in left["lines"] if line["number"] == 4)["target_label"] == "left out"
    assert left["ready"] is True


def test_two_columns_of_one_meaning_are_asked_about_by_its_name(page: TestClient) -> None:
    told = previewed(page, "Name,Bust (cm),Bust girth (cm)\nVera S.,94,95\n")
    (question,) = (line["question"] for line in told["lines"] if line["question"])
    assert question["about"] == "twice"
    assert "all say bust girth: keep one column" in question["words"]
    left = previewed(
        page,
        "Name,Bust (cm),Bust girth (cm)\nVera S.,94,95\n",
        lines=[{"number": 2, "left_out": True}],
    )
    assert (left["ready"], left["rows"][0]["cells"][2]["stored_text"]) == (True, "95.0 cm")


def test_a_body_that_the_book_has_already_is_asked_about_once_and_kept_as_she_says(
    page: TestClient, studio: Studio
) -> None:
    table = "Name,Bust (cm)\nRosa L.,98\nVera S.,94\n"
    told = previewed(page, table)
    (question,) = told["questions"]
    assert (question["about"], question["rows"], told["ready"]) == ("again", [2], False)
    left = previewed(page, table, rows=[{"number": 2, "choice": "skip"}])
    assert (left["ready"], left["good"], left["left_out"]) == (True, 1, 1)
    asked = {"text": table, "rows": [{"number": 2, "choice": "add"}]}
    job = ended(page, page.post("/api/imports", json=asked).json())
    assert (job["state"], job["done"]) == ("done", 2)
    assert names(studio).count("Rosa L.") == 2


def test_the_unit_of_bare_numbers_is_said_once_for_all(page: TestClient) -> None:
    table = "Name,Bust,Waist\nVera S.,37,30\n"
    assert previewed(page, table)["open_questions"] > 0
    told = previewed(page, table, unit="in", lines=[])
    assert {line["unit"] for line in told["lines"] if line["has_unit"]} <= {"in", ""}
    asked = page.post("/api/imports/preview", json={"text": table, "unit": "in"}).json()
    assert asked["open_questions"] == 0
    assert asked["rows"][0]["cells"][1]["stored_text"] == "94.0 cm"  # 37 in = 939.8 mm


def test_it_is_stored_as_forms_and_the_refused_row_is_left(page: TestClient, studio: Studio) -> None:
    asked = {"text": CLIENTS, "source": "spring", "lines": [HIP], "kind": "form", "only_good": True}
    job = ended(page, page.post("/api/imports", json=asked).json())
    assert (job["state"], job["done"], job["left"]) == ("done", 1, 1)
    kept = studio.open_body(job["first_body"]).measures
    assert (kept.name, kept.kind, kept.values["hip_girth"].value) == ("Vera S.", "form", 1020.0)


def test_with_a_refused_row_or_an_open_question_nothing_is_stored(page: TestClient, studio: Studio) -> None:
    before = names(studio)
    for lines, code in (([HIP], "import-rows-refused"), ([], "import-not-ready")):
        job = ended(page, page.post("/api/imports", json={"text": CLIENTS, "lines": lines}).json())
        assert (job["state"], job["refused"]["code"]) == ("refused", code)
    assert names(studio) == before


def test_a_stopped_import_leaves_the_book_as_it_was(page: TestClient, studio: Studio) -> None:
    before = names(studio)
    rows = "".join(f"Client {number},{80 + number % 20},{60 + number % 20}\n" for number in range(3000))
    job = page.post("/api/imports", json={"text": f"Name,Bust (cm),Waist (cm)\n{rows}"}).json()
    page.post(f"/api/imports/{job['id']}/stop", json={})
    job = ended(page, job)
    assert job["state"] == "stopped"
    assert names(studio) == before


def test_sizes_side_by_side_become_one_chart(page: TestClient) -> None:
    told = previewed(page, SIZES)
    assert (told["kind"], told["place"], told["ready"]) == ("chart", "row", True)
    chart = page.post("/api/imports/chart", json={"text": SIZES, "source": "old", "name": "Old sizes"}).json()
    assert (chart["name"], chart["labels"], chart["status"]) == ("Old sizes", ["S", "M", "L"], "imported")
    assert chart["words"].startswith("imported from old")
    assert [cell["text"] for cell in chart["rows"][0]["cells"]] == ["84.0 cm", "92.0 cm", "100.0 cm"]


@pytest.mark.parametrize(
    ("text", "said", "code"),
    [
        ("", {}, "import-empty"),
        ("nothing here", {}, "import-nothing-found"),
        (CLIENTS, {"lines": [answer_to(40, "hip_girth")]}, "import-line-unknown"),
        (CLIENTS, {"lines": [answer_to(4, "hip_grith")]}, "measure-unknown"),
        (CLIENTS, {"lines": [answer_to(4, "hip_girth", "ell")]}, "length-unit-unknown"),
    ],
)
def test_what_cannot_be_read_is_refused_in_words(
    page: TestClient, text: str, said: dict[str, Any], code: str
) -> None:
    answer = page.post("/api/imports/preview", json={"text": text, **said})
    assert (answer.status_code, answer.json()["code"]) == (422, code)


def test_an_unknown_job_is_told(page: TestClient) -> None:
    answer = page.get("/api/imports/7")
    assert (answer.status_code, answer.json()["code"]) == (422, "import-job-unknown")
