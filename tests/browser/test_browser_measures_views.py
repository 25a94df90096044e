"""The views beside the sheet in a real browser: compare, pad, size charts, import, personal data."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from notchbook.body import MeasureSet
from notchbook.body.charts import GARMENTS, nearest_size, shipped_chart
from support.workroom_page import TABLET, UPRIGHT, WIDE, Workroom

pytestmark = pytest.mark.browser

FINGER = 44
VIEWS = ("compare", "pad", "size charts", "import", "personal data")

VIEW_NAMES = {"measure": "Beside the sheet"}
"""Where a view is called otherwise than its word."""

CLIENTS = "Name\tBust (cm)\tWaist\tHip (cm)\nVera S.\t94.5\t30\t102\nNora B.\t90\t29 1/2\tabout 98\n"
"""Invented clients. Planted: the waist is in inches and does not say so, the hip may be the top hip, and one
cell is no number."""

SIZES = "Size\tS\tM\tL\nBust (cm)\t84\t92\t100\nWaist (cm)\t68\t76\t84\n"

SMALL = """
least => [...document.querySelectorAll('main :is(button, select, input:not([type]), textarea)')]
  .filter(node => node.getClientRects().length && node.getBoundingClientRect().height < least)
  .map(node => node.outerHTML.slice(0, 110))
"""

SIDEWAYS = """
() => [document.documentElement, ...document.querySelectorAll('main, main section')]
  .filter(node => node.scrollWidth > node.clientWidth + 1).map(node => node.className)
