"""What was typed into a step and not kept is there again, in a tab that was closed too."""

import pytest
from playwright.sync_api import Page, expect

from support.workroom_page import Workroom, edge_path, step, until_drawn

pytestmark = pytest.mark.browser

HEM = "skirt.front/hem"


def again(table: Page) -> Page:
    """The same address in a new tab, the old one closed."""
    context, address = table.context, table.url
    table.close()
    fresh = context.new_page()
    fresh.goto(address)
    return fresh


def test_a_typed_field_outlives_the_tab_and_is_looked_at_again(workroom: Workroom, table: Page) -> None:
    before = edge_path(table, HEM)
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("length", exact=True).fill("50")
    until_drawn(table, HEM, before)
    fresh = again(table)
    row = step(fresh, "skirt-1")
    expect(row).to_contain_text("something typed here is not kept yet")
    assert edge_path(fresh, HEM) == before, "it is not kept"
    row.locator(".head").click()
    expect(row.get_by_label("length", exact=True)).to_have_value("50")
    expect(row).to_contain_text("typed before, not kept yet")
    until_drawn(fresh, HEM, before)
    fresh.get_by_role("button", name="Keep").click()
    expect(row.locator(".sentence")).to_contain_text("length 50 cm")
    expect(row).not_to_contain_text("not kept yet")


def test_what_is_undone_is_forgotten(workroom: Workroom, table: Page) -> None:
    before = edge_path(table, HEM)
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("length", exact=True).fill("50")
    until_drawn(table, HEM, before)
    table.keyboard.press("Escape")
    fresh = again(table)
    expect(step(fresh, "skirt-1")).to_be_visible()
    expect(step(fresh, "skirt-1")).not_to_contain_text("not kept yet")


def test_a_step_that_was_only_begun_is_found_again(workroom: Workroom, table: Page) -> None:
    table.get_by_label("What next?").fill("longer")
    table.keyboard.press("Enter")
    table.locator(".next form").get_by_label("amount").fill("5")
    fresh = again(table)
    begun = fresh.locator(".next .begun")
    expect(begun).to_contain_text("Begun, not kept:")
    begun.get_by_role("button").click()
    expect(fresh.locator(".next form").get_by_label("amount")).to_have_value("5")
    fresh.locator(".next form").get_by_role("button", name="Undo").click()
    expect(begun).to_have_count(0)
