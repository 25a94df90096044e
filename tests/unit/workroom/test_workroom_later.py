"""What follows after a drawing: findings, all checks, cut lines; new styles; notes beside measures.

Judged from outside: shapely measures the cut line (an allowance is how far it lies from the sew line).
"""

import socket
from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient
from shapely.geometry import Point, Polygon
from svgpathtools import parse_path

from notchbook.app.studio import Studio
from notchbook.workroom.serve import workroom_server

LONGER_FRONT = {
    "do": "add-step",
    "operation": "change_length",
    "parameters": {"hems": ["skirt.front/hem"], "amount": "9 mm"},
}


def polygon(text: str) -> Polygon:
    path = parse_path(text)
    return Polygon([(place.real, place.imag) for place in (path.point(i / 1500) for i in range(1500))])


def test_a_look_is_drawn_without_waiting_for_the_checks(page: TestClient, style: int) -> None:
    drawn = page.post(f"/api/styles/{style}/preview", json=LONGER_FRONT).json()
    assert drawn["findings"] is None
    said = page.post(f"/api/styles/{style}/preview/report", json=LONGER_FRONT).json()
    assert not said["papers"]
    assert any(note["severity"] == "stop" for note in said["notes"])
    kept = page.get(f"/api/styles/{style}").json()["findings"]
    assert not any(note["severity"] == "stop" for note in kept["notes"])


def test_a_look_at_a_measure_is_looked_over_too(page: TestClient, style: int) -> None:
    edit = {"do": "set-measure", "key": "hip_girth", "text": "104"}
    said = page.post(f"/api/styles/{style}/body-preview/report", json=edit).json()
    assert said["proven"]["checks"] > 0


def test_the_full_report_looks_at_the_papers_too(page: TestClient, style: int) -> None:
    quick = page.get(f"/api/styles/{style}").json()["findings"]
    full = page.get(f"/api/styles/{style}/report").json()
    assert not quick["papers"]
    assert full["papers"]
    assert full["proven"]["checks"] > quick["proven"]["checks"]


def test_the_cut_line_lies_outside_by_the_allowance(page: TestClient, style: int) -> None:
    lines = {line["piece"]: line for line in page.get(f"/api/styles/{style}/cut").json()["lines"]}
    pieces = {piece["name"]: piece for piece in page.get(f"/api/styles/{style}").json()["pieces"]}
    assert lines.keys() == pieces.keys()
    back = polygon(lines["skirt.back"]["path"])
    assert back.buffer(0.5).contains(polygon(pieces["skirt.back"]["outline"]))
    # The house table of production: 12 mm at a side seam, 51 mm at a straight hem (src/notchbook/finish).
    side = next(edge for edge in pieces["skirt.back"]["edges"] if edge["name"] == "skirt.back/side_seam")
    hem = next(edge for edge in pieces["skirt.back"]["edges"] if edge["name"] == "skirt.back/hem")
    for edge, width in ((side, 12.0), (hem, 51.0)):
        middle = Point(edge["middle"]["x"], edge["middle"]["y"])
        assert back.exterior.distance(middle) == pytest.approx(width, abs=0.5)


def test_a_piece_on_the_fold_is_drawn_as_its_half(page: TestClient, style: int) -> None:
    lines = {line["piece"]: line for line in page.get(f"/api/styles/{style}/cut").json()["lines"]}
    box = polygon(lines["skirt.front"]["path"]).bounds
    assert box[2] == pytest.approx(0.0, abs=0.1), "the fold is the end of the paper"


def test_a_style_that_cannot_be_cut_is_refused_in_words(page: TestClient, style: int) -> None:
    unknown = {"edges": ["skirt.front/side_seam"], "allowance_class": "nonsense"}
    edit = {"do": "add-step", "operation": "set_allowance", "parameters": unknown}
    page.post(f"/api/styles/{style}/edits", json={"expected_version": 1, "edit": edit})
    answer = page.get(f"/api/styles/{style}/cut")
    assert answer.status_code == 422
    assert answer.json()["code"] == "allowance-class-unknown"
    assert answer.json()["message"]


def test_a_new_style_begins_with_a_block(page: TestClient, body: int, tmp_path: Path) -> None:
    asked = {"name": "Pencil skirt", "block": "skirt", "body": body}
    made = page.post("/api/styles", json=asked).json()
    assert made["name"] == "Pencil skirt"
    assert [step["operation"] for step in made["steps"]] == ["skirt"]
    again = Studio.open(tmp_path / "studio.notchbook")
    try:
        assert "Pencil skirt" in {entry.name for entry in again.list_styles()}
    finally:
        again.close()