"""


def open_view(workroom: Workroom, view: str, body: str = "Rosa L.", size: ViewportSize = WIDE) -> Page:
    """A view of the Measures room for a body."""
    page = workroom.open("measures", size)
    with page.expect_response(re.compile(r"/api/bodies/\d+\?")):
        page.get_by_label("Body", exact=True).select_option(label=body)
    go(page, view)
    return page


def go(page: Page, view: str) -> None:
    page.get_by_role("navigation", name="Views").get_by_role("button", name=view, exact=True).click()
    expect(page.get_by_role("region", name=VIEW_NAMES.get(view, view), exact=True)).to_be_visible()


def on_disk(page: Page) -> None:
    expect(page.get_by_role("status").filter(has_text="on disk")).to_be_visible()


def kept(workroom: Workroom) -> dict[str, MeasureSet]:
    """All bodies as another program would read them from the book."""
    studio = workroom.kept()
    try:
        return {measures.name: measures for _entry, measures in studio.all_bodies()}
    finally:
        studio.close()


def cell(page: Page, measure: str, size: str) -> Locator:
    return page.get_by_role("textbox", name=f"{measure}, size {size}", exact=True)


def test_the_nearest_size_of_a_form_whose_label_lies(workroom: Workroom) -> None:
    form, chart = kept(workroom)["Form B"], shipped_chart("women")
    sizes = {garment: nearest_size(form, chart, garment).size for garment in GARMENTS}
    page = open_view(workroom, "compare", "Form B")
    view = page.get_by_role("region", name="compare")
    expect(view.get_by_role("heading")).to_have_text(
        re.compile(rf"^Nearest to size {sizes['dress']} overall.* The label says 12\.$")
    )
    bust = view.get_by_role("row", name=re.compile("^Bust girth"))
    expect(bust).to_contain_text("86.5 cm")
    expect(bust.get_by_role("img", name="Bust girth: between 84 and 88, nearer 88")).to_be_visible()
    page.get_by_role("button", name="inches").click()
    expect(bust).to_contain_text("34 1/16″")
    page.get_by_label("for a").select_option("skirt")
    expect(view.get_by_role("heading")).to_contain_text(f"Nearest to size {sizes['skirt']} overall")


def test_against_another_form_and_against_the_style_on_the_table(workroom: Workroom) -> None:
    page = open_view(workroom, "compare")
    against = page.get_by_label("Rosa L. against")
    against.select_option(label="Form C")
    view = page.get_by_role("region", name="compare")
    expect(view.get_by_role("row", name=re.compile("^Hip girth"))).to_contain_text("-6.7 cm")
    against.select_option(label="S-101 Straight skirt")
    expect(view.get_by_role("heading", level=2)).to_contain_text("Too tight for Rosa L. as drafted")
    expect(view.get_by_role("row", name=re.compile("^Waist girth")).first).to_contain_text(
        "too tight by 6.6 cm"
    )


def test_padding_in_centimeters_and_in_inches(workroom: Workroom) -> None:
    page = open_view(workroom, "pad")
    view = page.get_by_role("region", name="pad")
    expect(view.get_by_role("heading", level=2)).to_have_text(
        "For Rosa L.: of the forms in the book Form C needs least."
    )
    hip = view.get_by_role("row", name=re.compile("^Hip girth"))
    expect(hip).to_contain_text("1 layer in front, 3 layers behind, then 102.8 cm")
    layer = view.get_by_label("one layer of wadding")
    layer.fill("1")
    layer.press("Enter")
    expect(hip).to_contain_text("1 layer in front, 1 layer behind, then 102.8 cm")
    page.get_by_role("button", name="inches").click()
    expect(hip).to_contain_text("1 layer in front, 3 layers behind, then 40")
    layer.fill("1/4")
    layer.press("Enter")
    expect(hip).to_contain_text("1 layer in front, 2 layers behind")
    layer.fill("thick")
    layer.press("Enter")
    expect(view.get_by_role("alert")).to_contain_text("not a number")


def test_what_a_plan_does_not_know_is_told(workroom: Workroom) -> None:
    page = open_view(workroom, "pad", "Marta V.")
    view = page.get_by_role("region", name="pad")
    expect(view.get_by_role("heading", level=2)).to_contain_text("so far as known: bust girth not compared")
    expect(view).to_contain_text("Front and back by a usual share, no arcs measured: ")
    expect(view).to_contain_text("Not compared, so nothing is known there.")
    layer = view.get_by_label("one layer of wadding")
    page.get_by_role("button", name="inches").click()
    expect(layer).to_have_attribute("placeholder", "5 mm")
    layer.fill("3/16")
    layer.press("Enter")
    expect(layer).to_have_attribute("placeholder", "3/16″")


def test_a_form_that_is_too_large_is_said_to_be(workroom: Workroom) -> None:
    page = open_view(workroom, "pad")
    page.get_by_role("radio", name=re.compile("Form D")).focus()
    page.keyboard.press("Space")
    view = page.get_by_role("region", name="pad")
    expect(view.get_by_role("row", name=re.compile("^Hip girth"))).to_contain_text(
        "cannot be padded: the form is 2.8 cm larger"
    )


def test_whoever_looks_at_a_form_pads_this_form(workroom: Workroom) -> None:
    page = open_view(workroom, "pad", "Form B")
    page.get_by_role("combobox", name="for", exact=True).select_option(label="Rosa L.")
    expect(page.get_by_role("radio", name=re.compile("Form B"))).to_be_checked()
    expect(page.get_by_role("columnheader", name="Form B")).to_be_visible()


def test_an_import_asks_what_it_is_not_sure_of_and_stores_nothing_before(workroom: Workroom) -> None:
    before = set(kept(workroom))
    page = open_view(workroom, "import")
    page.get_by_label("Paste from a spreadsheet").fill(CLIENTS)
    page.keyboard.press("Control+Enter")
    keep = page.get_by_role("button", name="Keep 1 body")
    expect(keep).to_be_disabled()
    expect(page.get_by_text("2 questions are open")).to_be_visible()
    hip = page.get_by_label("Hip (cm) means")
    expect(hip).to_have_accessible_description(re.compile("may be hip girth or top hip girth"))
    hip.select_option("hip_girth")
    unit = page.get_by_label("Unit of Waist")
    expect(unit).to_have_accessible_description(re.compile("In which unit"))
    expect(page.get_by_text("One question is open")).to_be_visible()
    assert set(kept(workroom)) == before
    unit.select_option("in")
    expect(page.get_by_role("cell", name=re.compile("^76.2 cm"))).to_be_visible()
    refused = page.get_by_role("cell", name=re.compile("about 98"))
    expect(refused).to_contain_text("is not a number")
    expect(keep).to_be_enabled()
    keep.focus()
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 entry is in the book.")).to_be_visible()
    expect(page.get_by_text("1 refused row was left out")).to_be_visible()
    vera = kept(workroom)["Vera S."]
    assert vera.values["waist_girth"].value == pytest.approx(30 * 25.4)
    assert set(kept(workroom)) == before | {"Vera S."}
    page.get_by_role("button", name="Open the first").click()
    expect(page.get_by_label("Body", exact=True).locator("option:checked")).to_have_text("Vera S.")


def test_a_row_in_another_unit_waits_for_her_answer(workroom: Workroom) -> None:
    page = open_view(workroom, "import")
    page.get_by_label("Paste from a spreadsheet").fill(
        "Name\tBust (in)\tWaist (in)\nVera S.\t37\t30\nTilda F.\t88\t70\n"
    )
    page.keyboard.press("Control+Enter")
    expect(page.get_by_text("2 sets of measures: 1 waits for an answer.")).to_be_visible()
    page.get_by_role("group", name="A question about the bodies").get_by_role(
        "button", name="centimeters"
    ).click()
    expect(page.get_by_text("waits for an answer")).to_have_count(0)
    expect(page.get_by_role("button", name="Keep 2 bodies")).to_be_enabled()


def test_a_client_whom_the_book_has_already_is_not_stored_twice_unasked(workroom: Workroom) -> None:
    page = open_view(workroom, "import")
    page.get_by_label("Paste from a spreadsheet").fill("Name\tBust (cm)\nRosa L.\t98\nVera S.\t94\n")
    page.keyboard.press("Control+Enter")
    question = page.get_by_role("group", name="A question about the bodies")
    expect(question).to_contain_text("Already in the book")
    question.get_by_role("button", name="leave out").click()
    expect(question).to_have_count(0)
    expect(page.get_by_text("1 left out")).to_be_visible()
    page.get_by_role("button", name="Keep 1 body").click()
    expect(page.get_by_text("1 entry is in the book.")).to_be_visible()
    assert {"Rosa L.", "Vera S."} <= set(kept(workroom))
    assert kept(workroom)["Rosa L."].values["bust_girth"].value == 978.0, "as it was"


def test_a_long_import_is_stopped_and_the_book_is_as_it_was(workroom: Workroom, tmp_path: Path) -> None:
    before = set(kept(workroom))
    rows = "".join(f"Client {number},{80 + number % 20},{60 + number % 20}\n" for number in range(5_000))
    table = tmp_path / "long list.csv"
    table.write_text(f"Name,Bust (cm),Waist (cm)\n{rows}", encoding="utf-8")
    page = open_view(workroom, "import")
    page.get_by_label("or choose a file").set_input_files(table)
    page.get_by_role("button", name="Keep 5000 bodies").click(timeout=60_000)
    page.get_by_role("button", name="Stop").click()
    expect(page.get_by_text("Stopped: the book is as it was.")).to_be_visible(timeout=60_000)
    assert set(kept(workroom)) == before


def test_a_pasted_chart_is_kept_and_opened_as_one(workroom: Workroom) -> None:
    page = open_view(workroom, "import")
    page.get_by_label("Paste from a spreadsheet").fill(
        "Size\tS\tM\tL\nBust (cm)\t84\t92\t100\nWaist (cm)\t68\t76\t84\n"
    )
    page.get_by_role("button", name="Look at it").click()
    page.get_by_label("name of the chart").fill("Old sizes")
    page.get_by_role("button", name="Keep a chart of 3 sizes").click()
    chart = page.get_by_role("combobox", name="size chart", exact=True)
    expect(chart.locator("option:checked")).to_have_text("C-101 Old sizes")
    expect(cell(page, "Bust girth", "M")).to_have_value("92.0")


def test_a_chart_is_edited_with_the_keyboard(workroom: Workroom) -> None:
    page = open_view(workroom, "size charts")
    expect(cell(page, "Waist girth", "92")).not_to_be_editable()
    page.get_by_role("button", name="make it yours").click()
    page.get_by_label("Name of your copy").fill("My sizes")
    page.keyboard.press("Enter")
    waist = cell(page, "Waist girth", "92")
    expect(waist).to_be_editable()
    before = waist.input_value()
    waist.focus()
    page.keyboard.type("82")
    page.keyboard.press("Enter")
    expect(waist).to_have_value("82.0")
    expect(cell(page, "Top hip girth", "92")).to_be_focused()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowLeft")
    expect(cell(page, "Waist girth", "88")).to_be_focused()
    page.keyboard.type("31 in")
    page.keyboard.press("ArrowRight")
    expect(waist).to_be_focused()
    expect(cell(page, "Waist girth", "88")).to_have_value("78.7")
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+z")
    expect(waist).to_have_value(before)
    on_disk(page)
    page.get_by_label("in small").select_option("steps")
    expect(page.get_by_role("row", name=re.compile("^Bust girth"))).to_contain_text("+4.0")


def test_undo_under_the_charts_leaves_the_body_alone(workroom: Workroom) -> None:
    page = workroom.open("measures")
    hip = page.locator('[data-measure="hip_girth"] input').first
    hip.fill("104")
    hip.press("Enter")
    on_disk(page)
    go(page, "size charts")
    page.keyboard.press("Control+z")
    go(page, "import")
    page.keyboard.press("Control+z")
    go(page, "measure")
    expect(hip).to_have_value("104.0")
    assert kept(workroom)["Form A"].values["hip_girth"].value == 1040.0


def test_a_slip_in_a_chart_is_marked_at_its_cell_and_repaired_by_its_button(workroom: Workroom) -> None:
    page = open_view(workroom, "size charts")
    page.get_by_role("button", name="make it yours").click()
    page.keyboard.press("Enter")
    slip = cell(page, "Under-bust girth", "110")
    expect(slip).to_be_editable()
    before = slip.input_value()
    slip.fill(f"{float(before) / 2.54:.2f}")  # typed in inches, of 25.4 mm each
    slip.press("Enter")
    expect(slip).to_have_accessible_description(re.compile("stop: .*inches where centimeters are meant"))
    expect(slip).to_have_attribute("aria-invalid", "true")
    page.get_by_role("button", name=f"{before} cm was meant").click()
    expect(slip).to_have_value(before)
    expect(page.get_by_text("nothing to look at again")).to_be_visible()


def test_a_cell_that_cannot_be_read_keeps_what_was_typed(workroom: Workroom) -> None:
    page = open_view(workroom, "size charts")
    page.get_by_role("button", name="make it yours").click()
    page.keyboard.press("Enter")
    waist = cell(page, "Waist girth", "92")
    expect(waist).to_be_editable()
    before = waist.input_value()
    waist.fill("wide")
    waist.press("Enter")
    expect(waist).to_have_attribute("aria-invalid", "true")
    waist.focus()
    expect(page.get_by_role("alert").filter(has_text="not stored")).to_contain_text("is not a number")
    expect(waist).to_have_value("wide")
    waist.press("Escape")
    expect(waist).to_have_value(before)


def test_a_client_is_erased_when_her_number_is_typed_and_not_before(workroom: Workroom) -> None:
    page = open_view(workroom, "personal data")
    view = page.get_by_role("region", name="personal data", exact=True)
    expect(view).to_contain_text("M-106 Rosa L.: the measures")
    expect(view).to_contain_text("paper: measure sheets")
    erase = view.get_by_role("button", name="Erase Rosa L. for good")
    confirm = view.get_by_label("to confirm")
    for typed in ("", "M-10", "rosa l."):
        confirm.fill(typed)
        expect(erase).to_be_disabled()
        confirm.press("Enter")
    assert "Rosa L." in kept(workroom)
    confirm.fill("M-106")
    confirm.press("Enter")
    expect(page.get_by_text("Erased: M-106.")).to_be_visible()
    expect(page.get_by_label("Body", exact=True).locator("option:checked")).to_have_text("Form A")
    page.get_by_role("button", name="Go on").click()
    expect(page.get_by_text("Erased: M-106.")).to_have_count(0)
    assert "Rosa L." not in kept(workroom)


def test_what_a_style_is_drafted_for_is_not_erased_before_she_has_said_what_becomes_of_it(
    workroom: Workroom,
) -> None:
    page = open_view(workroom, "personal data", "Form A")
    view = page.get_by_role("region", name="personal data", exact=True)
    view.get_by_label("to confirm").fill("Form A")
    erase = view.get_by_role("button", name="Erase Form A for good")
    expect(erase).to_be_disabled()
    view.get_by_label("the style for Form A").select_option(label="M-104 Form C")
    erase.click()
    expect(page.get_by_text("Erased: M-101.")).to_be_visible()
    on_disk(page)
    page.get_by_role("navigation", name="Rooms").get_by_role("link", name="Table").click()
    expect(page.locator("[data-edge]").first).to_be_visible()
    expect(page.get_by_role("banner")).to_contain_text("Form C")


def test_a_client_is_kept_under_a_code_and_her_data_is_handed_out(workroom: Workroom) -> None:
    page = open_view(workroom, "personal data")
    view = page.get_by_role("region", name="personal data", exact=True)
    with page.expect_download() as download:
        view.get_by_role("link", name="Download M-106.zip").click()
    assert download.value.suggested_filename == "M-106.zip"
    expect(view.get_by_label("code", exact=True)).to_have_value("K-106")
    view.get_by_role("button", name="Put K-106 in place of “Rosa L.”").click()
    expect(view.get_by_text("Kept as K-106 from now on.")).to_be_visible()
    expect(page.get_by_label("Body", exact=True).locator("option:checked")).to_have_text("K-106")
    assert "Rosa L." not in kept(workroom)
    assert b"Rosa L." not in workroom.book.read_bytes()


def test_the_findings_of_a_chart_are_in_sight_on_a_tablet(workroom: Workroom) -> None:
    page = open_view(workroom, "size charts", size=TABLET)
    page.get_by_role("button", name="make it yours").click()
    page.keyboard.press("Enter")
    slip = cell(page, "Under-bust girth", "96")
    expect(slip).to_be_editable()
    slip.fill("33.1")
    slip.press("Enter")
    finding = page.locator("#finding-0")
    expect(finding).to_be_in_viewport(ratio=1)
    grid = page.get_by_role("table").bounding_box()
    told = finding.bounding_box()
    assert grid is not None
    assert told is not None
    assert told["y"] + told["height"] <= grid["y"], "above the grid, not under it"
    assert grid["y"] < TABLET["height"] / 2


@pytest.mark.parametrize("size", [WIDE, TABLET, UPRIGHT], ids=["desk", "tablet", "upright"])
def test_the_views_fit(workroom: Workroom, size: ViewportSize) -> None:
    page = workroom.open("measures", size)
    page.get_by_label("Body", exact=True).select_option(label="Rosa L.")
    page.get_by_role("button", name="inches").click()
    for view in VIEWS:
        go(page, view)
        page.wait_for_load_state("networkidle")
        assert page.evaluate(SIDEWAYS) == [], view
    go(page, "import")
    page.get_by_label("Paste from a spreadsheet").fill(CLIENTS)
    page.keyboard.press("Control+Enter")
    expect(page.get_by_label("Hip (cm) means")).to_be_visible()
    assert page.evaluate(SIDEWAYS) == []


def test_what_is_touched_on_a_tablet_is_large_enough_for_a_finger(workroom: Workroom) -> None:
    page = open_view(workroom, "compare", size=TABLET)
    for view in VIEWS:
        go(page, view)
        page.wait_for_load_state("networkidle")
        assert page.evaluate(SMALL, FINGER) == [], view
