"""The Measures room in a real browser: the paper sheet, taken over with the keyboard alone."""

import re
import socket
import statistics
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from notchbook.app.bodies.body_edits import SetMeasure
from notchbook.body import Measure
from support.workroom_page import Workroom, edge_path, until_drawn

pytestmark = pytest.mark.browser

SIDE = "skirt.front/side_seam"


@pytest.fixture
def measures(workroom: Workroom) -> Page:
    return workroom.open("measures")


def box(page: Page, key: str, reading: int = 0) -> Locator:
    """The box of a reading of a measure."""
    return page.locator(f'[data-measure="{key}"] input[data-reading="{reading}"]')


def row(page: Page, key: str) -> Locator:
    return page.locator(f'[data-measure="{key}"]')


def kept(workroom: Workroom, body: str = "Form A") -> dict[str, Measure]:
    """The values of a body as another program would read them from the book."""
    studio = workroom.kept()
    try:
        found = next(entry.id for entry in studio.list_bodies() if entry.name == body)
        return dict(studio.open_body(found).measures.values)
    finally:
        studio.close()


def new_body(page: Page, name: str) -> None:
    """Begin a new body, up to its first box."""
    page.get_by_role("button", name="new body").click()
    page.get_by_label("Name of the new body").fill(name)
    page.keyboard.press("Enter")
    expect(page.get_by_label("Body", exact=True).locator("option:checked")).to_have_text(name)
    expect(page.locator("input[data-run]").first).to_be_focused()


def on_disk(page: Page) -> None:
    expect(page.get_by_role("status").filter(has_text="on disk")).to_be_visible()


def test_a_measure_redraws_at_once_and_is_on_disk(workroom: Workroom, measures: Page) -> None:
    measures.get_by_role("button", name="on the pattern").click()
    measures.wait_for_selector("[data-edge]")
    before = edge_path(measures, SIDE)
    hip = box(measures, "hip_girth")
    hip.fill("104")
    until_drawn(measures, SIDE, before)
    looked = edge_path(measures, SIDE)
    hip.press("Enter")
    expect(hip).to_have_value("104.0")
    assert edge_path(measures, SIDE) == looked, "what was looked at is what is kept"
    expect(box(measures, "hip_girth", 1)).to_be_focused()
    assert kept(workroom)["hip_girth"].value == 1040.0


def test_what_is_written_late_goes_to_its_own_body(workroom: Workroom, measures: Page) -> None:
    held: list[Route] = []
    measures.route("**/api/bodies/*/edits*", lambda route: held.append(route))
    before = measures.get_by_label("Body", exact=True).locator("option:checked").inner_text()
    box(measures, "hip_girth").fill("104")
    box(measures, "hip_girth").press("Enter")
    new_body(measures, "Client Q")
    measures.unroute("**/api/bodies/*/edits*")
    held[0].continue_()
    on_disk(measures)
    expect(measures.get_by_label("Body", exact=True).locator("option:checked")).to_have_text("Client Q")
    assert kept(workroom, before)["hip_girth"].value == 1040.0
    assert "hip_girth" not in kept(workroom, "Client Q")


def test_no_line_stands_on_the_sheet_before_its_words(workroom: Workroom) -> None:
    """Before that its second box is missing, and Enter would lead past it."""
    held: list[Route] = []
    page = workroom.open("table")
    page.route("**/api/vocabulary*", lambda route: held.append(route))
    with page.expect_request("**/api/vocabulary*"), page.expect_response("**/api/bodies/*"):
        page.get_by_role("navigation").get_by_text("Measures").click()
    page.wait_for_timeout(300)
    assert page.locator("[data-measure]").count() == 0
    held[0].continue_()
    expect(box(page, "waist_girth", 1)).to_be_visible()


def test_the_sheet_of_a_sleeve_asks_for_what_its_bodice_needs(measures: Page) -> None:
    lines = measures.get_by_label("Lines on the sheet")
    lines.select_option(label="short: what the sleeve block asks for")
    for key in ("bust_girth", "scye_depth", "front_waist_length", "upper_arm_girth", "wrist_girth"):
        expect(measures.locator(f'[data-measure="{key}"]')).to_be_attached()


