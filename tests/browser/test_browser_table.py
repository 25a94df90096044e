"""The table in a real browser: steps, previews, findings, seams, units, two tabs."""

import re

import pytest
from playwright.sync_api import Page, expect

from notchbook.app.bodies.body_edits import SetMeasure
from support.workroom_page import TABLET, Workroom, edge_path, step, until_drawn

pytestmark = pytest.mark.browser

HEM = "skirt.front/hem"


def test_an_edit_is_looked_at_kept_and_on_disk(workroom: Workroom, table: Page) -> None:
    before = edge_path(table, HEM)
    step(table, "skirt-1").locator(".head").click()
    length = step(table, "skirt-1").get_by_label("length", exact=True)
    length.fill("50")
    until_drawn(table, HEM, before)
    expect(table.locator(".before path").first).to_be_attached()
    studio = workroom.kept()
    style = studio.list_styles()[0].id
    assert studio.recipe_of(style).step("skirt-1").parameters["length"] == "62 cm", "only looked at"
    table.get_by_role("button", name="Keep").click()
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("length 50 cm")
    expect(table.locator(".before path")).to_have_count(0)
    assert studio.recipe_of(style).step("skirt-1").parameters["length"] == "50 cm"
    studio.close()


def test_escape_puts_a_look_back(table: Page) -> None:
    before = edge_path(table, HEM)
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("length", exact=True).fill("50")
    until_drawn(table, HEM, before)
    table.keyboard.press("Escape")
    expect(table.locator(f'[data-edge="{HEM}"]')).to_have_attribute("d", before)


def test_a_step_is_added_by_typing_and_picking(table: Page) -> None:
    before = edge_path(table, HEM)
    table.get_by_label("What next?").fill("longer")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.get_by_role("button", name="pick").click()
    box = table.locator(f'[data-edge="{HEM}"]').bounding_box()
    assert box
    table.mouse.click(box["x"] + box["width"] * 0.3, box["y"] + 1)
    expect(form.locator("select").first).to_have_value(HEM)
    form.get_by_label("amount").fill("5")
    until_drawn(table, HEM, before)
    form.get_by_role("button", name="Keep").click()
    expect(step(table, "change_length-1").locator(".sentence")).to_have_text("5 cm at front, hem")


def test_a_step_that_cannot_be_done_gets_no_tick_and_its_reason_stays_in_view(table: Page) -> None:
    """The grain through a front dart's point meets the hem, never the side seam."""
    expect(table.locator(".proven")).to_contain_text("✓")
    table.get_by_label("What next?").fill("flare")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.get_by_role("button", name="pick").first.click()
    table.locator('[data-edge="skirt.front/waist_dart_center/side_leg"]').focus()
    table.keyboard.press("Enter")
    expect(form.get_by_label("dart")).to_have_value("skirt.front/waist_dart_center")
    expect(form.get_by_text("still", exact=True)).to_have_attribute("title", re.compile("stays where it is"))
    form.get_by_label("hem").select_option("skirt.front/side_seam")
    form.get_by_label("still").select_option("skirt.front/center_front")
    expect(form.get_by_role("alert")).to_be_visible()
    form.get_by_role("button", name="Keep").click()
    expect(table.get_by_text("it cannot be done")).to_be_visible()
    expect(table.get_by_label("What next?")).to_be_focused()
    expect(table.get_by_role("listbox")).to_have_count(0)
    expect(table.locator(".proven")).to_contain_text(
        re.compile(r"“Dart to flare” has stopped; up to there \d+ checks true")
    )
    expect(table.locator(".proven")).not_to_contain_text("✓")


def test_a_girth_that_the_style_has_changed_is_not_said_to_be_body_and_ease(table: Page) -> None:
    strip = table.locator(".strip")
    expect(strip).not_to_contain_text("drafted; now")
    table.get_by_label("What next?").fill("flare")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.get_by_label("dart").select_option("skirt.front/waist_dart_center")
    form.get_by_label("hem").select_option("skirt.front/hem")
    form.get_by_label("still").select_option("skirt.front/center_front")
    hip = strip.locator(".card").nth(1)
    expect(hip).to_contain_text("drafted; now + ")
    body = float(hip.get_by_role("textbox").first.input_value())
    told = re.search(r"now \+ ([0-9.]+)\s*=\s*([0-9.]+)", hip.inner_text())
    assert told, hip.inner_text()
    # Three lengths, each rounded to 0.1 cm.
    assert body + float(told[1]) == pytest.approx(float(told[2]), abs=0.15 + 1e-9)
    expect(strip.locator(".card").nth(0)).not_to_contain_text("drafted; now")


