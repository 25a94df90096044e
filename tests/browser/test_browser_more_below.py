"""What does not fit scrolls inside its own panel and says that more is below; no scraps of others."""

import re

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from lower_sheets import lower_bodies
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from support.new_style import opened, put_from_rack
from support.workroom_page import LOW, TABLET, UPRIGHT, Workroom

pytestmark = pytest.mark.browser

SIZES = {"low": LOW, "tablet": TABLET, "upright": UPRIGHT}
MOST_STEPS = 40


def slip(workroom: Workroom, size: ViewportSize) -> Page:
    """The bias slip of the rack on a full body, of which much is told, its papers looked at."""
    style = put_from_rack(workroom, "S-210", dict(lower_bodies())["plus-128"])
    page = opened(workroom, style, "dress", size)
    expect(page.locator(".proven")).to_contain_text("the papers too")
    return page


def jacket(workroom: Workroom, size: ViewportSize) -> Page:
    """The tailored jacket of the rack on the table, its papers looked at."""
    style = put_from_rack(workroom, "S-212", set_from_data(BODY_OF_PICTURES))
    page = opened(workroom, style, "bodice", size)
    expect(page.locator(".proven")).to_contain_text("the papers too")
    return page


def to_the_end(panel: Locator) -> int:
    """Press the sign until it is gone, and how often it was pressed."""
    sign = panel.get_by_text("more below")
    for times in range(MOST_STEPS):
        if not sign.evaluate_all("(signs) => { signs.forEach((one) => one.click()); return signs.length; }"):
            return times
        panel.page.wait_for_timeout(60)
    raise AssertionError("the sign never goes")


@pytest.mark.parametrize("size", SIZES)
def test_the_findings_say_that_more_is_below_and_lead_to_the_last(workroom: Workroom, size: str) -> None:
    page = slip(workroom, SIZES[size])
    margin = page.get_by_role("region", name="To check")
    margin.get_by_role("button", name=re.compile("^[0-9]+ more")).click()  # all that is found
    sign = margin.get_by_text("more below")
    expect(sign).to_be_in_viewport(ratio=1)
    inside, around = sign.bounding_box(), margin.bounding_box()
    assert inside and around
    assert inside["y"] + inside["height"] == pytest.approx(around["y"] + around["height"], abs=1.0)
    assert around["y"] + around["height"] <= SIZES[size]["height"]
    assert to_the_end(margin) > 0
    expect(margin.locator(".proven")).to_be_in_viewport(ratio=1)
    assert margin.evaluate("(box) => box.scrollHeight - box.clientHeight - box.scrollTop < 16")
    margin.evaluate("(box) => box.scrollTo(0, 0)")
    expect(sign).to_be_visible()


def test_a_short_list_has_no_sign(workroom: Workroom) -> None:
    page = workroom.open(size=LOW)
    expect(page.locator(".proven")).to_contain_text("the papers too")
    expect(page.get_by_text("more below")).to_have_count(0)


@pytest.mark.parametrize("size", SIZES)
def test_the_sewing_order_covers_the_findings_whole(workroom: Workroom, size: str) -> None:
    page = jacket(workroom, SIZES[size])
    page.get_by_role("button", name="sewing order").click()
    order = page.get_by_label("Sewing order", exact=True)
    covering, covered = order.bounding_box(), page.get_by_role("region", name="To check").bounding_box()
    assert covering and covered
    assert covering["x"] <= covered["x"]
    assert covering["y"] <= covered["y"]
    assert covering["x"] + covering["width"] >= covered["x"] + covered["width"] - 1
    assert covering["y"] + covering["height"] >= covered["y"] + covered["height"] - 1
    assert to_the_end(order) > 0
    expect(order.locator("li").last).to_be_in_viewport(ratio=1)


def test_upright_the_reason_of_an_edge_lies_on_no_finding(workroom: Workroom) -> None:
    page = jacket(workroom, UPRIGHT)
    page.locator('[data-piece="bodice.front"] [data-edge]').first.focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="why is it so?").click()
    expect(page.get_by_text("what moves it", exact=True)).to_be_visible()
    card, margin = page.locator(".why").bounding_box(), page.locator(".margin").bounding_box()
    assert card and margin
    assert card["y"] + card["height"] <= margin["y"]


def test_what_is_to_check_stands_before_what_is_for_the_record(workroom: Workroom) -> None:
    """A hem 9 mm longer at one side is wrong; the notes that the drafting left come after it."""
    page = workroom.open()
    page.get_by_label("What next?").fill("longer")
    page.keyboard.press("Enter")
    form = page.locator(".next form")
    form.locator("select").first.select_option("skirt.front/hem")
    form.get_by_label("amount").fill("9 mm")
    page.keyboard.press("Enter")
    kinds = page.get_by_role("region", name="To check").locator("li .hidden")
    expect(kinds.first).to_have_text("wrong:")
    grades = {"wrong:": 0, "look again:": 1, "for the record:": 2}
    found = [grades[text] for text in kinds.all_inner_texts()]
    assert found == sorted(found)