def test_a_sheet_of_paper_is_typed_with_at_most_two_keys_a_box(workroom: Workroom, measures: Page) -> None:
    new_body(measures, "Client K")
    boxes = measures.locator("input[data-run]").evaluate_all(
        "all => all.map(one => [one.closest('[data-measure]').dataset.measure, one.dataset.reading])"
    )
    assert ["waist_girth", "1"] in boxes, "waist is taken twice"
    paper = {"waist_girth": ("71.4", "71.8"), "hip_girth": ("96.5", "97.1"), "hip_depth": ("20.3",)}
    other_keys = 0
    for key, reading in boxes:
        digits = dict(enumerate(paper.get(key, ()))).get(int(reading), "")
        for digit in digits:
            measures.keyboard.press(digit)
        measures.keyboard.press("Enter")
        other_keys += 1
    assert other_keys <= 2 * len(boxes)
    expect(box(measures, "hip_depth")).to_have_value("20.3")
    on_disk(measures)
    values = kept(workroom, "Client K")
    assert {key: measure.readings or (measure.value,) for key, measure in values.items()} == {
        "waist_girth": (714.0, 718.0),
        "hip_girth": (965.0, 971.0),
        "hip_depth": (203.0,),
    }
    assert values["waist_girth"].value == pytest.approx(statistics.median((714.0, 718.0)))


def test_the_keys_go_back_and_restore(measures: Page) -> None:
    waist, again = box(measures, "waist_girth"), box(measures, "waist_girth", 1)
    waist.focus()
    measures.keyboard.press("Enter")
    expect(again).to_be_focused()
    for back in ("ArrowUp", "Shift+Enter"):
        measures.keyboard.press(back)
        expect(waist).to_be_focused()
        measures.keyboard.press("ArrowDown")
        expect(again).to_be_focused()
    measures.keyboard.press("ArrowUp")
    measures.keyboard.type("99")
    measures.keyboard.press("Escape")
    expect(waist).to_have_value("70.5")
    expect(waist).to_be_focused()


def test_inches_with_fractions_and_a_length_in_millimeters(workroom: Workroom, measures: Page) -> None:
    box(measures, "hip_girth").fill("965 mm")
    measures.keyboard.press("Enter")
    expect(box(measures, "hip_girth")).to_have_value("96.5")
    measures.get_by_role("button", name="inches").click()
    box(measures, "hip_girth").fill("38 1/4")
    measures.keyboard.press("Enter")
    expect(box(measures, "hip_girth")).to_have_value("38 1/4")
    on_disk(measures)
    assert kept(workroom)["hip_girth"].value == pytest.approx(38.25 * 25.4)


def test_a_value_that_no_body_has_stops_and_is_repaired_by_the_offered_button(
    workroom: Workroom, measures: Page
) -> None:
    depth = box(measures, "hip_depth")
    depth.fill("2.05")
    depth.press("Enter")
    offer = row(measures, "hip_depth").get_by_role("button", name="20.5 cm was meant")
    expect(offer).to_be_visible()
    expect(depth).to_be_focused()
    expect(depth).to_have_value("2.05")
    expect(depth).to_have_attribute("aria-invalid", "true")
    expect(measures.locator(".sheet footer")).to_contain_text("1 not stored.")
    depth.press("Enter")
    expect(depth).not_to_be_focused()
    assert kept(workroom)["hip_depth"].value == 205.0, "never applied by itself"
    depth.fill("21.5")
    depth.press("Enter")
    expect(depth).to_have_value("21.5")
    expect(offer).to_have_count(0)
    expect(measures.locator(".sheet footer")).to_contain_text("Nothing to look at again.")
    depth.fill("2.05")
    depth.press("Enter")
    offer.click()
    expect(depth).to_have_value("20.5")
    expect(offer).to_have_count(0)


