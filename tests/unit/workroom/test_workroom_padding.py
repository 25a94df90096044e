"""Padding over the wire: which form needs least, what is laid on, what cannot be padded."""

import math
from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.bodies.padding_forms import form_plans
from notchbook.app.studio import Studio
from notchbook.body import MeasureSet, SetKind

GIRTHS = {"bust_girth": 900.0, "waist_girth": 700.0, "hip_girth": 960.0}


def add(studio: Studio, name: str, kind: SetKind, girths: dict[str, float]) -> int:
    """An invented form or client in the book."""
    made = MeasureSet.from_mm(name, girths)
    return studio.new_body(MeasureSet(name, made.values, kind=kind)).id


@pytest.fixture
def bare(studio: Studio) -> Studio:
    """The studio without the forms of the demonstration: they are turned into bodies."""
    for entry in studio.list_bodies():
        if entry.kind == "form":
            add_as_body(studio, entry.id)
    return studio


def add_as_body(studio: Studio, entry: int) -> None:
    from notchbook.app.bodies.set_edits import SetKind as Turn

    studio.edit_body(entry, studio.open_body(entry).version, Turn("body", None))


def padding(page: TestClient, client: int, more: str = "") -> dict[str, Any]:
    return dict(page.get(f"/api/bodies/{client}/padding{more}").json())


def test_the_form_that_needs_least_stands_first(page: TestClient, bare: Studio) -> None:
    small = add(bare, "Small", "form", {key: girth - 60 for key, girth in GIRTHS.items()})
    near = add(bare, "Near", "form", {key: girth - 25 for key, girth in GIRTHS.items()})
    large = add(bare, "Large", "form", {key: girth + 30 for key, girth in GIRTHS.items()})
    client = add(bare, "Invented client", "body", GIRTHS)
    told = padding(page, client)
    assert [form["id"] for form in told["forms"]] == [near, small, large]
    assert told["sentence"] == "For Invented client: of the forms in the book Near needs least."
    assert told["forms"][0]["words"] == "7.5 cm to add, all levels together"
    assert told["forms"][2]["words"].startswith("too large: ")
    worst = told["forms"][2]["plan"]["levels"][0]
    assert (worst["fit"], worst["words"]) == ("too_large", "cannot be padded: the form is 3.0 cm larger")


def test_a_form_of_which_little_is_known_is_not_said_to_need_least(page: TestClient, bare: Studio) -> None:
    known = add(bare, "Known", "form", {key: girth - 60 for key, girth in GIRTHS.items()})
    unknown = add(bare, "Unknown", "form", {"waist_girth": 690.0})
    client = add(bare, "Invented client", "body", GIRTHS)
    told = padding(page, client)
    assert [form["id"] for form in told["forms"]] == [known, unknown]
    assert told["forms"][1]["words"].endswith("; bust girth, hip girth not compared")


def test_an_even_layer_adds_two_pi_t(page: TestClient, bare: Studio) -> None:
    # Steiner's formula for convex sections (textbook geometry): a layer t all round adds 2 pi t.
    add(bare, "Form", "form", {"waist_girth": 700.0})
    client = add(bare, "Invented client", "body", {"waist_girth": 700.0 + 2 * math.pi * 10})
    told = padding(page, client, "?layer=1")
    (level,) = told["forms"][0]["plan"]["levels"]
    assert (level["front"], level["back"]) == (pytest.approx(10.0), pytest.approx(10.0))
    assert level["words"] == "1 layer in front, 1 layer behind, then 76.3 cm"
    inches = padding(page, client, "?layer=1/4&unit=in")["forms"][0]["plan"]["levels"][0]
    assert (inches["front_text"], inches["layers_front"]) == ('3/8"', 2)
    assert inches["reached_text"].endswith('"')


