"""Bodice and sleeve in a real browser: begun from measures, asked for cloth, cured, read in the table."""

import re
from typing import Any

import pytest
from playwright.sync_api import FloatRect, Locator, Page, ViewportSize, expect

from notchbook.app.drafting import draft_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from support.new_style import begun
from support.workroom_page import TABLET, UPRIGHT, WIDE, Workroom, step

pytestmark = pytest.mark.browser

NOT_TAKEN = {"upper_bust_girth", "hip_girth", "hip_depth", "outside_leg"}

MEASURES: dict[str, float] = {
    key: value for key, value in BODY_OF_PICTURES["measures"].items() if key not in NOT_TAKEN
}
"""Invented measures of an invented woman, cm."""

NAME = "Rita M."

FEW = ("height", "neck_base_girth", "bust_girth", "waist_girth")


def with_body(workroom: Workroom, name: str = NAME, **other: Any) -> int:
    """Put an invented body into the book, and its id; a measure given as None was not taken."""
    population = other.pop("population", "women")
    taken = {key: value for key, value in {**MEASURES, **other}.items() if value is not None}
    data = {"name": name, "unit": "cm", "measures": taken}
    studio = workroom.kept()
    body = studio.new_body(set_from_data(data if population is None else {**data, "population": population}))
    studio.close()
    return body.id


def drafted(workroom: Workroom, block: str, size: ViewportSize = WIDE, cloth: str = "", **other: Any) -> Page:
    """The table with a style of this block, drafted for the invented body by another program."""
    body = with_body(workroom, **other)
    studio = workroom.kept()
    recipe = draft_recipe(block, studio.open_body(body).measures, {"fabric": cloth} if cloth else {})
    style = studio.new_style(recipe, body)
    studio.close()
    page = workroom.open(size=size)
    page.get_by_label("Style", exact=True).select_option(value=str(style.id))
    expect(step(page, f"{block}-1")).to_be_visible()
    return page


def parameters(workroom: Workroom, record: str) -> dict[str, Any]:
    """What is on disk of a step of the newest style."""
    studio = workroom.kept()
    found = dict(studio.recipe_of(studio.list_styles()[-1].id).step(record).parameters)
    studio.close()
    return found


def test_bodice_and_sleeve_are_drafted_from_measures_in_five_steps(workroom: Workroom) -> None:
    with_body(workroom)
    page = workroom.open()
    page.get_by_label("Style", exact=True).select_option("new")  # 1
    form = page.get_by_role("form", name="New style")
    form.get_by_label("Drafted for").select_option(label="Rita M.")  # 2
    form.locator("label").filter(has=page.get_by_text("sleeve", exact=True)).click()  # 3
    form.get_by_role("button", name="Draft it").click()  # 4
    expect(step(page, "sleeve-1")).to_contain_text("asks first")
    expect(step(page, "sleeve-1").get_by_role("button", name="knit")).to_be_focused()
    step(page, "sleeve-1").get_by_role("button", name="light woven").click()  # 5
    for piece in ("bodice.back", "bodice.front", "sleeve.sleeve"):
        expect(page.locator(f'[data-piece="{piece}"]')).to_be_attached()
    expect(page.locator(".proven")).to_contain_text("✓")
    assert parameters(workroom, "sleeve-1")["fabric"] == "light_woven"


def test_each_block_is_chosen_by_the_picture_of_a_draft(workroom: Workroom) -> None:
    with_body(workroom)
    page = workroom.open()
    form = begun(page, "sleeve", NAME)
    pictures = form.locator("label svg")
    assert pictures.count() >= 3
    sleeve = form.locator("label").filter(has=page.get_by_text("sleeve", exact=True))
    assert sleeve.locator(".outline").count() == 3, "back, front and sleeve"
    expect(sleeve).to_contain_text("with its bodice")


def test_what_is_missing_is_named_and_estimated_where_she_stands(workroom: Workroom) -> None:
    not_taken: dict[str, Any] = {key: None for key in MEASURES if key not in FEW}
    with_body(workroom, population=None, **not_taken)
    page = workroom.open()
    form = begun(page, "bodice", NAME)
    asked = form.get_by_role("region", name="What the bodice asks of the body")
    expect(asked).to_contain_text("measures missing")
    expect(asked).to_contain_text("scye depth")
    expect(form.get_by_role("button", name="Draft it")).to_be_disabled()
    asked.get_by_role("button", name="estimate them").click()
    asked.get_by_role("button", name="women", exact=True).click()
    expect(asked).to_contain_text("estimated: ")
    expect(asked).to_contain_text(re.compile(r"scye depth ± \d"))
    form.get_by_role("button", name="Draft it").click()
    expect(page.locator('[data-piece="bodice.front"]')).to_be_attached()
    expect(page.get_by_role("region", name="To check")).to_contain_text("more of the kind")


def test_measuring_what_is_missing_leads_to_its_field(workroom: Workroom) -> None:
    with_body(workroom, across_back=None)
    page = workroom.open()
    form = begun(page, "bodice", NAME)
    form.get_by_role("button", name="measure them").click()
    expect(page.locator("[data-measure='across_back'] input").first).to_be_focused()


