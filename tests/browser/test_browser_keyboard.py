"""A run without a mouse, and what a reader of the screen is told."""

import pytest
from playwright.sync_api import Page, expect

from support.workroom_page import edge_path, step, until_drawn

pytestmark = pytest.mark.browser


def test_what_is_reached_by_keyboard_comes_into_view(table: Page) -> None:
    table.mouse.move(600, 300)
    for _ in range(4):
        table.mouse.wheel(0, -400)
    band = table.locator('[data-piece="waistband.band"]')
    table.keyboard.press("Tab")
    band.focus()
    table.keyboard.press("ArrowRight")
    box = table.locator("[data-edge]:focus").bounding_box()
    assert box
    assert 0 < box["y"] < 900


NAMELESS = """
() => [...document.querySelectorAll('button, input, select, a, [tabindex="0"]')]
  .filter(node => !node.closest('[aria-hidden="true"]'))
  .filter(node => !(node.getAttribute('aria-label') || node.getAttribute('aria-labelledby')
    || node.textContent.trim() || node.labels?.length))
  .map(node => node.outerHTML.slice(0, 120))
"""


def tab_to(page: Page, selector: str) -> None:
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("selector => document.activeElement.matches(selector)", selector):
            return
    raise AssertionError(f"Tab never came to {selector}")


def test_a_step_is_changed_without_a_mouse(table: Page) -> None:
    before = edge_path(table, "skirt.front/hem")
    tab_to(table, '[data-step="skirt-1"] .head')
    table.keyboard.press("Enter")
    expect(step(table, "skirt-1").get_by_label("waist ease")).to_be_focused()
    table.keyboard.press("Tab")
    table.keyboard.press("Tab")
    table.keyboard.press("Control+a")
    table.keyboard.type("55")
    until_drawn(table, "skirt.front/hem", before)
    table.keyboard.press("Enter")
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("length 55 cm")
    expect(step(table, "skirt-1").locator(".head")).to_be_focused()


def test_a_step_is_added_without_a_mouse(table: Page) -> None:
    tab_to(table, ".next input")
    table.keyboard.type("hem")
    table.keyboard.press("Enter")
    expect(table.locator(".next form select").first).to_be_focused()
    table.keyboard.type("back, hem")
    table.keyboard.press("Escape")
    expect(table.get_by_label("What next?")).to_be_focused()


def test_tab_goes_from_piece_to_piece_and_arrows_from_edge_to_edge(table: Page) -> None:
    table.locator(".frame").focus()
    seen = []
    for _ in range(3):
        table.keyboard.press("Tab")
        seen.append(table.evaluate("document.activeElement.dataset.piece"))
    assert sorted(seen) == ["skirt.back", "skirt.front", "waistband.band"]
    table.locator('[data-piece="skirt.front"]').focus()
    table.keyboard.press("ArrowRight")
    first = table.evaluate("document.activeElement.dataset.edge")
    table.keyboard.press("ArrowRight")
    second = table.evaluate("document.activeElement.dataset.edge")
    assert first and second and first != second
    expect(table.locator(".label").first).to_be_visible()
    table.keyboard.press("ArrowLeft")
    assert table.evaluate("document.activeElement.dataset.edge") == first
    table.keyboard.press("Escape")
    assert table.evaluate("document.activeElement.dataset.piece") == "skirt.front"


def test_the_sheet_moves_by_keys(table: Page) -> None:
    table.locator(".frame").focus()
    sheet = table.locator("svg[data-scale]")
    before = sheet.get_attribute("data-scale") or ""
    table.keyboard.press("+")
    expect(sheet).not_to_have_attribute("data-scale", before)
    place = table.locator('[data-piece="skirt.front"]').bounding_box()
    table.keyboard.press("ArrowLeft")
    moved = table.locator('[data-piece="skirt.front"]').bounding_box()
    assert place and moved
    assert moved["x"] == pytest.approx(place["x"] + 60, abs=1)


def test_everything_that_can_be_reached_has_a_name(table: Page) -> None:
    assert table.evaluate(NAMELESS) == []
    step(table, "waistband-1").locator(".head").click()
    assert table.evaluate(NAMELESS) == []
    table.get_by_role("link", name="Measures").click()
    table.wait_for_selector("[data-measure]")
    assert table.evaluate(NAMELESS) == []


def test_pieces_and_edges_are_told(table: Page) -> None:
    expect(table.get_by_role("group", name="Front, cut 1 on fold self")).to_be_attached()
    expect(table.get_by_role("button", name="side seam, 64.3 cm")).to_have_count(2)
    expect(table.locator("h1")).to_have_text("Notchbook")
    expect(table.locator("main")).to_have_count(1)
    assert table.locator("html").get_attribute("lang") == "en"
