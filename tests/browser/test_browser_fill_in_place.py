"""The button that fills what a garment needs stays where it is while the answers of the server come."""

from typing import Any

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from notchbook.body import MeasureSet
from support.held_answers import HeldAnswers
from support.new_style import put_body
from support.workroom_page import LOW, TABLET, UPRIGHT, Workroom

pytestmark = pytest.mark.browser

NAME = "Vera P."
FEW = {"height": 1680.0, "waist_girth": 740.0, "hip_girth": 980.0}


def place(page: Page) -> Any:
    """Where the button stands, awaited or there: its left edge, its upper edge and its height."""
    box = page.get_by_role("region", name="Measure next").get_by_role("button", name="fill").bounding_box()
    return box and (box["x"], box["y"], box["height"])


@pytest.mark.parametrize("size", [LOW, TABLET, UPRIGHT], ids=["low", "tablet", "upright"])
def test_the_button_keeps_its_place(workroom: Workroom, size: ViewportSize) -> None:
    put_body(workroom, MeasureSet.from_mm(NAME, FEW, population="women"))
    page = workroom.open("measures", size)
    estimates, outlook = HeldAnswers(page, "**/estimates?*"), HeldAnswers(page, "**/next?*")
    page.get_by_label("Body", exact=True).select_option(label=NAME)
    following = page.get_by_role("region", name="Measure next")
    expect(following.get_by_role("button", name="fill with estimates")).to_be_disabled()
    awaited = place(page)
    estimates.let_all_go()
    fill = following.get_by_role("button", name="fill what")
    expect(fill).to_be_enabled()
    there = place(page)
    outlook.let_all_go()
    expect(following.get_by_text("Measure next", exact=True)).to_be_visible()
    expect(following.get_by_role("listitem").first).to_be_visible()
    assert place(page) == there == awaited
    fill.click()
    expect(page.locator('[data-measure="hip_depth"]')).to_contain_text("estimated ±")