def test_the_sheet_comes_back_from_a_slip(table: Page) -> None:
    scale = table.locator("svg[data-scale]")
    before = str(scale.get_attribute("data-scale"))
    step(table, "skirt-1").locator(".head").click()
    length = step(table, "skirt-1").get_by_label("length", exact=True)
    length.fill("620")
    expect(scale).not_to_have_attribute("data-scale", before)
    length.fill("62")
    expect(scale).to_have_attribute("data-scale", before)


def test_undo_and_redo_by_keys(table: Page) -> None:
    step(table, "vent-1").locator(".head").click()
    step(table, "vent-1").get_by_label("height").fill("12")
    table.keyboard.press("Enter")
    sentence = step(table, "vent-1").locator(".sentence")
    expect(sentence).to_contain_text("12 cm high")
    table.keyboard.press("Control+z")
    expect(sentence).to_contain_text("18 cm high")
    table.keyboard.press("Control+Shift+z")
    expect(sentence).to_contain_text("12 cm high")


def test_both_sides_of_a_seam_light_up_with_both_lengths(table: Page) -> None:
    box = table.locator('[data-edge="skirt.front/side_seam"]').bounding_box()
    assert box
    table.mouse.move(box["x"] + 2, box["y"] + box["height"] * 0.7)
    lit = table.locator("[data-edge].lit")
    names = set(lit.evaluate_all("paths => paths.map(path => path.dataset.edge)"))
    assert names == {"skirt.front/side_seam", "skirt.back/side_seam"}
    expect(table.locator(".label")).to_have_count(2)
    expect(table.locator(".labels")).to_contain_text("the seam agrees")


def test_inches_are_written_and_read(table: Page) -> None:
    table.get_by_label("inches").click()
    step(table, "skirt-1").locator(".head").click()
    length = step(table, "skirt-1").get_by_label("length", exact=True)
    expect(length).to_have_value('24 7/16"')
    length.fill("25 1/2")
    table.keyboard.press("Enter")
    expect(step(table, "skirt-1").locator(".sentence .fraction").last).to_be_visible()
    table.get_by_label("centimeters").click()
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("length 64.77 cm")


def test_a_finding_flies_to_its_place(table: Page) -> None:
    table.get_by_label("What next?").fill("longer")
    table.keyboard.press("Enter")
    form = table.locator(".next form")
    form.locator("select").first.select_option(HEM)
    form.get_by_label("amount").fill("9 mm")
    table.keyboard.press("Enter")
    note = table.locator(".margin li.wrong button").first
    note.wait_for()
    scale = float(table.locator("svg[data-scale]").get_attribute("data-scale") or 0)
    note.focus()
    table.keyboard.press("Enter")
    expect(note).to_have_attribute("aria-expanded", "true")
    table.wait_for_function(
        "old => Number(document.querySelector('svg[data-scale]').dataset.scale) > old", arg=scale
    )
    ring = table.locator(".ring.active").bounding_box()
    assert ring
    assert 280 < ring["x"] < 1150
    assert 60 < ring["y"] < 800


def test_a_lost_edge_is_told_and_bound_anew(table: Page) -> None:
    step(table, "vent-1").locator(".head").click()
    step(table, "vent-1").get_by_role("button", name="take out").click()
    stopped = step(table, "zip_opening-1")
    expect(stopped).to_contain_text("its edge is gone")
    expect(step(table, "waistband-1")).to_contain_text("waits")
    stopped.get_by_role("button", name="pick another").click()
    piece = table.locator('[data-piece="skirt.back"]')
    piece.focus()
    table.keyboard.press("ArrowRight")
    while table.evaluate("document.activeElement.dataset.edge") != "skirt.back/center_back":
        table.keyboard.press("ArrowRight")
    table.keyboard.press("Enter")
    expect(table.locator("li.stopped")).to_have_count(0)


def test_a_look_that_stops_says_why_and_shows_what_would_go(table: Page) -> None:
    step(table, "vent-1").locator(".head").click()
    step(table, "vent-1").get_by_label("slant").fill("30")
    expect(step(table, "vent-1").get_by_role("alert")).to_contain_text("Vent: ")
    expect(table.locator('[data-piece="waistband.band"]')).to_have_count(0)
    expect(table.locator(".before path").first).to_be_attached()