def test_a_planted_slip_is_told_beside_its_line_and_repaired_by_its_button(
    workroom: Workroom, measures: Page
) -> None:
    measures.get_by_label("held against").select_option("women")
    hip = box(measures, "hip_girth")
    expect(row(measures, "hip_girth").get_by_text("look again")).to_have_count(0)
    hip.fill("79")  # 97 with its digits exchanged
    hip.press("Enter")
    told = row(measures, "hip_girth").locator(".said")
    expect(told.first).to_contain_text(re.compile("stop:|look again:"))
    expect(hip).to_have_value("79.0")
    repair = row(measures, "hip_girth").get_by_role("button", name="97.0 cm")
    expect(repair).to_be_visible()
    assert kept(workroom)["hip_girth"].value == 790.0, "stored as typed, repaired by her alone"
    repair.click()
    expect(hip).to_have_value("97.0")
    expect(told).to_have_count(0)
    on_disk(measures)
    assert kept(workroom)["hip_girth"].value == 970.0
    measures.get_by_role("button", name="undo").click()
    expect(hip).to_have_value("79.0")


def test_the_foot_names_the_lines_that_speak_and_why_no_estimates_stand(
    workroom: Workroom, measures: Page
) -> None:
    new_body(measures, "Client K")
    foot = measures.locator(".sheet footer")
    expect(foot).to_contain_text("Nothing is taken yet.")
    measures.get_by_label("held against").select_option("women")
    for key, text in (("height", "168"), ("waist_girth", "74"), ("hip_girth", "40")):
        box(measures, key).fill(text)
        measures.keyboard.press("Enter")
    expect(foot.get_by_role("button", name="hip girth").first).to_be_visible()
    expect(foot).to_contain_text("No estimates:")
    box(measures, "height").focus()
    foot.get_by_role("button", name="hip girth").first.click()
    expect(box(measures, "hip_girth")).to_be_focused()


def test_a_dress_form_wears_nothing_and_its_note_is_whole(measures: Page) -> None:
    head = measures.locator(".head")
    expect(head.get_by_label("this is")).to_have_value("form")
    expect(head.get_by_label("undergarment")).to_have_count(0)
    note = head.get_by_label("note")
    assert note.evaluate("node => node.scrollHeight <= node.clientHeight + 1"), "shown whole"
    note.fill("A long note about this form, " * 8)
    note.press("Enter")
    expect(note).not_to_be_focused()
    assert note.evaluate("node => node.scrollHeight <= node.clientHeight + 1"), "shown whole"
    head.get_by_label("this is").select_option("body")
    expect(head.get_by_label("undergarment")).to_be_visible()


def test_millimeters_have_no_needless_tenth(measures: Page) -> None:
    measures.get_by_role("button", name="millimeters").click()
    expect(box(measures, "waist_girth")).to_have_value("705")
    box(measures, "waist_girth").fill("705.5")
    measures.keyboard.press("Enter")
    expect(box(measures, "waist_girth")).to_have_value("705.5")


def test_two_readings_stand_side_by_side_and_a_third_decides(workroom: Workroom, measures: Page) -> None:
    box(measures, "waist_girth", 1).fill("71.1")
    measures.keyboard.press("Enter")
    expect(box(measures, "waist_girth", 1)).to_have_value("71.1")
    box(measures, "waist_girth").focus()
    expect(row(measures, "waist_girth")).to_contain_text("70.5 cm · 71.1 cm, kept: 70.8 cm")
    expect(box(measures, "waist_girth", 2)).to_have_count(0)
    box(measures, "waist_girth", 1).fill("74.5")
    measures.keyboard.press("Enter")
    third = box(measures, "waist_girth", 2)
    expect(third).to_be_visible()
    third.fill("70.9")
    measures.keyboard.press("Enter")
    on_disk(measures)
    expect(row(measures, "waist_girth")).to_contain_text("kept: 70.9 cm")
    assert kept(workroom)["waist_girth"].readings == (705.0, 745.0, 709.0)
    box(measures, "waist_girth", 1).fill("")
    measures.keyboard.press("Enter")
    expect(box(measures, "waist_girth", 1)).to_have_value("70.9")


