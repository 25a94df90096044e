"""A style of many pieces in small windows: words lie apart, a field in use is seen, a slip is held."""

import itertools
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from support.new_style import opened, put_from_rack
from support.workroom_page import LOW, TABLET, UPRIGHT, WIDE, Workroom

pytestmark = pytest.mark.browser

UPRIGHT_TABLET: ViewportSize = {"width": 820, "height": 1180}
SIZES = {"wide": WIDE, "tablet": TABLET, "upright": UPRIGHT_TABLET}

BOXES = """(nodes) => nodes.map((node) => {
  const { left, right, top, bottom } = node.getBoundingClientRect();
  const piece = node.closest("[data-piece]")?.dataset.piece;
  return { piece, said: node.textContent.trim(), left, right, top, bottom };
})"""

COVERED = """(field) => {
  const { left, width, bottom } = field.getBoundingClientRect();
  return Boolean(document.elementFromPoint(left + width / 2, bottom - 3)?.closest(".acts"));
}"""

UNDER = """(field) => {
  const list = field.closest("ol");
  list.scrollTop += field.getBoundingClientRect().bottom - list.getBoundingClientRect().bottom;
}"""

HAS_ROOM = """(list) => {
  const style = getComputedStyle(list);
  const pen = document.createElement("canvas").getContext("2d");
  pen.font = `${style.fontSize} ${style.fontFamily}`;
  const arrow = 20;
  const room = list.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - arrow;
  return pen.measureText(list.selectedOptions[0].textContent.trim()).width <= room;
}"""

Box = dict[str, Any]


def jacket(workroom: Workroom, size: ViewportSize) -> Page:
    """The tailored jacket of the rack on the table."""
    style = put_from_rack(workroom, "S-212", set_from_data(BODY_OF_PICTURES))
    page = opened(workroom, style, "bodice", size)
    expect(page.locator(".proven")).to_contain_text("✓")
    return page


def boxes(nodes: Locator) -> list[Box]:
    found: list[Box] = nodes.evaluate_all(BOXES)
    return found


def lie_apart(a: Box, b: Box) -> bool:
    """Whether two boxes share nothing; a pixel of the letters' own room may touch."""
    across: float = min(a["right"], b["right"]) - max(a["left"], b["left"])
    down: float = min(a["bottom"], b["bottom"]) - max(a["top"], b["top"])
    return across <= 1 or down <= 1


def lapel_row(page: Page) -> Locator:
    return page.locator("[data-step]").filter(has_text="Notched lapel")


def lapel_form(page: Page) -> Locator:
    lapel_row(page).locator("button.head").click()
    return lapel_row(page).locator("form")


@pytest.mark.parametrize("size", SIZES)
def test_the_words_of_the_pieces_lie_apart_and_below_the_acts(workroom: Workroom, size: str) -> None:
    page = jacket(workroom, SIZES[size])
    titles = [box for box in boxes(page.locator("[data-piece] .strong")) if box["right"] > box["left"]]
    assert len(titles) >= 10
    pairs = [(a, b) for a, b in itertools.combinations(titles, 2) if a["piece"] != b["piece"]]
    assert [(a["said"], b["said"]) for a, b in pairs if not lie_apart(a, b)] == []
    acts = boxes(page.locator(".said > *"))
    pieces = boxes(page.locator("path.paper"))
    assert len(pieces) >= 12
    assert all(lie_apart(act, piece) for act in acts for piece in pieces)


@pytest.mark.parametrize("size", SIZES)
def test_a_field_that_has_the_keyboard_is_never_under_keep(workroom: Workroom, size: str) -> None:
    page = jacket(workroom, SIZES[size])
    form = lapel_form(page)
    fields = form.locator("input, select")
    expect(fields.first).to_be_focused()
    seen: list[str] = []
    for _ in range(60):
        page.keyboard.press("Tab")
        page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        field = page.locator("form :is(input, select):focus")
        if field.count():
            seen.append(field.evaluate("(one) => one.labels[0]?.textContent ?? ''"))
            assert not field.evaluate(COVERED), seen[-1]
    assert len(set(seen)) > 10


def test_a_field_that_lay_under_keep_is_brought_above_it_when_it_is_typed_in(workroom: Workroom) -> None:
    page = jacket(workroom, LOW)
    form = lapel_form(page)
    lapel = form.get_by_label("lapel", exact=True)
    lapel.evaluate(UNDER)
    assert lapel.evaluate(COVERED)
    lapel.evaluate("(field) => field.focus({ preventScroll: true })")  # as by a press on what is seen of it
    assert not lapel.evaluate(COVERED)


def test_a_name_chosen_in_a_form_is_read_on_an_upright_tablet(workroom: Workroom) -> None:
    form = lapel_form(jacket(workroom, UPRIGHT))
    names = form.locator("select", has=form.page.locator("option", has_text="neck"))
    assert names.count() >= 6
    assert [name.input_value() for name in names.all() if not name.evaluate(HAS_ROOM)] == []


def test_enter_on_an_impossible_number_keeps_the_form_open_and_a_second_one_stores_it(
    workroom: Workroom,
) -> None:
    page = jacket(workroom, WIDE)
    form = lapel_form(page)
    lapel = form.get_by_label("lapel", exact=True)
    lapel.fill("-4")
    lapel.press("Enter")
    expect(form.get_by_role("alert")).to_contain_text("must be more than zero")
    expect(form.get_by_role("button", name="Keep anyway")).to_be_visible()
    expect(page.get_by_text("it cannot be done")).to_have_count(0)
    lapel.press("Enter")
    expect(page.get_by_text("it cannot be done")).to_be_visible()
    expect(form).to_have_count(0)


def test_a_corrected_number_is_warned_of_anew(workroom: Workroom) -> None:
    page = jacket(workroom, WIDE)
    form = lapel_form(page)
    lapel = form.get_by_label("lapel", exact=True)
    lapel.fill("-4")
    lapel.press("Enter")
    expect(form.get_by_role("alert")).to_be_visible()
    lapel.fill("-3")
    lapel.press("Enter")
    expect(form.get_by_role("alert")).to_contain_text("-3")
    expect(lapel).to_be_visible()
    lapel.fill("8")
    lapel.press("Enter")
    expect(form).to_have_count(0)
    expect(lapel_row(page).locator(".sentence")).to_contain_text("lapel 8 cm")


def test_the_number_of_a_line_of_the_sewing_order_stands_at_its_first_words(workroom: Workroom) -> None:
    page = jacket(workroom, TABLET)
    page.get_by_role("button", name="sewing order").click()
    listed = page.get_by_label("Sewing order", exact=True).locator("li")
    expect(listed.first).to_be_visible()
    words = boxes(listed.locator("> div"))
    lines = boxes(listed)
    assert any(one["bottom"] - one["top"] > 36 for one in words), "a line is broken"
    assert all(0 <= one["top"] - line["top"] < 6 for one, line in zip(words, lines, strict=True))
    buttons = boxes(listed.get_by_role("button"))
    assert {round(one["left"]) for one in [*buttons, *words]} == {round(words[0]["left"])}


def test_mere_notes_are_not_said_to_be_to_check(workroom: Workroom) -> None:
    """Of the bias slip there are more of them than the list shows at once."""
    style = put_from_rack(workroom, "S-210", set_from_data(BODY_OF_PICTURES))
    page = opened(workroom, style, "dress", WIDE)
    expect(page.locator(".proven")).to_contain_text("✓")
    kinds = page.get_by_role("region", name="To check").locator("li .hidden")
    expect(kinds.last).to_have_text("for the record:")
    expect(page.get_by_role("button", name="more notes")).to_be_visible()
