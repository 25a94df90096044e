"""A style of the rack, chosen by its picture, run on a body in a real browser."""

import pytest
from playwright.sync_api import Locator, ViewportSize, expect

from notchbook.body import MeasureSet
from support.new_style import begun, put_body
from support.stretch_bodies import WHOLE_WOMAN
from support.trouser_bodies import WOMAN
from support.workroom_page import TABLET, WIDE, Workroom

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
    picture = form.locator("label", has_text="S-205").locator("img")
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


@pytest.mark.parametrize("size", [WIDE, TABLET], ids=["wide", "tablet"])
def test_what_is_asked_of_her_is_in_view_above_the_acts(workroom: Workroom, size: ViewportSize) -> None:
    form = with_few(workroom, size)
    form.get_by_role("button", name="estimate them").click()
    women = form.get_by_role("button", name="women", exact=True)
    expect(women).to_be_visible()
    asked, acts = women.bounding_box(), form.get_by_role("button", name="Leave").bounding_box()
    assert asked
    assert acts
    assert asked["y"] + asked["height"] <= acts["y"]
    women.click(timeout=2000)
    expect(form.get_by_text("estimated:")).to_be_visible()


def test_an_old_question_goes_with_the_body_and_with_the_style_that_it_was_of(workroom: Workroom) -> None:
    form = with_few(workroom)
    question = form.get_by_text("Estimated among whom?")
    form.get_by_role("button", name="estimate them").click()
    expect(question).to_be_visible()
    form.get_by_role("radio", name="Work shirt S-204").check(force=True)
    expect(question).to_have_count(0)
    form.get_by_role("button", name="estimate them").click()
    expect(question).to_be_visible()
    form.get_by_label("Drafted for").select_option(label="Form A")
    expect(question).to_have_count(0)


def test_a_dress_form_is_not_asked_for_its_arms(workroom: Workroom) -> None:
    form = with_few(workroom)
    form.get_by_label("Drafted for").select_option(label="Form A")
    expect(form.get_by_text("Not on a dress form")).to_contain_text("arm length")
    expect(form.get_by_role("button", name="estimate them")).to_have_count(0)


def test_the_keys_stay_in_the_form_until_escape(workroom: Workroom) -> None:
    form = with_few(workroom)
    page = form.page
    within = "() => Boolean(document.activeElement.closest(\"form[aria-label='New style']\"))"
    reached: set[str] = set()
    for key in ["Tab"] * 12 + ["Shift+Tab"] * 12:
        page.keyboard.press(key)
        assert page.evaluate(within)
        reached.add(page.evaluate("() => document.activeElement.tagName"))
    assert reached == {"INPUT", "SELECT", "BUTTON"}
    page.evaluate("() => document.activeElement.blur()")
    page.keyboard.press("Escape")
    expect(form).to_have_count(0)
    expect(page.get_by_label("Style", exact=True)).to_be_focused()


def with_few(workroom: Workroom, size: ViewportSize = WIDE) -> Locator:
    """The form with the jacket of the rack, for a body of few measures and of no population."""
    put_body(
        workroom, MeasureSet.from_mm(NAME, {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0})
    )
    form = begun(workroom.open(size=size), "skirt", NAME)
    form.get_by_text("from the rack", exact=True).click()
    form.get_by_role("radio", name="Tailored jacket S-212").check(force=True)
    expect(form.get_by_text("measures missing:")).to_be_visible()
    return form