def test_an_estimate_is_pencil_until_it_is_kept_and_never_a_measure(
    workroom: Workroom, measures: Page
) -> None:
    leg = box(measures, "outside_leg")
    assert leg.get_attribute("placeholder") == ""
    measures.get_by_label("this is").select_option("body")  # no leg of a dress form is estimated
    measures.get_by_label("held against").select_option("women")
    expect(leg).to_have_attribute("placeholder", re.compile(r"^≈ \d+\.\d$"))
    expect(row(measures, "outside_leg").locator(".fields")).to_contain_text(re.compile(r"± \d+\.\d"))
    expect(leg).to_have_value("")
    assert "outside_leg" not in kept(workroom)
    leg.focus()
    row(measures, "outside_leg").get_by_role("button", name="keep this estimate").click()
    expect(row(measures, "outside_leg")).to_contain_text("estimated ±")
    assert kept(workroom)["outside_leg"].status == "estimated"
    leg.fill("104.5")
    leg.press("Enter")
    expect(row(measures, "outside_leg").get_by_text("estimated ±")).to_have_count(0)
    on_disk(measures)
    assert kept(workroom)["outside_leg"].status == "measured"


def test_what_a_garment_needs_is_filled_and_what_to_measure_next_is_led_to(
    workroom: Workroom, measures: Page
) -> None:
    new_body(measures, "Client K")
    measures.get_by_label("held against").select_option("women")
    for key, text in (("height", "168"), ("waist_girth", "74"), ("hip_girth", "98")):
        box(measures, key).fill(text)
        measures.keyboard.press("Enter")
    following = measures.get_by_role("region", name="Measure next")
    following.get_by_role("button", name="hip depth").click()
    expect(box(measures, "hip_depth")).to_be_focused()
    expect(row(measures, "hip_depth")).to_contain_text("height, waist girth, hip girth")  # all answers came
    following.get_by_role("button", name="fill what").click()
    expect(row(measures, "hip_depth")).to_contain_text("estimated ±")
    on_disk(measures)
    values = kept(workroom, "Client K")
    assert values["hip_depth"].status == "estimated"
    assert values["waist_girth"].status == "measured"


def test_leaving_the_page_in_mid_edit_keeps_what_was_typed(workroom: Workroom, measures: Page) -> None:
    box(measures, "hip_depth").fill("21.5")
    measures.goto("about:blank")
    for _ in range(100):
        if kept(workroom)["hip_depth"].value == 215.0:
            break
        measures.wait_for_timeout(50)
    assert kept(workroom)["hip_depth"].value == 215.0


def test_another_came_first_and_enter_sends_it_again(workroom: Workroom, measures: Page) -> None:
    depth = box(measures, "hip_depth")
    depth.fill("21")
    studio = workroom.kept()
    body = next(entry for entry in studio.list_bodies() if entry.name == "Form A")
    studio.edit_body(body.id, body.version, SetMeasure("waist_girth", "72", "cm"))
    studio.close()
    depth.press("Enter")
    expect(depth).to_be_focused()
    expect(depth).to_have_value("21")
    expect(box(measures, "waist_girth")).to_have_value("72.0")
    depth.press("Enter")
    expect(depth).to_have_value("21.0")
    on_disk(measures)
    assert kept(workroom)["hip_depth"].value == 210.0


def test_the_sides_differ(workroom: Workroom, measures: Page) -> None:
    box(measures, "hip_depth").focus()
    row(measures, "hip_depth").get_by_role("button", name="the sides differ").click()
    row(measures, "hip_depth").locator('input[data-side="left"]').fill("19.5")
    measures.keyboard.press("Enter")
    on_disk(measures)
    expect(row(measures, "hip_depth").locator('input[data-side="right"]')).to_have_attribute(
        "placeholder", "20.5"
    )
    assert kept(workroom)["hip_depth@left"].value == 195.0
    row(measures, "hip_depth").get_by_role("button", name="both sides alike").click()
    expect(row(measures, "hip_depth").locator('input[data-side="left"]')).to_have_attribute(
        "placeholder", "20.5"
    )
    on_disk(measures)
    assert "hip_depth@left" not in kept(workroom)


def test_the_run_of_the_boxes_is_the_order_in_which_a_body_is_measured(measures: Page) -> None:
    measures.get_by_label("Lines on the sheet").select_option("all")
    numbers = measures.locator("[data-measure] .number").all_inner_texts()
    assert [int(number) for number in numbers] == list(range(1, len(numbers) + 1))
    assert len(numbers) >= 54


