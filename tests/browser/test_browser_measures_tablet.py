"""The Measures room on a tablet: nothing cut, nothing to scroll sideways, boxes for a finger."""

import re

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from support.workroom_page import TABLET, UPRIGHT, WIDE, Workroom

pytestmark = pytest.mark.browser

FINGER = 44
"""px; the least size of a target for touch (WCAG 2.1, success criterion 2.5.5)."""

SIDEWAYS = """
() => [document.documentElement, ...document.querySelectorAll('main, main section')]
  .filter(node => node.scrollWidth > node.clientWidth + 1).map(node => node.className)
"""

OUTSIDE = """
() => [...document.querySelectorAll('main :is(input, select, button)')]
  .filter(node => node.getClientRects().length)
  .filter(node => node.getBoundingClientRect().left < 0 || node.getBoundingClientRect().right > innerWidth)
  .map(node => node.outerHTML.slice(0, 90))
"""

UNDESCRIBED = """
() => [...document.querySelectorAll('input[data-run]')].filter(node => {
  const names = ['aria-labelledby', 'aria-describedby'];
  const ids = names.flatMap(name => (node.getAttribute(name) ?? '').split(' '));
  return ids.some(id => !document.getElementById(id));
}).length
"""


@pytest.mark.parametrize("size", [WIDE, TABLET, UPRIGHT], ids=["desk", "tablet", "upright"])
def test_the_room_fits(workroom: Workroom, size: ViewportSize) -> None:
    page = workroom.open("measures", size)
    page.get_by_label("Lines on the sheet").select_option("all")
    page.locator('[data-measure="hip_girth"] input').first.focus()
    assert page.evaluate(SIDEWAYS) == []
    assert page.evaluate(OUTSIDE) == []
    figure = page.get_by_role("img", name="from the front, the back and the side").bounding_box()
    assert figure and figure["height"] > 200
    assert page.locator('[data-measure="hip_girth"] input').first.bounding_box()


@pytest.mark.parametrize("size", [TABLET, UPRIGHT], ids=["tablet", "upright"])
def test_boxes_are_large_enough_for_a_finger(workroom: Workroom, size: ViewportSize) -> None:
    page = workroom.open("measures", size, has_touch=True)
    for box in page.locator(".sheet :is(input, select)").all():
        place = box.bounding_box()
        assert place and place["height"] >= FINGER, box.evaluate("node => node.outerHTML.slice(0, 120)")
    page.locator('[data-measure="hip_depth"] input').first.tap()
    note = page.locator('[data-measure="hip_depth"]').get_by_role("button", name="note").bounding_box()
    assert note and note["height"] >= FINGER


def test_upright_the_figure_can_be_put_away(workroom: Workroom) -> None:
    page = workroom.open("measures", UPRIGHT)
    figure = page.get_by_role("img", name="from the front, the back and the side")
    expect(figure).to_be_visible()
    sheet = page.locator(".sheet").bounding_box()
    page.get_by_role("button", name="neither").click()
    expect(figure).to_have_count(0)
    larger = page.locator(".sheet").bounding_box()
    assert sheet and larger and larger["height"] > sheet["height"] + 150


def test_every_box_is_named_and_described(workroom: Workroom) -> None:
    page = workroom.open("measures")
    page.get_by_label("Lines on the sheet").select_option("all")
    assert page.evaluate(UNDESCRIBED) == 0
    waist = page.get_by_role("textbox", name="Waist girth again")
    expect(waist).to_have_count(1)
    expect(waist).to_have_accessible_description(re.compile("Round the natural waist.*Usual: .* ISO 8559-1"))
    assert page.locator('[data-measure="waist_girth"] [aria-live="polite"]').count() == 1


def test_what_is_doubted_is_told_by_words_and_not_by_color_alone(workroom: Workroom) -> None:
    page: Page = workroom.open("measures")
    page.locator('[data-measure="hip_depth"] input').fill("9")
    page.keyboard.press("Enter")
    said = page.locator('[data-measure="hip_depth"] [aria-live="polite"]')
    expect(said).to_contain_text("look again:")
