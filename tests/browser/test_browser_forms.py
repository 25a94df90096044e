"""The forms of steps as they are filled at the sheet: picked by mouse and by keys, wrongly typed, undone; a
finding healed by a number; every size of a chart. One workroom serves all of them; the body is invented."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from notchbook.app.drafting import draft_recipe
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.body import set_from_data
from notchbook.body.charts import remove_size, shipped_chart
from support.workroom_page import Workroom, served, step

pytestmark = pytest.mark.browser

STRETCH = {"across": "10 to 14 cm", "along": "10 to 13 cm"}
SIZES = ("88", "92")


@dataclass
class Forms:
    """A page, and the styles that were drafted for it by their blocks."""

    workroom: Workroom
    page: Page
    styles: dict[str, int]

    def put(self, block: str) -> Page:
        """The style of the block on the table, as it was drafted, nothing typed before."""
        page = self.page
        page.evaluate("localStorage.clear(); sessionStorage.clear()")
        page.reload()
        page.get_by_label("Style", exact=True).select_option(value=str(self.styles[block]))
        expect(page.locator(".steps [data-step]")).to_have_count(1)
        expect(step(page, f"{block}-1")).to_be_visible()
        return page

    def asked(self, words: str) -> Locator:
        """The form of the step that these words find first."""
        self.page.get_by_label("What next?").fill(words)
        self.page.keyboard.press("Enter")
        return self.page.locator(".next form")

    def kept(self, form: Locator, record: str) -> None:
        """Keep the step and wait until it stands in the list."""
        form.get_by_role("button", name="Keep", exact=True).click()
        expect(step(self.page, record)).to_be_visible()

    def undone(self) -> None:
        """Take back the last edit."""
        self.page.get_by_role("button", name="undo", exact=True).click()
        expect(self.page.locator(".steps [data-step]")).to_have_count(1)


@pytest.fixture(scope="module")
def forms(chromium: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Forms]:
    with served(chromium, tmp_path_factory.mktemp("forms") / "studio.notchbook") as workroom:
        studio = workroom.kept()
        body = studio.new_body(
            set_from_data({**BODY_OF_PICTURES, "name": "Rita M.", "unit": "cm", "population": "women"})
        ).id
        measures = studio.open_body(body).measures
        drafts = {"bodice": {}, "skirt": {}, "leggings": STRETCH}
        styles = {
            block: studio.new_style(draft_recipe(block, measures, given), body).id
            for block, given in drafts.items()
        }
        chart = replace(shipped_chart("women"), name="Two sizes")
        for label in chart.labels:
            chart = chart if label in SIZES else remove_size(chart, label)
        studio.new_chart(chart)
        studio.close()
        yield Forms(workroom, workroom.open(), styles)
    assert workroom.faults == []
    assert workroom.foreign == []


def pick_of(form: Locator, page: Page, field: str) -> Locator:
    """The pick button beside a field."""
    row = form.locator(".row", has=page.get_by_label(field, exact=True))
    return row.get_by_role("button", name="pick")


def test_a_point_is_picked_with_keys_and_a_dart_with_the_mouse(forms: Forms) -> None:
    page = forms.put("bodice")
    form = forms.asked("princess")
    over = form.get_by_label("over bust point", exact=True)
    pick_of(form, page, "over bust point").press("Enter")
    first = page.locator("[data-spot]").first
    expect(first).to_be_focused()
    for _ in range(page.locator("[data-spot]").count()):
        if page.evaluate("document.activeElement.dataset.spot") == "bodice.front/bust_point":
            break
        page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")
    expect(over).to_have_value("bodice.front/bust_point")
    expect(over).to_be_focused()
    pick_of(form, page, "over bust point").press("Enter")
    page.keyboard.press("Escape")
    expect(page.locator("[data-spot]")).to_have_count(0)
    expect(over).to_be_focused()
    pick_of(form, page, "ends in dart").click()
    page.locator('[data-spot="bodice.front/waist_dart"]').click()
    expect(form.get_by_label("ends in dart", exact=True)).to_have_value("bodice.front/waist_dart")


def test_an_edge_is_picked_with_keys_alone(forms: Forms) -> None:
    page = forms.put("bodice")
    form = forms.asked("gathers")
    pick_of(form, page, "edge").press("Enter")
    expect(page.locator("[data-piece]").first).to_be_focused()
    page.keyboard.press("ArrowRight")
    reached = page.evaluate("document.activeElement.dataset.edge")
    page.keyboard.press("Enter")
    expect(form.get_by_label("edge", exact=True)).to_have_value(reached)


def test_a_princess_seam_starts_at_a_place_or_in_a_dart(forms: Forms) -> None:
    page = forms.put("bodice")
    form = forms.asked("princess")
    expect(form).to_contain_text("At a place or in a dart, not both")
    expect(form.get_by_label("counted from")).to_have_count(1)
    form.get_by_label("or starts in dart").select_option("bodice.back/shoulder_dart")
    expect(form.get_by_label("counted from")).to_have_count(0)
    form.get_by_role("button", name="add start").click()
    expect(form.get_by_label("or starts in dart")).to_have_value("")
    form.get_by_label("center edge").select_option("bodice.back/center_back")
    form.get_by_label("or starts in dart").select_option("bodice.back/shoulder_dart")
    form.get_by_label("ends in dart").select_option("bodice.back/waist_dart_center")
    form.get_by_label("ease over the bust").fill("0")
    expect(page.locator('[data-piece="princess_seam.back_center"]')).to_be_attached()


def test_why_is_asked_of_what_stands_at_an_edge(forms: Forms) -> None:
    page = forms.put("bodice")
    page.locator('[data-edge^="bodice.front/bust_dart/"]').first.focus()
    page.keyboard.press("Enter")
    card = page.get_by_role("region", name="Why is it so?")
    card.get_by_role("button", name="why is it so?").click()
    for name in ("bodice.front/bust_dart", "bodice.front/bust_point", "bodice.front"):
        card.get_by_label("of", exact=True).select_option(name)
        expect(card.locator("ol")).to_contain_text("Draft bodice made it")
        expect(card.locator("td").first).to_be_visible()


def test_what_is_typed_wrongly_is_refused_in_the_words_of_the_form(forms: Forms) -> None:
    page = forms.put("skirt")
    broken: list[int] = []
    page.on("response", lambda answer: broken.append(answer.status) if answer.status >= 500 else None)
    form = forms.asked("godet")
    form.get_by_label("edge", exact=True).select_option("skirt.front/side_seam")
    told = form.get_by_role("alert")
    for field, text, words in (
        ("opens, degrees", "270", "Opens, degrees: it must be 180"),
        ("opens, degrees", "wide", "“wide” is not a number"),
        ("opens, degrees", "45", ""),
        ("height", "3 ells", "is not the name of a measure"),
        ("height", "1/0", "divides by zero"),
        ("height", "9" * 300, "too long to be a number"),
        ("height", "-999", "."),
    ):
        form.get_by_label(field, exact=True).fill(text)
        if words:
            expect(told).to_contain_text(words)
        else:
            expect(told).to_have_count(0)
    form.get_by_label("height", exact=True).fill("25")
    expect(told).to_have_count(0)
    assert broken == []


def test_a_step_that_was_brought_back_lies_folded_and_is_undone_from_a_filled_field(forms: Forms) -> None:
    page = forms.put("skirt")
    form = forms.asked("longer")
    form.get_by_label("hem", exact=True).select_option("skirt.front/hem")
    form.get_by_role("button", name="one more hem").click()
    form.get_by_label("hem 2", exact=True).select_option("skirt.back/hem")
    form.get_by_label("amount").fill("3")
    forms.kept(form, "change_length-1")
    step(page, "change_length-1").locator(".head").click()
    step(page, "change_length-1").get_by_role("button", name="take out").click()
    expect(step(page, "change_length-1")).to_have_count(0)
    page.keyboard.press("Control+z")
    expect(step(page, "change_length-1").locator(".head")).to_have_attribute("aria-expanded", "false")
    step(page, "change_length-1").locator(".head").click()
    step(page, "change_length-1").get_by_label("amount").focus()
    page.keyboard.press("Control+z")
    expect(step(page, "change_length-1").locator(".head")).to_have_count(0)
    page.keyboard.press("Control+z")


def test_keep_stays_where_it_is_when_the_look_comes(forms: Forms) -> None:
    page = forms.put("skirt")
    form = forms.asked("longer")
    form.get_by_label("hem", exact=True).select_option("skirt.front/hem")
    keep = form.get_by_role("button", name="Keep", exact=True)
    said = form.get_by_text("blue dashed: as it was")
    expect(said).to_be_hidden()
    form.get_by_label("amount").fill("0.9")
    before = keep.bounding_box()
    expect(said).to_be_visible()
    assert keep.bounding_box() == before
    page.keyboard.press("Escape")


def test_a_finding_is_healed_by_a_number(forms: Forms) -> None:
    page = forms.put("skirt")
    form = forms.asked("longer")
    form.get_by_label("hem", exact=True).select_option("skirt.front/hem")
    form.get_by_label("amount").fill("0.9")
    forms.kept(form, "change_length-1")
    page.get_by_role("button", name="make it agree by a number").first.click()
    wish = page.locator(".wish details")
    expect(wish.get_by_label("by", exact=True).locator("option")).to_have_text(
        ["Change length: amount (0.9 cm)"]
    )
    expect(wish.get_by_label("by", exact=True)).to_be_focused()
    wish.get_by_role("button", name="Look").click()
    expect(wish.get_by_role("status")).to_contain_text("0.9 cm → 0 cm")
    wish.get_by_role("button", name="Take it").click()
    expect(wish).to_have_count(0)
    expect(page.locator(".margin li.wrong")).to_have_count(0)
    page.keyboard.press("Control+z")
    forms.undone()


def test_every_size_of_a_chart_stands_in_one_table(forms: Forms) -> None:
    page = forms.put("skirt")
    page.get_by_role("button", name="every size").click()
    table = page.get_by_role("region", name="Every size")
    chart = table.get_by_role("combobox", name="of", exact=True)
    expect(chart).to_be_focused()
    chart.select_option(label=next(one for one in chart.locator("option").all_inner_texts() if "Two" in one))
    table.get_by_role("button", name="Check").click()
    expect(table.get_by_role("status")).to_have_text("2 sizes of Two sizes: nothing to check in any.")
    expect(table.locator("td.right")).to_have_count(2)
    page.keyboard.press("Escape")
    expect(page.get_by_role("button", name="every size")).to_be_focused()
    form = forms.asked("longer")
    form.get_by_label("hem", exact=True).select_option("skirt.front/hem")
    form.get_by_label("amount").fill("0.9")
    forms.kept(form, "change_length-1")
    page.get_by_role("button", name="every size").click()
    expect(table.get_by_role("status")).to_contain_text("The style was changed since")
    table.get_by_role("button", name="Check again").click()
    expect(table.get_by_role("status")).to_have_text("2 sizes of Two sizes: something to check in each.")
    cells = table.locator('[data-row="seam-second-shorter"] td')
    expect(cells).to_have_text(["0.90", "0.90", "0.90"])  # the worst, then both sizes
    table.get_by_role("button", name="back to the sheet").click()
    forms.undone()


def test_elastics_stand_beside_the_ease_table(forms: Forms) -> None:
    page = forms.put("leggings")
    page.get_by_role("button", name="elastics (").click()
    line = page.locator("[data-elastic]").first
    expect(line).to_contain_text("elastic")
    expect(line.locator("td")).to_have_count(5)
    page.get_by_role("button", name="fold the ease table").click()