def test_a_step_is_renamed(table: Page) -> None:
    step(table, "vent-1").locator(".head").click()
    step(table, "vent-1").get_by_role("button", name="rename").click()
    table.get_by_label("Title of the step").fill("Walking vent")
    table.keyboard.press("Enter")
    expect(step(table, "vent-1").locator(".title")).to_have_text("Walking vent")


def test_opening_a_step_changes_nothing(workroom: Workroom) -> None:
    studio = workroom.kept()
    body = studio.list_bodies()[0]
    studio.edit_body(body.id, body.version, SetMeasure("hip_depth", "19.5", "cm", "left"))
    studio.close()
    table = workroom.open()
    for name in ("skirt-1", "vent-1", "zip_opening-1", "waistband-1"):
        step(table, name).locator(".head").click()
        expect(step(table, name).get_by_role("button", name="Keep")).to_be_disabled()
        expect(step(table, name).locator("form")).not_to_contain_text("gone")


def test_two_tabs_a_conflict_keeps_what_was_typed(workroom: Workroom, table: Page) -> None:
    other = workroom.open()
    step(table, "skirt-1").locator(".head").click()
    step(table, "skirt-1").get_by_label("hip ease").fill("6")
    step(other, "vent-1").locator(".head").click()
    step(other, "vent-1").get_by_label("height").fill("12")
    other.keyboard.press("Enter")
    expect(step(other, "vent-1").locator(".sentence")).to_contain_text("12 cm high")
    table.get_by_role("button", name="Keep").click()
    expect(step(table, "vent-1").locator(".sentence")).to_contain_text("12 cm high")
    expect(step(table, "skirt-1").get_by_label("hip ease")).to_have_value("6")
    if step(table, "skirt-1").get_by_role("button", name="Keep").is_visible():
        table.get_by_role("button", name="Keep").click()
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("hip ease 6 cm")
    expect(step(other, "skirt-1").locator(".sentence")).to_contain_text("hip ease 6 cm", timeout=8000)


def test_the_strip_changes_ease_and_body(workroom: Workroom, table: Page) -> None:
    ease = table.get_by_label("hip, ease")
    ease.fill("6.5")
    expect(table.locator(".strip")).to_contain_text(
        "103.5"
    )  # the look is there: Enter must store it all the same
    ease.press("Enter")
    expect(step(table, "skirt-1").locator(".sentence")).to_contain_text("hip ease 6.5 cm")
    body = table.get_by_label("hip, body")
    body.fill("98")
    body.press("Enter")
    expect(table.locator(".strip")).to_contain_text("104.5")
    expect(table.locator(".before path")).to_have_count(0)  # kept, no look any more
    studio = workroom.kept()
    assert studio.open_body(studio.list_bodies()[0].id).measures.value("hip_girth") == 980.0
    studio.close()


def test_the_sheet_pans_zooms_and_fits(table: Page) -> None:
    sheet = table.locator("svg[data-scale]")
    fitted = float(sheet.get_attribute("data-scale") or 0)
    table.mouse.move(800, 400)
    under = table.locator('[data-edge="skirt.front/side_seam"]').bounding_box()
    table.mouse.wheel(0, -400)
    expect(sheet).not_to_have_attribute("data-scale", str(fitted))
    table.mouse.down()
    table.mouse.move(900, 450, steps=4)
    table.mouse.up()
    assert table.locator('[data-edge="skirt.front/side_seam"]').bounding_box() != under
    table.locator(".frame").focus()
    table.keyboard.press("0")
    expect(sheet).to_have_attribute("data-scale", re.compile(f"^{fitted:.4f}".rstrip("0")))


def test_two_fingers_zoom(workroom: Workroom) -> None:
    table = workroom.open(size=TABLET, has_touch=True)
    sheet = table.locator("svg[data-scale]")
    before = float(sheet.get_attribute("data-scale") or 0)
    wire = table.context.new_cdp_session(table)

    def touch(kind: str, *places: tuple[int, int]) -> None:
        points = [{"x": x, "y": y, "id": index} for index, (x, y) in enumerate(places)]
        wire.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    touch("touchStart", (550, 400), (650, 400))
    touch("touchMove", (500, 400), (700, 400))
    touch("touchEnd")
    table.wait_for_function(
        "old => Number(document.querySelector('svg[data-scale]').dataset.scale) > 1.8 * old", arg=before
    )
