"""The table of every size with something in it: size, what, where; by keys, in small windows, on paper."""

import io
from dataclasses import replace

import pypdfium2
import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from notchbook.body.charts import remove_size, shipped_chart
from support.new_style import opened, put_from_rack
from support.workroom_page import LOW, TABLET, UPRIGHT, Workroom

pytestmark = pytest.mark.browser

CHART = "Small and large men"
SIZES = ("84", "100", "144")
LANDSCAPE = 1.3
"""Width over height of a sheet that lies, at least (A4 and letter: 1.41 and 1.29)."""


def checked(workroom: Workroom, size: ViewportSize) -> tuple[Page, Locator]:
    """The trousers of the rack, drawn for women, checked in sizes of men: the largest has a waist as large
    as the hip, so that there is something to look at."""
    style = put_from_rack(workroom, "S-205", set_from_data(BODY_OF_PICTURES))
    chart = replace(shipped_chart("men"), name=CHART)
    for label in chart.labels:
        chart = chart if label in SIZES else remove_size(chart, label)
    studio = workroom.kept()
    entry = studio.new_chart(chart).id
    studio.close()
    page = opened(workroom, style, "trousers", size)
    page.get_by_role("button", name="every size").click()
    table = page.get_by_role("region", name="Every size")
    table.get_by_role("combobox").select_option(value=str(entry))
    table.get_by_role("button", name="Check").click()
    expect(table.get_by_role("status")).to_contain_text(f"3 sizes of {CHART}: ")
    expect(table.locator('td[data-size="144"]')).to_have_text(
        "looklook"
    )  # the sign, and the word that is heard
    return page, table


def test_a_line_that_is_opened_says_it_of_each_size_in_words(workroom: Workroom) -> None:
    page, table = checked(workroom, LOW)
    row = table.locator("[data-row]").filter(has_text="as large as the hip")
    button = row.get_by_role("button")
    expect(button).to_have_attribute("aria-expanded", "false")
    button.focus()
    page.keyboard.press("Enter")
    expect(button).to_have_attribute("aria-expanded", "true")
    words = table.locator(f"id={button.get_attribute('aria-controls')}")
    expect(words.locator("dt")).to_have_text(["144"])
    expect(words.locator("dd")).to_contain_text("The waist is as large as the hip")
    expect(row.locator("td").last).not_to_be_empty()
    said = table.locator("tbody th button").all_inner_texts()
    assert all(text[0].isupper() for text in said), said
    page.keyboard.press("Space")
    expect(words).to_have_count(0)


@pytest.mark.parametrize("size", [LOW, TABLET, UPRIGHT], ids=["low", "tablet", "upright"])
def test_all_sizes_stand_in_the_window_and_the_head_stays(workroom: Workroom, size: ViewportSize) -> None:
    _, table = checked(workroom, size)
    frame = table.get_by_role("region", name="What is to check, by size")
    assert frame.evaluate("(box) => box.scrollWidth <= box.clientWidth")
    heads = table.locator("thead th")
    expect(heads.last).to_be_in_viewport(ratio=1)
    before = heads.last.bounding_box()
    frame.evaluate("(box) => box.scrollTo(0, box.scrollHeight)")
    assert heads.last.bounding_box() == before
    expect(table.locator("tbody tr").last).to_be_in_viewport(ratio=0.5)


def test_in_inches_the_unit_stands_once(workroom: Workroom) -> None:
    page, table = checked(workroom, LOW)
    page.get_by_label("inches").click()
    expect(table.locator("thead th").first).to_have_text("size; lengths in inches")
    cells = table.locator("td.worst").all_inner_texts()
    assert cells
    assert not [cell for cell in cells if "in" in cell or '"' in cell], cells


def test_on_paper_the_table_stands_alone_across_the_sheet(workroom: Workroom) -> None:
    page, _ = checked(workroom, LOW)
    with pypdfium2.PdfDocument(io.BytesIO(page.pdf(prefer_css_page_size=True))) as paper:
        text = "".join(sheet.get_textpage().get_text_range() for sheet in paper)
        width, height = paper[0].get_size()
    assert width / height > LANDSCAPE - 0.02
    for words in ("Every size of S-205 Tailored trousers", CHART, "144", "as large as the hip"):
        assert words in " ".join(text.split()), words
    for words in ("Pattern steps", "Notchbook", "Check again", "ease table", "more below"):
        assert words not in text, words


def test_the_table_of_one_style_is_not_shown_at_another(workroom: Workroom) -> None:
    other = put_from_rack(workroom, "S-203", set_from_data(BODY_OF_PICTURES))
    page, table = checked(workroom, LOW)
    page.get_by_label("Style", exact=True).select_option(value=str(other))
    expect(table.get_by_role("status")).to_have_count(0)
    page.route("**/sizes?*", lambda route: None)  # an answer that does not come
    with page.expect_request("**/sizes?*"):
        table.get_by_role("button", name="Check").click()
    expect(table.locator("[data-row]")).to_have_count(0)
    expect(table.get_by_role("status")).to_have_count(0)
