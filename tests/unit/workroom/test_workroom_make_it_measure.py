"""Make it measure and why-so over the wire: looked at, kept as one edit, undone; refusals in words."""

from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.recipe import Replay
from notchbook.recipe.targets import Quantity, measured, numbers_of

AROUND = "around skirt.front/hem, skirt.back/hem"


def wish(amount: str, **more: Any) -> dict[str, Any]:
    plain = {"do": "make-it-measure", "step": "skirt-1", "parameter": "flare", "quantity": AROUND}
    return {**plain, "amount": amount, **more}


def test_what_can_be_wished_for_is_offered(page: TestClient, style: int) -> None:
    answer = page.get(f"/api/styles/{style}/make-it-measure?unit=cm").json()
    by_text = {one["text"]: one for one in answer["quantities"]}
    assert by_text[AROUND]["said"] == "hem (front, back), all round"
    assert by_text[AROUND]["edges"] == ["skirt.front/hem", "skirt.back/hem"]
    numbers = [(one["step"], one["parameter"]) for one in answer["numbers"]]
    assert ("skirt-1", "flare") in numbers and ("skirt-1", "front_darts") not in numbers


def test_solving_is_looked_at_without_being_stored(page: TestClient, studio: Studio, style: int) -> None:
    answer = page.post(f"/api/styles/{style}/make-it-measure?unit=cm", json=wish("120"))
    assert answer.status_code == 200
    (solved,) = answer.json()["solved"]
    assert solved["measured_text"] == "120.00 cm" and solved["before_text"] == "0"
    assert {"front, side seam", "back, side seam"} <= {one["said"] for one in answer.json()["changed"]}
    assert studio.recipe_of(style).step("skirt-1").targets == ()


def test_taking_it_is_one_edit_that_can_be_undone(page: TestClient, studio: Studio, style: int) -> None:
    before = studio.recipe_of(style)
    sent = {"expected_version": 1, "edit": wish("120")}
    answer = page.post(f"/api/styles/{style}/edits?unit=cm", json=sent).json()
    (kept,) = answer["steps"][0]["wishes"]
    assert kept["holds"] and kept["wanted_text"] == "120.00 cm" and kept["number"] == "flare"
    assert answer["version"] == 2
    page.post(f"/api/styles/{style}/undo?unit=cm", json={"expected_version": 2})
    assert studio.recipe_of(style) == before


def test_a_broken_wish_is_shown_solved_again_and_let_go(page: TestClient, style: int) -> None:
    def kept(edit: dict[str, Any], version: int) -> dict[str, Any]:
        sent = {"expected_version": version, "edit": edit}
        return dict(page.post(f"/api/styles/{style}/edits?unit=cm", json=sent).json())

    kept(wish("120"), 1)
    eased = kept({"do": "change-step", "step": "skirt-1", "changes": {"hip_ease": "8"}}, 2)
    (broken,) = eased["steps"][0]["wishes"]
    assert not broken["holds"] and broken["found_text"]
    assert "target-no-longer-holds" in {note["code"] for note in eased["findings"]["notes"]}
    (solved,) = kept({"do": "solve-again"}, 3)["steps"][0]["wishes"]
    assert solved["holds"] and solved["found_text"] == ""
    free = kept({"do": "let-wish-go", "step": "skirt-1", "parameter": "flare"}, 4)
    assert free["steps"][0]["wishes"] == []


def test_out_of_reach_is_refused_in_the_readers_unit(page: TestClient, style: int) -> None:
    answer = page.post(f"/api/styles/{style}/make-it-measure?unit=in", json=wish("300"))
    assert answer.status_code == 422
    assert answer.json()["code"] == "wish-out-of-reach" and '300"' in answer.json()["message"]


def test_why_an_edge_is_so_and_what_moves_it(page: TestClient, style: int) -> None:
    at = f"/api/styles/{style}/why"
    answer = page.get(at, params={"unit": "cm", "name": "skirt.back/center_back/seam"}).json()
    assert [step["title"] for step in answer["steps"]][:2] == ["Draft skirt", "Vent"]
    assert any("hip girth" in read for read in answer["steps"][0]["reads"])
    moving = page.get(f"{at}/movers", params={"unit": "cm", "name": "skirt.front/hem"}).json()["movers"]
    assert {"said": "Draft skirt, length", "larger": "+1.0 cm", "moves": "1.0 cm"} in moving
    unknown = page.get(at, params={"unit": "cm", "name": "skirt.front/nothing"})
    assert unknown.status_code == 422 and unknown.json()["code"] == "explain-name-unknown"


def test_a_search_is_asked_how_far_it_is_and_stopped_between_two_trials(
    page: TestClient, style: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    heard: list[dict[str, Any]] = []

    def watched(run: Replay, quantity: Quantity) -> float:
        """The page asks while its search is at work, and stops it at the third draft."""
        heard.append(page.get("/api/wish-searches/abc?unit=cm").json())
        if len(heard) == 3:
            page.post("/api/wish-searches/abc/stop?unit=cm")
        return measured(run, quantity)

    monkeypatch.setattr("notchbook.recipe.targets.trials.measured", watched)
    answer = page.post(f"/api/styles/{style}/make-it-measure?unit=cm&search=abc", json=wish("500"))
    assert answer.status_code == 422 and answer.json()["code"] == "wish-search-stopped"
    assert heard == [{"running": True, "tried": tried, "of": None} for tried in range(3)]
    ended = page.post("/api/wish-searches/abc/stop?unit=cm").json()
    assert ended == {"running": False, "tried": 0, "of": None}


def test_the_numbers_that_give_a_wish_are_told_of_how_many(
    page: TestClient, studio: Studio, style: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    heard: list[dict[str, Any]] = []

    def watched(run: Replay, quantity: Quantity) -> float:
        heard.append(page.get("/api/wish-searches/abc?unit=cm").json())
        return measured(run, quantity)

    monkeypatch.setattr("notchbook.recipe.targets.trials.measured", watched)
    asked = {"quantity": AROUND, "amount": "120"}
    answer = page.post(f"/api/styles/{style}/make-it-measure/numbers?unit=cm&search=abc", json=asked)
    assert answer.status_code == 200 and answer.json()["numbers"]
    (of,) = {one["of"] for one in heard}
    assert of == len(numbers_of(studio.recipe_of(style)))
