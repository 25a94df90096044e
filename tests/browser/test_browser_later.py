"""What follows after the drawing, new styles, sides, notes, and a workroom that was started anew."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from notchbook.app.studio import Studio
from support.workroom_page import Workroom, edge_path, served, step, until_drawn

pytestmark = pytest.mark.browser

HEM = "skirt.front/hem"


def test_the_papers_are_looked_at_when_an_edit_rests(table: Page) -> None:
    proven = table.locator(".proven")
    expect(proven).to_contain_text("the papers too")
    table.route("**/report?*", lambda route: None)  # an answer that does not come
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("length", exact=True).fill("50")
    table.keyboard.press("Enter")
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("length 50 cm")
    expect(proven).to_contain_text("papers not looked at yet")


def test_a_look_is_looked_over_after_it_is_drawn(table: Page) -> None:
    expect(table.locator(".proven")).to_contain_text("the papers too")
    table.get_by_label("What next?").fill("longer")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.locator("select").first.select_option(HEM)
    form.get_by_label("amount").fill("9 mm")
    expect(table.locator(".margin li.wrong").first).to_be_visible()
    table.keyboard.press("Escape")
    expect(table.locator(".margin li.wrong")).to_have_count(0)


def test_typing_asks_for_no_report_between_the_keys(table: Page) -> None:
    expect(table.locator(".proven")).to_contain_text("the papers too")
    asked: list[str] = []
    table.on("request", lambda request: asked.append(request.url.split("?")[0].rsplit("/", 1)[-1]))
    step(table, "skirt-1").locator(".head").click()
    length = step(table, "skirt-1").get_by_label("length", exact=True)
    length.fill("")
    table.clock.install()
    table.clock.pause_at(datetime.now() + timedelta(hours=1))  # a loaded machine is slow to type; this is not
    asked.clear()
    before = edge_path(table, HEM)
    for key in "55.25":
        length.press_sequentially(key)
        table.clock.run_for(60)
    until_drawn(table, HEM, before)
    assert "preview" in asked
    assert "report" not in asked
    said = table.locator(".proven")
    for _ in range(100):  # the answer of the last key may come late: its rest begins when it is drawn
        table.clock.run_for(1000)
        if "papers not looked at yet" in "".join(said.all_text_contents()):
            break
        table.wait_for_timeout(100)
    assert "report" in asked, "it is asked for when the hand rests"
    expect(said).to_contain_text("papers not looked at yet")  # of a look the quick checks alone


def test_the_sewing_order_is_read_beside_the_sheet_and_shows_its_edges(table: Page) -> None:
    table.get_by_role("button", name="sewing order").click()
    listed = table.get_by_label("Sewing order", exact=True)
    lines = listed.locator("li")
    expect(lines.first).to_contain_text("Fuse the waistband")
    said = lines.all_text_contents()
    side = next(index for index, text in enumerate(said) if "side seam" in text)
    band = next(index for index, text in enumerate(said) if "Sew the waistband" in text)
    assert side < band
    lines.nth(side).get_by_role("button").click()
    expect(lines.nth(side).get_by_role("button")).to_have_attribute("aria-pressed", "true")
    expect(table.locator(".why")).to_be_visible()
    table.get_by_label("Sewing order", exact=True).press("Escape")
    expect(listed).to_have_count(0)
    expect(table.get_by_role("button", name="sewing order")).to_be_focused()


def test_the_cut_line_is_shown_when_asked_for(table: Page) -> None:
    sew = table.locator('[data-piece="skirt.front"] .notch')
    expect(sew.first).to_be_attached()
    expect(table.locator("[data-cut]")).to_have_count(0)
    table.get_by_label("cut line").check()
    expect(table.locator("[data-cut]")).to_have_count(3)
    expect(sew).to_have_count(0)  # its notches stand on the cut line now
    width = table.locator("[data-cut] .cut").first.evaluate("path => getComputedStyle(path).strokeWidth")
    assert width == "1px"
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("length", exact=True).fill("50")
    expect(table.locator("[data-cut]")).to_have_count(0)  # of what is only looked at none is made
    table.keyboard.press("Enter")
    expect(table.locator("[data-cut]")).to_have_count(3)


def test_a_new_style_is_drafted_and_renamed_by_keyboard(workroom: Workroom, table: Page) -> None:
    choice = table.get_by_label("Style", exact=True)
    choice.select_option("new")
    expect(table.get_by_label("Name", exact=True)).to_be_focused()
    table.keyboard.type("Pencil skirt")
    table.keyboard.press("Enter")
    expect(choice.locator("option:checked")).to_contain_text("Pencil skirt")
    expect(table.locator("[data-step]")).to_have_count(1)
    choice.select_option("rename")
    expect(table.get_by_label("New name of the style")).to_be_focused()
    table.keyboard.type("Pencil skirt, lined")
    table.keyboard.press("Enter")
    expect(choice.locator("option:checked")).to_contain_text("Pencil skirt, lined")
    studio = workroom.kept()
    assert {entry.name for entry in studio.list_styles()} == {"Straight skirt", "Pencil skirt, lined"}
    studio.close()


def test_escape_leaves_a_new_style(table: Page) -> None:
    table.get_by_label("Style", exact=True).select_option("new")
    table.keyboard.press("Escape")
    expect(table.get_by_role("form", name="New style")).to_have_count(0)
    expect(table.get_by_label("Style", exact=True)).to_be_focused()


def test_an_empty_book_says_how_to_begin(
    chromium: Browser, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Studio, "first_time", lambda _self: None)
    with served(chromium, tmp_path / "empty.notchbook") as workroom:
        page = workroom.open(ready="main h2")
        page.get_by_role("button", name="Measure a body first").click()
        page.get_by_label("Name of the new body").fill("Form B")
        page.keyboard.press("Enter")
        expect(page.locator("[data-measure='hip_girth']")).to_be_visible()
        for key, text in (("waist_girth", "70"), ("hip_girth", "96"), ("hip_depth", "20")):
            page.locator(f"[data-measure='{key}'] input").first.fill(text)
            page.keyboard.press("Enter")
            expect(page.locator(f"[data-measure='{key}'] input").first).to_have_value(f"{text}.0")
        page.get_by_role("link", name="Table").click()
        page.get_by_label("Name", exact=True).fill("First skirt")
        page.keyboard.press("Enter")
        expect(page.locator("[data-edge]").first).to_be_attached()
        assert workroom.faults == []


def test_a_step_for_the_left_side_only(table: Page) -> None:
    table.get_by_label("What next?").fill("allowance")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.locator("select").first.select_option("skirt.back/side_seam")
    form.get_by_label("allowance class").select_option("side")
    form.get_by_label("width").fill("2")
    form.get_by_label("on the wearer's").select_option("left")
    form.get_by_role("button", name="Keep").click()
    expect(table.locator('[data-piece="skirt.back@left"]')).to_be_attached()
    expect(table.locator("[data-step]").filter(has_text="left only")).to_have_count(1)


def test_a_note_and_an_estimate_beside_a_measure(workroom: Workroom) -> None:
    page = workroom.open("measures")
    row = page.locator('[data-measure="hip_depth"]')
    row.locator("input").first.focus()
    row.get_by_role("button", name="note").click()
    expect(row.get_by_label("Note", exact=True)).to_be_focused()
    page.keyboard.type("from the old card")
    row.get_by_label("Estimated ±").fill("1")
    page.keyboard.press("Enter")
    expect(row).to_contain_text("“from the old card”")
    expect(row).to_contain_text("estimated ± 1.0 cm")
    studio = workroom.kept()
    kept = studio.open_body(studio.list_bodies()[0].id).measures.values["hip_depth"]
    studio.close()
    assert (kept.value, kept.status, kept.error) == (205.0, "estimated", 10.0)


def test_a_restart_is_said_and_what_was_typed_stays(chromium: Browser, tmp_path: Path) -> None:
    book = tmp_path / "studio.notchbook"
    with served(chromium, book) as first:
        port = int(first.address.split("?")[0].rstrip("/").rsplit(":", 1)[1])
        page = first.open("measures")
        hip = page.locator('[data-measure="hip_girth"] input').first
        hip.fill("104")
        first.server.should_exit = True
        page.wait_for_timeout(600)
        windows, first._contexts[:] = list(first._contexts), []
    with served(chromium, book, port) as second:
        hip.press("Enter")
        banner = page.get_by_role("alert").first
        expect(banner).to_contain_text("started anew")
        expect(hip).to_have_value("104")
        other = windows[0].new_page()  # the new address in another tab of the same browser
        other.goto(second.address)
        other.wait_for_selector("[data-edge]")
        page.get_by_role("button", name="Try again").click()
        expect(page.get_by_role("alert")).to_have_count(0)
        studio = second.kept()
        assert studio.open_body(studio.list_bodies()[0].id).measures.value("hip_girth") == 1040.0
        studio.close()
        for window in windows:
            window.close()
