"""Bodies over the wire: measures as typed, remarks, offers that are never applied."""

from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio


def line(page: TestClient, body: int, key: str, unit: str = "cm") -> dict[str, Any]:
    lines = page.get(f"/api/bodies/{body}?unit={unit}").json()["lines"]
    return dict(next(one for one in lines if one["key"] == key))


def put(page: TestClient, body: int, version: int, text: str, **words: Any) -> Any:
    edit = {"do": "set-measure", "key": "hip_depth", "text": text, **words}
    unit = edit.pop("unit", "cm")
    sent = {"expected_version": version, "edit": edit}
    return page.post(f"/api/bodies/{body}/edits?unit={unit}", json=sent)


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [("21", "cm", 210.0), ("21,4", "cm", 214.0), ("8 1/4", "in", 209.55), ("213 mm", "in", 213.0)],
)
def test_a_measure_is_read_as_typed(page: TestClient, body: int, text: str, unit: str, mm: float) -> None:
    assert put(page, body, 1, text, unit=unit).status_code == 200
    assert line(page, body, "hip_depth")["values"][0]["value"] == pytest.approx(mm)


def test_a_measure_is_on_disk_and_the_style_is_drawn_with_it(
    page: TestClient, body: int, style: int, tmp_path: Path
) -> None:
    before = page.get(f"/api/styles/{style}").json()
    put(page, body, 1, "23")
    after = page.get(f"/api/styles/{style}").json()
    assert after["key"] != before["key"]
    assert after["body"]["version"] == 2
    again = Studio.open(tmp_path / "studio.notchbook")
    try:
        assert again.open_body(body).measures.value("hip_depth") == 230.0
    finally:
        again.close()


def test_a_preview_of_a_measure_is_not_stored(page: TestClient, body: int, style: int) -> None:
    edit = {"do": "set-measure", "key": "hip_girth", "text": "110"}
    told = page.post(f"/api/styles/{style}/body-preview", json=edit).json()
    hip = next(girth for girth in told["eases"] if girth["measure"] == "hip_girth")
    assert (hip["body"], hip["pattern"]) == (1100.0, pytest.approx(1150.0))
    assert line(page, body, "hip_girth")["values"][0]["value"] == 970.0


def test_an_impossible_measure_is_refused_with_an_offer(page: TestClient, body: int) -> None:
    answer = put(page, body, 1, "2.05")
    assert answer.status_code == 422
    told = answer.json()
    assert told["code"] == "measure-impossible"
    assert [offer["text"] for offer in told["offers"]] == ["20.5 cm"]
    assert line(page, body, "hip_depth")["values"][0]["value"] == 205.0, "never applied by itself"


def test_an_unusual_measure_is_stored_and_asked_about(page: TestClient, body: int) -> None:
    assert put(page, body, 1, "9").status_code == 200
    found = line(page, body, "hip_depth")
    assert found["values"][0]["value"] == 90.0
    assert [remark["level"] for remark in found["remarks"]] == ["check"]


def test_sides_stand_apart_and_fall_back(page: TestClient, body: int) -> None:
    put(page, body, 1, "19.5", side="left")
    values = {value["side"]: value["value"] for value in line(page, body, "hip_depth")["values"]}
    assert values == {"both": 205.0, "left": 195.0}
    sent = {"expected_version": 2, "edit": {"do": "clear-measure", "key": "hip_depth", "side": "left"}}
    assert page.post(f"/api/bodies/{body}/edits", json=sent).status_code == 200
    assert [value["side"] for value in line(page, body, "hip_depth")["values"]] == ["both"]


def test_a_new_body_is_named_and_renamed(page: TestClient) -> None:
    made = page.post("/api/bodies", json={"name": "Form B"}).json()
    assert not [one for one in made["lines"] if one["values"]]
    edit = {"do": "rename-body", "name": "Form C"}
    sent = {"expected_version": made["version"], "edit": edit}
    assert page.post(f"/api/bodies/{made['id']}/edits", json=sent).json()["name"] == "Form C"
    assert "Form C" in [entry["name"] for entry in page.get("/api/shelf").json()["bodies"]]
    assert page.post("/api/bodies", json={"name": "  "}).json()["code"] == "measures-name"


def test_undo_of_a_measure(page: TestClient, body: int) -> None:
    put(page, body, 1, "23")
    page.post(f"/api/bodies/{body}/undo", json={"expected_version": 2})
    assert line(page, body, "hip_depth")["values"][0]["value"] == 205.0


def test_a_second_writer_is_told(page: TestClient, body: int) -> None:
    put(page, body, 1, "23")
    assert put(page, body, 1, "24").status_code == 409


def test_a_refusal_at_its_field_does_not_name_the_field_as_files_do(page: TestClient, body: int) -> None:
    assert put(page, body, 1, "2.05").json()["message"].startswith("Hip depth of")