def test_a_line_of_the_figure_leads_to_its_box_and_back(measures: Page) -> None:
    measures.locator('[data-tape="hip_depth"] .reach').first.dispatch_event("click")
    expect(box(measures, "hip_depth")).to_be_focused()
    expect(measures.locator('[data-tape="hip_depth"].picked')).to_have_count(1)
    box(measures, "hip_girth").focus()
    expect(measures.locator('[data-tape="hip_girth"].picked').first).to_be_attached()
    expect(measures.locator('[data-tape="hip_depth"].picked')).to_have_count(0)
    expect(row(measures, "hip_girth")).to_contain_text("ISO 8559-1")
    assert measures.locator(".margin.open").count() == 1, "words stand at one line only"


def test_the_head_of_the_sheet_is_stored_and_stands_outside_the_run(
    workroom: Workroom, measures: Page
) -> None:
    assert measures.locator(".head input[data-run]").count() == 0
    measures.get_by_label("date").fill("2026-02-30")
    measures.keyboard.press("Enter")
    expect(measures.locator(".head").get_by_role("alert").first).to_contain_text("2026-02-30")
    measures.get_by_label("date").fill("2026-02-28")
    measures.keyboard.press("Enter")
    expect(measures.get_by_label("measured by")).to_be_focused()
    measures.keyboard.type("Ada")
    measures.keyboard.press("Enter")
    measures.get_by_role("combobox", name="waist", exact=True).select_option("lower")
    measures.get_by_label("lower by").fill("4")
    measures.keyboard.press("Enter")
    on_disk(measures)
    studio = workroom.kept()
    body = next(entry.id for entry in studio.list_bodies() if entry.name == "Form A")
    found = studio.open_body(body).measures
    studio.close()
    assert (found.circumstances.taken_on, found.circumstances.taken_by) == ("2026-02-28", "Ada")
    assert (found.waist_level, found.waist_drop) == ("lower", 40.0)


def test_undo_from_within_a_box(measures: Page) -> None:
    hip = box(measures, "hip_girth")
    hip.fill("104")
    hip.press("Enter")
    expect(hip).to_have_value("104.0")
    measures.keyboard.press("Control+z")
    expect(hip).to_have_value("97.0")
    measures.keyboard.press("Control+Shift+z")
    expect(hip).to_have_value("104.0")


def test_a_new_body_and_a_rename(measures: Page) -> None:
    measures.get_by_role("button", name="new body").click()
    measures.get_by_label("Name of the new body").fill("Form B")
    measures.keyboard.press("Enter")
    choice = measures.get_by_label("Body", exact=True)
    expect(choice.locator("option:checked")).to_have_text("Form B")
    measures.get_by_role("button", name="rename").click()
    measures.get_by_label("New name").fill("Form B, padded")
    measures.keyboard.press("Enter")
    expect(choice.locator("option:checked")).to_have_text("Form B, padded")


def until_gone(workroom: Workroom, page: Page) -> None:
    """Wait until nobody answers at the address any more; a loaded machine takes its time."""
    place = urlsplit(workroom.address)
    for _ in range(100):
        with socket.socket() as asked:
            if asked.connect_ex((place.hostname or "", place.port or 0)) != 0:
                return
        page.wait_for_timeout(100)


def test_what_was_typed_survives_a_server_that_went_away(workroom: Workroom, measures: Page) -> None:
    workroom.server.should_exit = True
    until_gone(workroom, measures)
    hip = box(measures, "hip_girth")
    hip.fill("104")
    hip.press("Enter")
    banner = measures.get_by_role("alert").first
    expect(banner).to_contain_text("your last edit is kept here")
    measures.get_by_role("button", name="inches").click()  # looks anew, in vain
    measures.wait_for_timeout(1000)
    expect(banner).to_contain_text("your last edit is kept here")
    expect(hip).to_have_value("104")
    expect(measures.get_by_role("button", name="Try again")).to_be_visible()
    expect(measures.get_by_role("status").filter(has_text="not written")).to_be_visible()
