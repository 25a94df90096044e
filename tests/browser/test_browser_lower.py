"""Trousers, skirts and stretch blocks in a real browser: begun, asked for cloth, cured, left and right."""

import re
from collections.abc import Mapping

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from notchbook.body import MeasureSet, PopulationName
from support.new_style import begun, last_parameters, opened, put_body, put_style
from support.stretch_bodies import WHOLE_WOMAN
from support.trouser_bodies import MAN, WOMAN
from support.workroom_page import Workroom, step

pytestmark = pytest.mark.browser

WHOLE = WHOLE_WOMAN | WOMAN
NAME = "Vera P."


def body(
    values: Mapping[str, float] = WHOLE, population: PopulationName = "women", **other: float
) -> MeasureSet:
    """An invented body of the book; other measures beside or instead of its own, mm."""
    return MeasureSet.from_mm(NAME, {**values, **other}, population=population)


def middle(found: Locator) -> float:
    """Where it lies in the window from left to right, px."""
    box = found.bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2


def piece(page: Page, name: str) -> Locator:
    return page.locator(f'[data-piece="{name}"]')


def test_every_block_is_chosen_by_family_and_picture_with_the_keys(workroom: Workroom) -> None:
    put_body(workroom, body())
    page = workroom.open()
    form = begun(page, "skirt", NAME)
    for family in ("upper", "skirts", "trousers", "stretch"):
        tiles = form.get_by_role("group", name=family, exact=True).locator("label")
        assert tiles.count() >= 1
        for tile in tiles.all():
            expect(tile.locator(".outline").first).to_be_attached()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    expect(form.get_by_role("radio", name="circle skirt")).to_be_checked()


def test_a_block_that_was_chosen_stays_when_the_answer_for_the_body_comes(workroom: Workroom) -> None:
    put_body(workroom, body())
    page = workroom.open()
    waiting: list[Route] = []
    page.get_by_label("Style", exact=True).select_option("new")
    form = page.get_by_role("form", name="New style")
    skirt = form.get_by_role("radio", name="skirt", exact=True)
    expect(skirt).to_be_checked()  # what the body of the demonstration has the measures for
    page.route("**/beginnings*", lambda route: waiting.append(route))
    form.get_by_label("Drafted for").select_option(label=NAME)
    form.locator("label").filter(has=page.get_by_text("skirt", exact=True)).click()
    expect(skirt).to_be_checked()
    with page.expect_response("**/beginnings*"):
        waiting[0].continue_()
    expect(form.get_by_role("radio", name="bodice", exact=True)).not_to_be_checked()
    expect(skirt).to_be_checked()


def test_trousers_are_drafted_from_measures_and_read_in_both_units(workroom: Workroom) -> None:
    put_body(workroom, body())
    page = workroom.open()
    begun(page, "trousers", NAME).get_by_role("button", name="Draft it").click()
    for name in ("trousers.front", "trousers.back"):
        expect(piece(page, name)).to_be_attached()
    assert middle(piece(page, "trousers.back")) < middle(piece(page, "trousers.front"))
    expect(page.locator(".proven")).to_contain_text("✓")
    step(page, "trousers-1").locator(".head").click()
    form = step(page, "trousers-1").locator("form")
    form.get_by_label("silhouette").select_option("wide")
    form.get_by_role("button", name="Keep", exact=True).click()
    expect(step(page, "trousers-1").locator("form")).to_have_count(0)
    expect(step(page, "trousers-1")).to_contain_text("wide, ankle length")
    assert last_parameters(workroom, "trousers-1")["silhouette"] == "wide"
    page.get_by_role("button", name="ease table").click()
    hip = page.locator('[data-ease="trousers/hip_girth"]')
    expect(hip.locator(".strong")).to_have_text(re.compile(r"^\d+\.\d$"))
    page.get_by_role("button", name="inches").click()
    expect(hip.locator(".strong")).to_have_text(re.compile("/"))


def test_a_crotch_that_is_too_short_is_cured_by_one_button(workroom: Workroom) -> None:
    page = opened(workroom, put_style(workroom, "trousers", body(crotch_length=560.0)), "trousers")
    stopped = step(page, "trousers-1")
    expect(stopped).to_contain_text("crotch length is too short")
    expect(stopped).to_contain_text(re.compile(r"\d\.\d cm"))
    stopped.get_by_role("button", name=re.compile(r"Give the crotch seam \d.* of ease")).click()
    expect(piece(page, "trousers.back")).to_be_attached()
    assert last_parameters(workroom, "trousers-1")["crotch_ease"] is not None


