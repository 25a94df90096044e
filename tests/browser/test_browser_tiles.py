"""The tiles that a style begins with: their pictures come one after the other and move nothing."""

from typing import Any

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from notchbook.app.rack.styles import rack
from notchbook.body import MeasureSet
from support.held_answers import HeldAnswers
from support.new_style import begun, put_body
from support.workroom_page import LOW, TABLET, UPRIGHT, Workroom

pytestmark = pytest.mark.browser

NAME = "Vera P."
PICTURES = "**/api/rack/*/picture"
SEEN = 4
AT_A_TIME = 4
NUMBERS = [style.recipe.number for style in rack()]


def tiles_of(page: Page) -> tuple[Locator, Locator]:
    """The form, and the tiles of the rack in it."""
    form = begun(page, "skirt", "Form A")
    form.get_by_text("from the rack", exact=True).click()
    tiles = form.locator("label", has_text="S-2")
    expect(tiles).to_have_count(len(NUMBERS))
    return form, tiles


def boxes(tiles: Locator) -> list[Any]:
    return [tile.bounding_box() for tile in tiles.all()]


def test_the_pictures_come_in_order_and_move_nothing(workroom: Workroom) -> None:
    page = workroom.open()
    held = HeldAnswers(page, PICTURES)
    _, tiles = tiles_of(page)
    empty = boxes(tiles)
    expect(tiles.first.locator(".awaited")).to_be_visible()
    for index in range(SEEN):
        expect(tiles.nth(index).locator("img")).to_have_count(0)
        held.let_go()
        expect(tiles.nth(index).locator("img")).not_to_have_js_property("naturalWidth", 0)
        expect(tiles.nth(index).locator(".awaited")).to_have_count(0)
    asked = [address.split("/")[-2] for address in held.asked]
    assert asked == NUMBERS[: len(asked)]
    assert len(asked) <= SEEN + AT_A_TIME
    assert boxes(tiles) == empty


def test_a_picture_that_does_not_come_holds_up_none(workroom: Workroom) -> None:
    page = workroom.open()
    held = HeldAnswers(page, PICTURES)
    _, tiles = tiles_of(page)
    held.lose()
    held.let_go()
    expect(tiles.nth(1).locator("img")).not_to_have_js_property("naturalWidth", 0)
    expect(tiles.first.locator(".awaited")).to_be_visible()
    tiles.first.locator("input").check(force=True)
    expect(tiles.first.locator("input")).to_be_checked()


def test_the_rack_is_read_before_she_turns_to_it(workroom: Workroom) -> None:
    page = workroom.open()
    begun(page, "skirt", "Form A")
    page.wait_for_event(
        "requestfinished", lambda request: "/picture" in request.url and "/rack/" in request.url
    )
    page.get_by_text("from the rack", exact=True).click()
    expect(page.get_by_role("radio", name="S-201")).to_be_visible(timeout=1000)


@pytest.mark.parametrize("size", [LOW, TABLET, UPRIGHT], ids=["low", "tablet", "upright"])
def test_why_a_style_cannot_be_drafted_is_in_view(workroom: Workroom, size: ViewportSize) -> None:
    put_body(workroom, MeasureSet.from_mm(NAME, {"bust_girth": 920.0}, population="women"))
    page = workroom.open(size=size)
    form = begun(page, "skirt", NAME)
    form.get_by_text("from the rack", exact=True).click()
    form.locator("label", has_text="S-212").click()
    draft = form.get_by_role("button", name="Draft it")
    expect(draft).to_be_disabled()
    for words in (form.get_by_text("measures missing:"), form.get_by_role("button", name="estimate them")):
        expect(words).to_be_in_viewport(ratio=1)
        box, below = words.bounding_box(), draft.bounding_box()
        assert box and below and box["y"] + box["height"] <= below["y"]
        assert words.evaluate(
            "(node) => { const box = node.getBoundingClientRect();"
            " return node.contains(document.elementFromPoint(box.x + 4, box.y + box.height / 2)) }"
        )
