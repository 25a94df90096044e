"""Making something measure what is wished, and asking why an edge is so, in a real browser."""

import re

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from support.workroom_page import Workroom, edge_path, step, until_drawn

pytestmark = pytest.mark.browser

HEM = "skirt.front/hem"
STOPPED: dict[str, object] = {
    "code": "wish-search-stopped",
    "message": "The search for a number was stopped.",
    "next_step": "",
    "facts": {},
    "offers": [],
    "cures": [],
    "contradiction": None,
}
AROUND = "around skirt.front/hem, skirt.back/hem"


def wish_form(page: Page) -> Locator:
    """The form of the skirt's wishes, open."""
    step(page, "skirt-1").locator(".head").click()
    form = step(page, "skirt-1").locator("details").filter(has_text="make it measure")
    form.locator("summary").click()
    expect(form.get_by_label("make", exact=True)).to_be_visible()
    return form


def wished(form: Locator, number: str, what: str, amount: str) -> None:
    form.get_by_label("by", exact=True).select_option(number)
    form.get_by_label("make", exact=True).select_option(what)
    form.get_by_label("measure", exact=True).fill(amount)
    form.get_by_role("button", name="Look").click()


def test_a_wish_is_looked_at_taken_and_undone(workroom: Workroom, table: Page) -> None:
    before = edge_path(table, HEM)
    form = wish_form(table)
    wished(form, "flare", AROUND, "120")
    expect(form.get_by_role("status")).to_contain_text("Draft skirt, flare: 0 → ")
    expect(form.get_by_role("status")).to_contain_text("120.00 cm")
    expect(form.get_by_role("status")).to_contain_text("side seam")
    until_drawn(table, HEM, before)
    studio = workroom.kept()
    style = studio.list_styles()[0].id
    kept = studio.open_style(style).recipe
    assert kept.step("skirt-1").parameters["flare"] == 0.0, "only looked at"
    form.get_by_role("button", name="Take it").click()
    wishes = step(table, "skirt-1").get_by_label("Made to measure")
    expect(wishes).to_contain_text("flare made for hem (front, back), all round: 120.00 cm")
    taken = studio.open_style(style).recipe.step("skirt-1")
    assert taken.targets and taken.parameters["flare"] > 0.0
    table.keyboard.press("Control+z")
    expect(wishes).to_have_count(0)
    assert studio.open_style(style).recipe == kept
    studio.close()


def test_a_wish_out_of_reach_says_how_far_it_goes(table: Page) -> None:
    form = wish_form(table)
    wished(form, "flare", AROUND, "500")
    expect(form.get_by_role("alert")).to_contain_text("cannot make it 500.0 cm")
    expect(form.get_by_role("alert")).to_contain_text("the most at 35.0")
    expect(form.get_by_role("button", name="Take it")).to_have_count(0)


def test_a_search_says_that_it_goes_on_and_is_stopped(table: Page) -> None:
    """The question is held back until the page has asked to stop, and answered as a stopped one is."""
    held: list[Route] = []
    table.route("**/make-it-measure?search=*", lambda route: held.append(route))
    form = wish_form(table)
    wished(form, "flare", AROUND, "120")
    expect(form.get_by_role("status")).to_contain_text("trying")
    with table.expect_request(re.compile(r"/wish-searches/\d+/stop")):
        form.get_by_role("button", name="Stop").click()
    expect(form.get_by_role("status")).to_contain_text("stopping")
    held[0].fulfill(status=422, json=STOPPED)
    expect(form.get_by_role("alert")).to_contain_text("was stopped")
    expect(form.get_by_role("button", name="Look")).to_be_enabled()


def test_a_wish_that_an_edit_breaks_is_told_and_solved_again(table: Page) -> None:
    form = wish_form(table)
    wished(form, "flare", AROUND, "120")
    form.get_by_role("button", name="Take it").click()
    wishes = step(table, "skirt-1").get_by_label("Made to measure")
    expect(wishes).to_be_visible()
    step(table, "skirt-1").get_by_label("hip ease").fill("9")
    step(table, "skirt-1").get_by_role("button", name="Keep").click()
    expect(wishes).to_contain_text(re.compile(r"measures 12\d\.\d\d cm"))
    wishes.get_by_role("button", name="solve again").click()
    expect(wishes).not_to_contain_text("measures")


def test_why_an_edge_is_so_is_answered_at_the_edge(table: Page) -> None:
    box = table.locator(f'[data-edge="{HEM}"]').bounding_box()
    assert box
    table.mouse.click(box["x"] + box["width"] * 0.3, box["y"] + 1)
    card = table.get_by_role("region", name="Why is it so?")
    card.get_by_role("button", name="why is it so?").click()
    expect(card).to_contain_text("Draft skirt made it")
    expect(card).to_contain_text("hip girth")
    expect(card.locator("td").first).to_be_visible()
    card.get_by_role("button", name="Draft skirt").click()
    expect(step(table, "skirt-1").get_by_label("length", exact=True)).to_be_visible()