def test_what_layers_leave_short_is_told(page: TestClient, bare: Studio) -> None:
    add(bare, "Form", "form", {"neck_base_girth": 370.0, "waist_girth": 700.0})
    client = add(bare, "Invented client", "body", {"neck_base_girth": 380.0, "waist_girth": 735.0})
    neck, waist = padding(page, client)["forms"][0]["plan"]["levels"]
    assert neck["words"] == "no whole layer; 1.0 cm short: thin felt all round"
    assert waist["words"].endswith("then 73.1 cm; 0.4 cm short: a strip of thin felt")


@pytest.mark.parametrize(
    ("layer", "code"),
    [("thick", "number-text"), ("40 cm", "padding-thickness"), ("5", "padding-thickness-bare")],
)
def test_no_thickness_of_wadding_is_refused(page: TestClient, body: int, layer: str, code: str) -> None:
    answer = page.get(f"/api/bodies/{body}/padding?layer={layer}")
    assert (answer.status_code, answer.json()["code"]) == (422, code)


def test_without_forms_and_without_common_girths_it_is_said(page: TestClient, bare: Studio) -> None:
    client = add(bare, "Invented client", "body", {"height": 1680.0})
    assert padding(page, client)["forms"] == []
    add(bare, "Form", "form", GIRTHS)
    told = padding(page, client)
    assert told["forms"][0]["plan"] is None
    assert told["forms"][0]["words"]
    assert told["sentence"] == "For Invented client: no form of the book has a girth in common."


def test_what_is_not_compared_and_what_is_too_much_is_told(page: TestClient, bare: Studio) -> None:
    add(bare, "Form", "form", {**GIRTHS, "hip_depth": 200.0})
    client = add(bare, "Invented client", "body", {"bust_girth": 1000.0, "waist_girth": 800.0})
    told = padding(page, client)
    plan = told["forms"][0]["plan"]
    assert told["sentence"] == (
        "For Invented client: better a larger form than any in the book; Form is nearest, "
        "so far as known: hip girth not compared."
    )
    assert told["forms"][0]["words"].startswith("better a larger form: 20.0 cm to add")
    assert plan["larger_form_is_better"]
    assert plan["by_share"] == ["bust girth", "waist girth"]
    assert plan["not_compared"] == ["The client has no hip girth, hip depth."]
    assert [remark["code"] for remark in plan["remarks"]] == ["padding-much"]


@pytest.mark.parametrize(
    ("layer", "unit", "said"),
    [
        ("", "cm", "5 mm"),
        ("", "in", "5 mm"),
        ("1/4", "in", '1/4"'),
        ("3/16", "in", '3/16"'),
        ("0.4", "cm", "4 mm"),
    ],
)
def test_a_layer_is_told_as_wadding_is_sold(
    page: TestClient, body: int, layer: str, unit: str, said: str
) -> None:
    assert padding(page, body, f"?layer={layer}&unit={unit}")["layer_text"] == said


def test_arcs_on_both_are_no_usual_share(page: TestClient, bare: Studio) -> None:
    add(bare, "Form", "form", {**GIRTHS, "front_bust_arc": 460.0})
    client = add(
        bare, "Invented client", "body", {"bust_girth": 930.0, "front_bust_arc": 475.0, "hip_girth": 985.0}
    )
    assert padding(page, client)["forms"][0]["plan"]["by_share"] == ["hip girth"]


def test_a_level_without_a_layer_is_in_no_order(page: TestClient, bare: Studio) -> None:
    add(bare, "Form", "form", {"neck_base_girth": 370.0})
    client = add(bare, "Invented client", "body", {"neck_base_girth": 380.0})
    form = padding(page, client)["forms"][0]
    assert form["plan"]["order"] == []
    assert form["words"].startswith("1.0 cm to add, all levels together; bust girth, ")


def test_a_form_is_not_padded_to_itself(bare: Studio) -> None:
    first = add(bare, "First", "form", GIRTHS)
    second = add(bare, "Second", "form", GIRTHS)
    assert [plan.entry.id for plan in form_plans(bare, first)] == [second]
