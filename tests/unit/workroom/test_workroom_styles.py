"""Styles over the wire: edits are on disk, previews are not, conflicts and refusals are told in words."""

from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from support.lowered_back import LOWERED


def read(page: TestClient, style: int, unit: str = "cm") -> dict[str, Any]:
    answer = page.get(f"/api/styles/{style}?unit={unit}")
    assert answer.status_code == 200
    return dict(answer.json())


def edit(page: TestClient, style: int, version: int, unit: str = "cm", **words: Any) -> Any:
    sent = {"expected_version": version, "edit": words}
    return page.post(f"/api/styles/{style}/edits?unit={unit}", json=sent)


def longer(length: str) -> dict[str, Any]:
    return {"do": "change-step", "step": "skirt-1", "changes": {"length": length}}


def edge_length(style: dict[str, Any], name: str) -> float:
    edges = (edge for piece in style["pieces"] for edge in piece["edges"])
    return float(next(edge["length"] for edge in edges if edge["name"] == name))


def test_an_edit_is_on_disk_when_the_answer_comes(page: TestClient, style: int, tmp_path: Path) -> None:
    answer = edit(page, style, 1, **longer("55"))
    assert answer.status_code == 200
    assert edge_length(answer.json(), "skirt.front/center_front") == pytest.approx(550.0 + LOWERED)
    again = Studio.open(tmp_path / "studio.notchbook")
    try:
        assert again.recipe_of(style).step("skirt-1").parameters["length"] == "55 cm"
    finally:
        again.close()


def test_a_preview_is_not_stored(page: TestClient, style: int) -> None:
    answer = page.post(f"/api/styles/{style}/preview", json=longer("48"))
    assert edge_length(answer.json(), "skirt.front/center_front") == pytest.approx(480.0 + LOWERED)
    kept = read(page, style)
    assert edge_length(kept, "skirt.front/center_front") == pytest.approx(620.0 + LOWERED)
    assert kept["version"] == 1


def test_a_bare_number_is_in_the_readers_unit(page: TestClient, style: int) -> None:
    answer = edit(page, style, 1, "in", **longer("24 1/2"))
    # 1 in = 25.4 mm (international inch, 1959)
    assert edge_length(answer.json(), "skirt.front/center_front") == pytest.approx(24.5 * 25.4 + LOWERED)
    assert answer.json()["steps"][0]["values"]["length"] == '24 1/2"'


def test_undo_and_redo(page: TestClient, style: int) -> None:
    edit(page, style, 1, **longer("55"))
    undone = page.post(f"/api/styles/{style}/undo", json={"expected_version": 2}).json()
    assert edge_length(undone, "skirt.front/center_front") == pytest.approx(620.0 + LOWERED)
    assert undone["can_redo"]
    redone = page.post(f"/api/styles/{style}/redo", json={"expected_version": 3}).json()
    assert edge_length(redone, "skirt.front/center_front") == pytest.approx(550.0 + LOWERED)


def test_a_second_writer_is_told_of_the_first(page: TestClient, style: int) -> None:
    assert edit(page, style, 1, **longer("55")).status_code == 200
    answer = edit(page, style, 1, **longer("70"))
    assert answer.status_code == 409
    told = answer.json()
    assert told["code"] == "book-conflict"
    assert told["facts"]["version"] == 2
    assert told["next_step"]
    assert edge_length(read(page, style), "skirt.front/center_front") == pytest.approx(550.0 + LOWERED)


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"length": "lots"}, "amount-unknown-measure"),
        ({"length": ""}, "number-empty"),
        ({"length": "1e9"}, "number-exponent"),
        ({"lenght": "60"}, "parameter-refused"),
        ({"front_darts": 9}, "parameter-refused"),
    ],
)
def test_bad_input_is_refused_in_words(
    page: TestClient, style: int, changes: dict[str, Any], code: str
) -> None:
    answer = edit(page, style, 1, do="change-step", step="skirt-1", changes=changes)
    assert answer.status_code == 422
    told = answer.json()
    assert told["code"] == code
    assert told["message"]
    assert "Traceback" not in answer.text
    assert read(page, style)["version"] == 1


def test_lengths_in_a_refusal_are_in_the_readers_unit(page: TestClient, style: int) -> None:
    step = {"do": "change-step", "step": "vent-1", "changes": {"slant": "30 cm"}}
    for unit, mark in (("cm", "30.0 cm"), ("in", '11 13/16"')):
        told = page.post(f"/api/styles/{style}/preview?unit={unit}", json=step).json()
        stopped = next(line for line in told["steps"] if line["standing"] == "stopped")
        assert mark in stopped["stop"]["refusal"]["message"]


def test_what_the_page_may_not_say_is_refused(page: TestClient, style: int) -> None:
    answer = edit(page, style, 1, do="burn-book")
    assert answer.status_code == 422
    assert answer.json()["code"] == "workroom-request"


def test_a_fault_of_ours_tells_no_traceback(
    page: TestClient, style: int, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(_self: Studio, _style: int) -> None:
        raise RuntimeError("secret detail")

    monkeypatch.setattr(Studio, "open_style", broken)
    answer = page.get(f"/api/styles/{style}")
    assert answer.status_code == 500
    assert answer.json()["code"] == "workroom-fault"
    assert "secret detail" not in answer.text
    assert "secret detail" in caplog.text  # but the log has it


def test_unknown_addresses_and_documents_are_404(page: TestClient, body: int) -> None:
    assert page.get("/api/no").json()["code"] == "workroom-address"
    assert page.get("/api/styles/99999").status_code == 404
    assert page.get(f"/api/styles/{body}").status_code == 422  # a body is no style
