"""What a finding offers to be made to measure, and which numbers give it; and elastics beside the eases."""

from typing import Any

from fastapi.testclient import TestClient

from notchbook.app.drafting import draft_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.studio import Studio
from notchbook.app.wishes.finding_wishes import wish_at
from notchbook.body import set_from_data
from notchbook.pattern import Finding, Severity
from notchbook.recipe.targets import Quantity

LONGER = {
    "do": "add-step",
    "operation": "change_length",
    "parameters": {"hems": ["skirt.front/hem"], "amount": "0.9"},
    "side": "both",
    "before": None,
}


def disagreeing(page: TestClient, style: int) -> list[dict[str, Any]]:
    """The notes of a skirt whose front was made longer alone."""
    sent = {"expected_version": 1, "edit": LONGER}
    answer = page.post(f"/api/styles/{style}/edits?unit=cm", json=sent).json()
    return list(answer["findings"]["notes"])


def test_a_seam_that_disagrees_can_be_made_to_agree_by_the_number_that_broke_it(
    page: TestClient, style: int
) -> None:
    notes = {note["code"]: note for note in disagreeing(page, style)}
    assert all(note["wish"] is None for note in notes.values() if note["severity"] == "note")
    wish = notes["seam-second-shorter"]["wish"]
    assert (wish["words"], wish["text"]) == ("make it agree by a number", "misfit skirt/side_seam")
    assert (wish["now_text"], wish["wanted_text"]) == ("-0.90 cm", "0.00 cm")
    asked = {"quantity": wish["text"], "amount": wish["wanted_text"]}
    found = page.post(f"/api/styles/{style}/make-it-measure/numbers?unit=cm", json=asked).json()["numbers"]
    assert [(one["step"], one["parameter"]) for one in found] == [("change_length-1", "amount")]


def test_a_wish_stands_where_a_length_would_heal(studio: Studio, style: int) -> None:
    run = studio.open_style(style).replay
    promise = run.expectations[0].name

    def found(code: str, severity: Severity = Severity.STOP, where: str | None = promise) -> Finding:
        return Finding("any", code, severity, "", where=where, measured=700.0, wanted=740.0)

    wish = wish_at(found("closure-small"), run)
    assert wish is not None
    assert (wish.quantity, wish.wanted) == (Quantity("finished", (promise,)), 740.0)
    assert wish_at(found("closure-small", Severity.NOTE), run) is None
    assert wish_at(found("closure-small", where=None), run) is None
    assert wish_at(found("closure-small", where="skirt/gone"), run) is None
    assert wish_at(found("grain-short"), run) is None


def test_elastics_say_what_they_go_onto_and_what_is_cut(page: TestClient, studio: Studio, style: int) -> None:
    assert page.get(f"/api/styles/{style}?unit=mm").json()["elastics"] == []
    body = studio.new_body(
        set_from_data({**BODY_OF_PICTURES, "name": "Rita M.", "unit": "cm", "population": "women"})
    ).id
    given = {"across": "10 to 14 cm", "along": "10 to 13 cm"}
    recipe = draft_recipe("leggings", studio.open_body(body).measures, given)
    state = studio.new_style(recipe, body)
    answer = page.get(f"/api/styles/{state.id}?unit=mm").json()
    (line,) = answer["elastics"]
    (elastic,) = state.replay.pattern.elastics.values()

    def mm(text: str) -> float:
        return float(line[text].removesuffix(" mm"))

    assert line["share_text"] == f"{elastic.share * 100:.3g} %"
    assert abs(mm("ring_text") - elastic.share * mm("of_text")) < 0.2
    assert mm("cut_text") > mm("ring_text")