def test_a_new_style_for_an_unmeasured_body_is_refused_by_the_measures_names(page: TestClient) -> None:
    body = page.post("/api/bodies", json={"name": "Form B"}).json()["id"]
    before = len(page.get("/api/shelf").json()["styles"])
    told = page.post("/api/styles", json={"name": "Pencil skirt", "block": "skirt", "body": body})
    assert told.status_code == 422
    assert "waist girth" in told.json()["message"]
    assert told.json()["facts"]["keys"][0] == "waist_girth"
    assert len(page.get("/api/shelf").json()["styles"]) == before


@pytest.mark.parametrize("block", ["vent", "nothing"])
def test_a_style_begins_with_nothing_else(page: TestClient, body: int, block: str) -> None:
    told = page.post("/api/styles", json={"name": "Odd", "block": block, "body": body})
    assert told.json()["code"] == "block-unknown"


def test_a_step_for_one_side_only(page: TestClient, style: int) -> None:
    steps = {one["operation"]: one["sided"] for one in page.get("/api/steps").json()}
    assert steps["change_length"]
    assert not steps["skirt"]
    assert not steps["waistband"]
    wide = {"edges": ["skirt.back/side_seam"], "allowance_class": "seam", "width": "20 mm"}
    left = {"do": "add-step", "operation": "set_allowance", "side": "left", "parameters": wide}
    made = page.post(f"/api/styles/{style}/edits", json={"expected_version": 1, "edit": left}).json()
    assert {step["operation"]: step["side"] for step in made["steps"]}["set_allowance"] == "left"
    assert "skirt.back@left" in {piece["name"] for piece in made["pieces"]}


def noted(page: TestClient, body: int, version: int, **words: Any) -> Any:
    edit = {"do": "note-measure", "key": "hip_girth", "note": "", "error": "", **words}
    return page.post(f"/api/bodies/{body}/edits", json={"expected_version": version, "edit": edit})


def value(answer: dict[str, Any], key: str) -> dict[str, Any]:
    line = next(line for line in answer["lines"] if line["key"] == key)
    return dict(line["values"][0])


def test_a_note_and_an_estimate_never_touch_the_value(page: TestClient, studio: Studio, body: int) -> None:
    exact = studio.open_body(body).measures.value("hip_girth")
    answer = noted(page, body, 1, note="over a thin petticoat", error="1.5").json()
    assert value(answer, "hip_girth")["note"] == "over a thin petticoat"
    assert value(answer, "hip_girth")["status"] == "estimated"
    assert studio.open_body(body).measures.values["hip_girth"].error == 15.0
    assert studio.open_body(body).measures.value("hip_girth") == exact
    typed = {"do": "set-measure", "key": "hip_girth", "text": "98"}
    sent = {"expected_version": 2, "edit": typed}
    again = page.post(f"/api/bodies/{body}/edits", json=sent).json()
    assert value(again, "hip_girth")["note"] == "over a thin petticoat", "a new value keeps its note"
    assert value(again, "hip_girth")["status"] == "estimated"
    plain = noted(page, body, 3).json()
    assert value(plain, "hip_girth")["status"] == "measured"
    assert value(plain, "hip_girth")["note"] == ""


def test_a_note_wants_a_measure_and_a_length(page: TestClient, body: int) -> None:
    assert noted(page, body, 1, key="back_waist_to_floor").json()["code"] == "measure-missing"
    assert noted(page, body, 1, error="a bit").status_code == 422
    assert page.get(f"/api/bodies/{body}").json()["version"] == 1


def test_answers_are_sent_at_once(tmp_path: Path) -> None:
    """asyncio switches TCP_NODELAY on for a socket that names its protocol, and for no other."""
    with workroom_server(tmp_path / "b.notchbook") as (_, _address, listening):
        assert listening.proto == socket.IPPROTO_TCP


def test_two_workrooms_keep_their_keys_apart(page: TestClient, studio: Studio) -> None:
    """Browsers keep cookies by host, whatever the port (RFC 6265, section 8.5)."""
    page.get("http://127.0.0.1:9000/?token=key")
    assert {"notchbook-8000", "notchbook-9000"} <= set(page.cookies)
