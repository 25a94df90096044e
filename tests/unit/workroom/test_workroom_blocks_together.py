"""Blocks that are drafted with others, as the page begins, adds, asks for, cures and lists them."""

from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.body import MeasureSet
from support.odd_steps import register
from support.paired_blocks import LID, REFUSAL, TRAY, tray_body

# The page is imported with the fixtures, before the blocks are registered, so that it knows them.


@pytest.fixture(autouse=True)
def paired(monkeypatch: pytest.MonkeyPatch) -> None:
    """The tray and the lid are blocks until the test is over."""
    register(monkeypatch, TRAY, LID)


def body_of(studio: Studio, measures: MeasureSet) -> int:
    return studio.new_body(measures).id


def begin(
    page: TestClient, body: int, block: str = "lid", unit: str = "cm", **parameters: Any
) -> dict[str, Any]:
    asked = {"name": "Box", "block": block, "body": body, "parameters": parameters}
    return dict(page.post(f"/api/styles?unit={unit}", json=asked).json())


def test_a_style_begins_with_both_blocks_and_the_parameters_of_either(
    page: TestClient, studio: Studio
) -> None:
    body = body_of(studio, tray_body())
    told = begin(page, body, unit="in", **{"cloth": "knit", "tray.lowered": "1/2"})
    assert [step["id"] for step in told["steps"]] == ["tray-1", "lid-1"]
    assert told["steps"][0]["values"]["lowered"] == '1/2"'
    assert told["steps"][1]["values"] == {"tray": "tray", "cloth": "knit", "play": None}


def test_the_cloth_is_asked_for_with_its_words(page: TestClient, studio: Studio) -> None:
    begun = begin(page, body_of(studio, tray_body()))
    told = begun["steps"][1]["stop"]["refusal"]
    assert (told["facts"]["setting"], told["facts"]["choices"]) == ("cloth", ["knit", "woven"])
    assert told["facts"]["said"] == ["knit: 0 mm", "woven: 5 mm"]


def test_a_wrong_word_and_a_missing_measure_are_refused(page: TestClient, studio: Studio) -> None:
    body = body_of(studio, tray_body())
    assert begin(page, body, **{"cloth": "knit", "tray.cloth": "x"})["code"] == "setting-unknown"
    bare = body_of(studio, tray_body().without("upper_arm_girth"))
    assert begin(page, bare, cloth="knit")["code"] == "measure-missing"


def test_the_ease_table_tells_girths_and_lengths(page: TestClient, studio: Studio) -> None:
    told = begin(page, body_of(studio, tray_body()), cloth="knit")
    bust, height, rim = told["eases"]
    assert (bust["kind"], bust["label"], bust["ease_field"]) == (
        "girth",
        "bust",
        {"step": "tray-1", "parameter": "bust_ease"},
    )
    assert (height["kind"], height["measure"], height["label"]) == ("length", "", "tray, height")
    assert (rim["pattern_text"], rim["finished_text"]) == ("21.2 cm", "20.0 cm")


def test_a_stopped_step_has_its_cure_which_a_change_of_the_step_takes(
    page: TestClient, studio: Studio
) -> None:
    told = begin(page, body_of(studio, tray_body(upper_arm_girth=263.0)), cloth="knit")
    stop = told["steps"][1]["stop"]
    assert stop["refusal"]["code"] == REFUSAL
    (cure,) = stop["refusal"]["cures"]
    assert cure == {
        "step": "tray-1",
        "parameter": "lowered",
        "value": "63 mm",
        "words": "Lower the tray by 6.3 cm",
        "adds": None,
        "disturbs": [],
    }
    edit = {"do": "change-step", "step": cure["step"], "changes": {cure["parameter"]: cure["value"]}}
    asked = {"expected_version": told["version"], "edit": edit}
    healed = page.post(f"/api/styles/{told['id']}/edits", json=asked).json()
    assert [step["standing"] for step in healed["steps"]] == ["done", "done"]
    undone = page.post(f"/api/styles/{told['id']}/undo", json={"expected_version": healed["version"]}).json()
    assert undone["steps"][1]["standing"] == "stopped"


def test_a_lid_goes_into_the_tray_that_is_there(page: TestClient, studio: Studio) -> None:
    told = begin(page, body_of(studio, tray_body()), block="tray")
    edit = {"do": "add-step", "operation": "lid", "parameters": {"cloth": "woven"}}
    asked = {"expected_version": told["version"], "edit": edit}
    after = page.post(f"/api/styles/{told['id']}/edits", json=asked).json()
    assert [step["id"] for step in after["steps"]] == ["tray-1", "lid-1"]
    assert after["measures_needed"] == ["bust_girth", "waist_girth", "upper_arm_girth"]


def test_what_is_needed_follows_the_choice(page: TestClient, studio: Studio) -> None:
    body = body_of(studio, tray_body().without("waist_girth"))
    told = begin(page, body, block="tray", shaping="none")
    assert told["measures_needed"] == ["bust_girth"]


def test_a_contradiction_is_a_card(page: TestClient, studio: Studio) -> None:
    told = begin(page, body_of(studio, tray_body(waist_girth=940.0)), block="tray", unit="in")
    cards = [note["contradiction"] for note in told["findings"]["notes"] if note["contradiction"]]
    assert len(cards) == 1
    card = cards[0]
    assert (card["first"], card["first_text"]) == ("bust_girth", '35 7/16"')
    assert (card["explains"], card["explains_text"]) == ("waist_girth", '27 9/16"')
    assert card["by_text"] == '9 7/16" less'
    assert (card["read_again"], card["question"]) == ("bust_girth", "measure-to-which-waist")


def test_the_vocabulary_tells_all_that_a_block_states(page: TestClient) -> None:
    blocks = {one["block"]: one for one in page.get("/api/vocabulary").json()["blocks"]}
    tray = blocks["tray"]
    assert tray["sometimes"] == [{"when": "with shaping", "keys": ["waist_girth"]}]
    assert tray["estimated"] == ["hip_girth"]
    assert (tray["eases"][0]["drafted_text"], tray["eases"][0]["usual_text"]) == (
        "6.0 cm",
        "4.0 cm to 8.0 cm",
    )
    assert tray["refuses"][0]["code"] == "skirt-above-hip"
    assert "…" in tray["refuses"][0]["message"]
    assert blocks["lid"]["drafted_with"] == ["tray"]


def test_what_to_measure_next_for_a_block_that_asks(page: TestClient, studio: Studio) -> None:
    bare = body_of(studio, tray_body(hip_girth=960.0, height=1680.0).without("upper_arm_girth"))
    told = page.get(f"/api/bodies/{bare}/next?block=lid").json()
    assert told["lines"][0]["key"] == "upper_arm_girth"
