"""A style of the rack, chosen by its picture, run on a body in a real browser."""

import pytest
from playwright.sync_api import expect

from notchbook.body import MeasureSet
from support.new_style import begun, put_body
from support.stretch_bodies import WHOLE_WOMAN
from support.trouser_bodies import WOMAN
from support.workroom_page import Workroom

pytestmark = pytest.mark.browser

NAME = "Vera P."


def test_a_style_of_the_rack_is_run_on_a_body_with_the_keys(workroom: Workroom) -> None:
    put_body(workroom, MeasureSet.from_mm(NAME, WHOLE_WOMAN | WOMAN, population="women"))
    page = workroom.open()
    form = begun(page, "skirt", NAME)
    form.get_by_role("radio", name="from a block").focus()
    page.keyboard.press("ArrowRight")
    tiles = form.get_by_role("radio")
    trousers = form.get_by_role("radio", name="Tailored trousers S-205")
    trousers.check(force=True)
    expect(form.get_by_text("Straight trousers for a lighthouse keeper")).to_be_visible()
    picture = form.locator("label", has=trousers).locator("img")
    expect(picture).not_to_have_js_property("naturalWidth", 0)
    assert tiles.count() >= 12
    form.get_by_role("button", name="Draft it").click()
    expect(page.locator('[data-piece="trousers.front"]').first).to_be_visible()
    expect(page.get_by_label("Style", exact=True)).to_contain_text("Tailored trousers")


def test_a_body_with_too_few_measures_is_told_before_a_style_is_run(workroom: Workroom) -> None:
    put_body(workroom, MeasureSet.from_mm(NAME, {"bust_girth": 920.0}, population="women"))
    page = workroom.open()
    form = begun(page, "skirt", NAME)
    form.get_by_text("from the rack", exact=True).click()
    expect(form.get_by_text("measures missing:")).to_be_visible()
    expect(form.get_by_role("button", name="Draft it")).to_be_disabled()
