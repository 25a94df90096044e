"""The Measures room in a real browser."""

import pytest
from playwright.sync_api import Page, expect

from support.workroom_page import Workroom, edge_path, until_drawn

pytestmark = pytest.mark.browser

SIDE = "skirt.front/side_seam"


@pytest.fixture
def measures(workroom: Workroom) -> Page:
    return workroom.open("measures")


def test_a_measure_redraws_at_once_and_is_on_disk(workroom: Workroom, measures: Page) -> None:
    before = edge_path(measures, SIDE)
    hip = measures.locator('[data-measure="hip_girth"] input')
    hip.fill("104")
    until_drawn(measures, SIDE, before)
    looked = edge_path(measures, SIDE)
    hip.press("Enter")
    expect(hip).to_have_value("104.0 cm")
    assert edge_path(measures, SIDE) == looked, "what was looked at is what is kept"
    expect(measures.locator('[data-measure="hip_depth"] input')).to_be_focused()
    studio = workroom.kept()
    assert studio.open_body(studio.list_bodies()[0].id).measures.value("hip_girth") == 1040.0
    studio.close()


def test_a_slip_is_offered_never_applied(measures: Page) -> None:
    depth = measures.locator('[data-measure="hip_depth"] input')
    depth.fill("2.05")
    depth.press("Enter")
    row = measures.locator('[data-measure="hip_depth"]')
    offer = row.get_by_role("button", name="20.5 cm was meant")
    expect(offer).to_be_visible()
    expect(depth).to_have_value("2.05")
    depth.fill("215 mm")
    depth.press("Enter")
    expect(depth).to_have_value("21.5 cm")
    expect(offer).to_have_count(0)


def test_the_sides_differ(measures: Page) -> None:
    row = measures.locator('[data-measure="hip_depth"]')
    row.get_by_role("button", name="the sides differ").click()
    row.locator('input[data-side="left"]').fill("19.5")
    measures.keyboard.press("Enter")
    expect(measures.locator('[data-piece="skirt.back@left"]')).to_be_attached()


def test_keyboard_order_is_measuring_order(measures: Page) -> None:
    keys = measures.locator("[data-measure]").evaluate_all("rows => rows.map(row => row.dataset.measure)")
    assert keys[:3] == ["waist_girth", "hip_girth", "hip_depth"]
    measures.locator('[data-measure="waist_girth"] input').focus()
    for key in ("hip_girth", "hip_depth"):
        measures.keyboard.press("Enter")
        expect(measures.locator(f'[data-measure="{key}"] input')).to_be_focused()


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


def test_what_was_typed_survives_a_server_that_went_away(workroom: Workroom, measures: Page) -> None:
    workroom.server.should_exit = True
    measures.wait_for_timeout(500)
    hip = measures.locator('[data-measure="hip_girth"] input')
    hip.fill("104")
    hip.press("Enter")
    banner = measures.get_by_role("alert").first
    expect(banner).to_contain_text("your last edit is kept here")
    expect(hip).to_have_value("104")
    expect(measures.get_by_role("button", name="Try again")).to_be_visible()
    expect(measures.get_by_role("status").filter(has_text="not written")).to_be_visible()
