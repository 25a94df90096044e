"""Beginning a style in the page as she does: for a body of the book, with a block chosen by its picture."""

from typing import Any

from playwright.sync_api import Locator, Page, ViewportSize, expect

from notchbook.app.drafting import draft_recipe
from notchbook.app.rack.styles import rack_style
from notchbook.body import MeasureSet
from support.workroom_page import WIDE, Workroom, step


def begun(page: Page, block: str, name: str) -> Locator:
    """The form of a new style for this body, with the block chosen."""
    page.get_by_label("Style", exact=True).select_option("new")
    form = page.get_by_role("form", name="New style")
    form.get_by_label("Drafted for").select_option(label=name)
    tile = form.locator("label").filter(has=page.get_by_text(block, exact=True))
    tile.click()
    expect(tile.locator("input")).to_be_checked()
    return form


def put_body(workroom: Workroom, body: MeasureSet) -> int:
    """Put a body into the book, and its id."""
    studio = workroom.kept()
    found = studio.new_body(body)
    studio.close()
    return found.id


def put_style(workroom: Workroom, block: str, body: MeasureSet, **chosen: Any) -> int:
    """Put a style of this block for this body into the book, as another program would, and its id."""
    owner = put_body(workroom, body)
    studio = workroom.kept()
    style = studio.new_style(draft_recipe(block, studio.open_body(owner).measures, chosen), owner)
    studio.close()
    return style.id


def put_from_rack(workroom: Workroom, number: str, body: MeasureSet) -> int:
    """Put the style of the rack with this number for this body into the book, and its id."""
    owner = put_body(workroom, body)
    studio = workroom.kept()
    style = studio.new_style(rack_style(number).recipe, owner)
    studio.close()
    return style.id


def opened(workroom: Workroom, style: int, block: str, size: ViewportSize = WIDE) -> Page:
    """The table with this style on it."""
    page = workroom.open(size=size)
    page.get_by_label("Style", exact=True).select_option(value=str(style))
    expect(step(page, f"{block}-1")).to_be_visible()
    return page


def last_parameters(workroom: Workroom, record: str) -> dict[str, Any]:
    """What is on disk of a step of the newest style."""
    studio = workroom.kept()
    found = dict(studio.recipe_of(studio.list_styles()[-1].id).step(record).parameters)
    studio.close()
    return found
