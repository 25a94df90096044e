"""The most used ways from sloper to style, on the table by the forms alone: a dart moved, a princess seam,
gathers, pleats, a deeper neckline. The body is invented."""

import pytest
from playwright.sync_api import Locator, Page, expect

from notchbook.app.drafting import draft_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from support.held_answers import HeldAnswers
from support.workroom_page import Workroom, edge_path, step, until_drawn

pytestmark = pytest.mark.browser


def sloper(workroom: Workroom, block: str) -> Page:
    """The table with a block drafted for an invented body."""
    studio = workroom.kept()
    data = {**BODY_OF_PICTURES, "name": "Rita M.", "unit": "cm", "population": "women"}
    body = studio.new_body(set_from_data(data)).id
    style = studio.new_style(draft_recipe(block, studio.open_body(body).measures, {}), body)
    studio.close()
    page = workroom.open()
    page.get_by_label("Style", exact=True).select_option(value=str(style.id))
    expect(step(page, f"{block}-1")).to_be_visible()
    return page


def asked(page: Page, words: str) -> Locator:
    """The form of the step that these words find first."""
    page.get_by_label("What next?").fill(words)
    page.keyboard.press("Enter")
    return page.locator(".next form")


def chosen(form: Locator, field: str, words: str, nth: int = 0) -> None:
    form.get_by_label(field, exact=True).nth(nth).select_option(label=words)


def kept(page: Page, form: Locator, record: str) -> Locator:
    """The step once it is kept and has run."""
    expect(form.get_by_role("alert")).to_have_count(0)
    form.get_by_role("button", name="Keep", exact=True).click()
    expect(step(page, record)).to_be_visible()
    expect(step(page, record)).not_to_contain_text("it cannot be done")
    return step(page, record)


def test_the_bust_dart_is_moved_to_the_shoulder(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    before = edge_path(page, "bodice.front/armhole")
    form = asked(page, "move dart")
    chosen(form, "dart", "front, bust dart")
    chosen(form, "edge", "front, shoulder")
    expect(form.get_by_role("alert")).to_have_count(0)  # what is not filled in yet is not refused
    expect(form.get_by_label("counted from")).to_have_value("bodice.front/side_neck_point")
    form.get_by_label("distance").fill("6")
    until_drawn(page, "bodice.front/armhole", before)
    kept(page, form, "transfer_dart-1")
    expect(page.locator(".margin")).to_contain_text("took over")


def test_enter_before_the_steps_are_read_counts_when_they_are(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    held = HeldAnswers(page, "**/steps?*")
    page.reload()
    form = asked(page, "princess")
    expect(form).to_have_count(0)
    held.let_all_go()
    expect(form.get_by_label("over bust point", exact=True)).to_be_visible()


def test_a_dart_picked_on_the_sheet_is_in_the_form_already(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    leg = page.locator('[data-edge^="bodice.front/bust_dart/"]').first
    leg.focus()
    page.keyboard.press("Enter")
    form = asked(page, "shorten dart")
    expect(form.get_by_label("dart", exact=True)).to_have_value("bodice.front/bust_dart")


def test_an_armhole_princess_from_darts(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    form = asked(page, "princess")
    chosen(form, "center edge", "front, center front")
    chosen(form, "edge", "front, armhole")
    form.get_by_label("distance").fill("8")
    chosen(form, "ends in dart", "front, waist dart")
    chosen(form, "over bust point", "front, bust point")
    chosen(form, "closes dart too", "front, bust dart")
    kept(page, form, "princess_seam-1")
    for panel in ("front_center", "front_side"):
        expect(page.locator(f'[data-piece="princess_seam.{panel}"]')).to_be_attached()


def test_a_waist_is_gathered_and_shows_its_limits(workroom: Workroom) -> None:
    page = sloper(workroom, "skirt")
    form = asked(page, "gathers")
    chosen(form, "edge", "front, waist")
    chosen(form, "edge across", "front, hem")
    expect(form.get_by_label("counted from")).to_have_value("skirt.front/waist_center")
    expect(form.get_by_label("its end, same side")).to_have_value("skirt.front/hem_center")
    chosen(form, "counted from", "waist side")
    expect(form.get_by_label("its end, same side")).to_have_value("skirt.front/hem_side")
    form.get_by_role("button", name="more").click()
    form.get_by_label("begins at").fill("3")
    kept(page, form, "gather_edge-1")
    expect(page.locator("[data-drawn-in]")).to_have_count(3)  # before, between and behind the two darts
    expect(page.locator("[data-drawn-in] .limit")).to_have_count(6)
    expect(page.locator("[data-drawn-in] title").first).to_contain_text("gathered,")


def test_pleats_show_which_way_they_are_laid(workroom: Workroom) -> None:
    page = sloper(workroom, "skirt")
    form = asked(page, "pleat")
    chosen(form, "edge", "back, waist")
    chosen(form, "edge across", "back, hem")
    form.get_by_label("how many").fill("6")
    expect(form.get_by_role("alert")).to_be_visible()  # six of 6 cm have no room, which is said
    form.get_by_label("first lies at").fill("2")
    form.get_by_label("spacing").fill("2.5")
    form.get_by_label("depth", exact=True).fill("1")
    kept(page, form, "pleats-1")
    expect(page.locator("[data-fold]")).to_have_count(6)


def test_a_deeper_neckline_on_front_and_back_by_keyboard(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    form = asked(page, "deeper neck")
    chosen(form, "edge", "front, neck")
    expect(form.get_by_label("its end at the center")).to_have_value("bodice.front/neck_pit")
    form.get_by_label("lower by").fill("5")
    form.get_by_role("button", name="one more neck").press("Enter")
    expect(form.get_by_label("edge", exact=True).nth(1)).to_be_focused()
    chosen(form, "edge", "back, neck", 1)
    expect(form.get_by_label("its end at the center").nth(1)).to_have_value("bodice.back/nape")
    expect(form.locator(".help")).not_to_be_empty()
    form.get_by_role("button", name="without neck 2").press("Enter")
    expect(form.get_by_label("edge", exact=True)).to_have_count(1)
    expect(form.get_by_role("button", name="one more neck")).to_be_focused()
    form.get_by_label("shape").select_option(label="V")
    form.get_by_label("lower by").press("Enter")
    expect(step(page, "change_neckline-1")).to_be_visible()


def test_a_seam_is_chosen_from_the_seams(workroom: Workroom) -> None:
    page = sloper(workroom, "bodice")
    form = asked(page, "declare ease")
    expect(form.get_by_label("seam", exact=True).locator("option")).not_to_have_count(1)