def test_a_bodysuit_asks_for_both_ways_of_the_cloth_and_takes_a_test(workroom: Workroom) -> None:
    put_body(workroom, body())
    page = workroom.open()
    begun(page, "bodysuit", NAME).get_by_role("button", name="Draft it").click()
    asks = step(page, "bodysuit-1")
    expect(asks).to_contain_text("across, round the body")
    own = asks.get_by_label("Your own test")
    own.fill("10 cm to 9 cm")
    own.press("Enter")
    expect(page.get_by_role("status").or_(page.get_by_role("alert")).first).to_be_visible()
    expect(asks).to_contain_text("across, round the body")
    own.fill("10 cm to 14 cm")
    own.press("Enter")
    expect(asks).to_contain_text("along, up and down the body")
    asks.get_by_role("button", name=re.compile("stretchy knit: 10 cm")).first.click()
    for name in ("front", "back", "lining"):
        expect(piece(page, f"bodysuit.{name}")).to_be_attached()
    kept = last_parameters(workroom, "bodysuit-1")
    assert (kept["across"], kept["along"]) == ("10 cm to 14 cm", "50 %")
    page.get_by_role("button", name="ease table").click()
    expect(page.locator('[data-ease="bodysuit/bust_girth"]')).to_contain_text(re.compile(r"-\d+ %"))


def test_a_circle_skirt_that_does_not_pass_the_hip_is_widened_by_one_button(workroom: Workroom) -> None:
    style = put_style(workroom, "circle_skirt", body(hip_girth=1150.0), fullness="quarter")
    page = opened(workroom, style, "circle_skirt")
    notes = page.get_by_role("region", name="To check")
    cure = page.get_by_role("button", name=re.compile("Draft 0.* of a circle"))
    if not cure.count():
        notes.get_by_role("button", name=re.compile("hip")).first.click()
    cure.click()
    expect(cure).to_have_count(0)
    assert last_parameters(workroom, "circle_skirt-1")["own_share"] > 0.25


def test_trousers_of_two_sides_lie_apart_and_are_named_for_the_wearer(workroom: Workroom) -> None:
    sides = {"hip_girth@left": 980.0, "thigh_girth@left": 595.0}
    page = opened(workroom, put_style(workroom, "trousers", body({**WHOLE, **sides})), "trousers")
    legs = ("back@left", "back@right", "front@right", "front@left")
    for leg in legs:
        expect(piece(page, f"trousers.{leg}")).to_be_attached()
    places = [middle(piece(page, f"trousers.{leg}")) for leg in legs]
    assert places == sorted(places)
    expect(piece(page, "trousers.back@left")).to_contain_text(re.compile("left", re.IGNORECASE))


def test_the_ease_of_a_man_is_said_in_the_words_for_men(workroom: Workroom) -> None:
    page = opened(workroom, put_style(workroom, "trousers", body(MAN, "men")), "trousers")
    strip = page.get_by_role("region", name="Body, ease and pattern")
    expect(strip).to_contain_text("seat")
    expect(strip).not_to_contain_text("hip")


def test_gores_lie_in_the_order_in_which_they_are_sewn(workroom: Workroom) -> None:
    page = opened(workroom, put_style(workroom, "gored_skirt", body(), gores=8), "gored_skirt")
    order = ("center_back", "side_back", "side", "side_front", "center_front")
    expect(piece(page, "gored_skirt.side")).to_be_attached()
    places = [middle(piece(page, f"gored_skirt.{word}")) for word in order]
    assert places == sorted(places)


def test_the_measures_room_follows_the_style_that_she_puts_on_the_table(workroom: Workroom) -> None:
    style = put_style(workroom, "trousers", body())
    page = workroom.open("measures")
    measured = page.get_by_label("Body", exact=True)
    expect(measured.locator("option:checked")).not_to_have_text(NAME)
    page.get_by_role("link", name="Table").click()
    page.get_by_label("Style", exact=True).select_option(value=str(style))
    expect(step(page, "trousers-1")).to_be_visible()
    page.get_by_role("link", name="Measures").click()
    expect(measured.locator("option:checked")).to_have_text(NAME)


def test_the_short_sheet_of_trousers_asks_for_the_rise_as_it_is_taken(workroom: Workroom) -> None:
    page = workroom.open("measures")
    sheet = page.locator("select", has=page.locator("option", has_text="what the trousers block asks for"))
    sheet.first.select_option(label="short: what the trousers block asks for")
    sitting, standing = (page.locator(f'[data-measure="{key}_rise"]') for key in ("sitting", "standing"))
    expect(sitting).to_be_visible()
    expect(standing).to_be_visible()
    page.get_by_label("this is").select_option(label="a body")
    page.get_by_label("rise taken").select_option(label="sitting")
    expect(standing).to_have_count(0)
    expect(sitting).to_be_visible()