def test_the_cloths_are_said_with_their_ease_in_her_unit(workroom: Workroom) -> None:
    page = drafted(workroom, "sleeve")
    asked = step(page, "sleeve-1")
    expect(asked.get_by_role("button", name="wool dress cloth")).to_contain_text("2.0 to 3.0 cm")
    expect(asked).to_have_class(re.compile(r"\basks\b"))
    expect(page.locator(".proven")).to_contain_text("asks first")
    page.get_by_role("button", name="millimeters").click()
    expect(asked.get_by_role("button", name="wool dress cloth")).to_contain_text("20 to 30 mm")


def test_a_cure_is_one_button_and_can_be_undone(workroom: Workroom) -> None:
    page = drafted(workroom, "sleeve", cloth="light_woven", upper_arm_girth=36)
    cure = step(page, "sleeve-1").get_by_role("button", name=re.compile(r"Lower the armhole by \d"))
    told = cure.inner_text()
    expect(step(page, "sleeve-1")).to_contain_text(f"{told}, or")
    cure.click()
    expect(page.locator('[data-piece="sleeve.sleeve"]')).to_be_attached()
    assert parameters(workroom, "bodice-1")["armhole_lowered"] != "0 mm"
    page.get_by_role("button", name="undo").click()
    expect(cure).to_be_visible()
    assert parameters(workroom, "bodice-1")["armhole_lowered"] == "0 mm"


def test_the_ease_table_holds_every_girth_and_length_and_is_typed_in(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice")
    page.get_by_role("button", name="ease table").click()
    bust = page.locator('[data-ease="bodice/bust_girth"]')
    expect(bust.locator(".strong")).to_have_text("98.0")
    expect(page.locator('[data-ease="bodice/back_waist_length"] .strong')).to_have_text("40.5")
    page.get_by_label("bust, ease", exact=True).fill("8")
    expect(bust.locator(".strong")).to_have_text("100.0")
    page.keyboard.press("Enter")
    expect(page.locator(".before path")).to_have_count(0)
    assert parameters(workroom, "bodice-1")["bust_ease"] == "8 cm"
    page.get_by_role("button", name="inches").click()
    expect(bust.locator(".strong")).to_have_text(re.compile("39.*3/8"))


def test_a_long_form_is_folded_and_says_what_an_empty_ease_comes_to(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice")
    step(page, "bodice-1").locator(".head").click()
    form = step(page, "bodice-1").locator("form")
    expect(form.get_by_label("silhouette")).to_be_visible()
    expect(form.get_by_label("bust ease")).to_have_count(0)
    form.get_by_role("button", name=re.compile("^ease")).click()
    expect(form.get_by_label("bust ease")).to_have_attribute("placeholder", "6.0 cm")
    form.get_by_label("silhouette").select_option("loose")
    expect(form.get_by_label("bust ease")).not_to_have_attribute("placeholder", "6.0 cm")


def test_two_measures_that_disagree_stand_on_a_card_with_the_way_to_the_field(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice", front_waist_length=48.5)
    notes = page.get_by_role("region", name="To check")
    notes.get_by_role("button", name=re.compile("do not end at one waist")).click()
    expect(notes).to_contain_text("both agree with front waist length")
    expect(notes).to_contain_text("48.5 cm")
    expect(notes.get_by_role("button", name="all of it went to the navel")).to_be_visible()
    notes.get_by_role("button", name="measure front waist length again").click()
    expect(page.locator("[data-measure='front_waist_length'] input").first).to_be_focused()


def test_to_which_waist_is_answered_on_the_card(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice", front_waist_length=48.5)
    notes = page.get_by_role("region", name="To check")
    found = notes.get_by_role("button", name=re.compile("do not end at one waist"))
    found.click()
    notes.get_by_role("button", name=re.compile("front waist length went to another waist")).click()
    expect(found).to_have_count(0)
    page.get_by_role("button", name="ease table").click()
    expect(page.get_by_label("front waist length, body")).not_to_have_value("48.5")


def test_the_cap_lies_in_its_armhole_and_folds_away(workroom: Workroom) -> None:
    page = drafted(workroom, "sleeve", TABLET, cloth="light_woven")
    inset = page.get_by_role("figure", name="Cap in the armhole")
    expect(inset.locator("path")).to_have_count(4)
    expect(inset).to_contain_text(re.compile(r"ease.*front.*cm.*back.*cm"))
    inset.get_by_role("button").click()
    expect(inset.locator("path")).to_have_count(0)


def test_on_an_upright_tablet_the_notes_lie_below_the_pieces(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice", UPRIGHT, front_waist_length=48.5)
    notes = page.get_by_role("region", name="To check")
    expect(notes.locator("li").first).to_be_visible()
    lowest = max(found["y"] + found["height"] for found in boxes(page.locator("[data-piece]")))
    assert boxes(notes)[0]["y"] >= lowest


def boxes(found: Locator) -> list[FloatRect]:
    """Where each lies in the window, px."""
    seen = [one.bounding_box() for one in found.all()]
    return [box for box in seen if box is not None]


def test_a_level_that_a_dart_cuts_is_named_once(workroom: Workroom) -> None:
    page = drafted(workroom, "bodice")
    front = page.locator('[data-piece="bodice.front"]')
    assert front.locator("path.level").count() >= 3, "the bust line lies in two parts"
    expect(front.get_by_text("bust line", exact=True)).to_have_count(1)
