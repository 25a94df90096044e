"""Size charts over the wire: computed ones to read, hers to make and edit, doubts beside their cells."""

from typing import Any

import pytest
from fastapi.testclient import TestClient


def made(page: TestClient, **asked: Any) -> dict[str, Any]:
    return dict(page.post("/api/charts", json=asked).json())


def edited(page: TestClient, chart: dict[str, Any], unit: str = "cm", **edit: Any) -> Any:
    sent = {"expected_version": chart["version"], "edit": edit}
    return page.post(f"/api/charts/{chart['id']}/edits?unit={unit}", json=sent)


def cell(chart: dict[str, Any], key: str, size: str) -> dict[str, Any]:
    row = next(row for row in chart["rows"] if row["key"] == key)
    return dict(row["cells"][chart["labels"].index(size)])


@pytest.fixture
def copied(page: TestClient) -> dict[str, Any]:
    return made(page, name="My sizes", like="women")


def test_computed_charts_are_listed_and_read_with_their_margins(page: TestClient) -> None:
    listed = page.get("/api/computed-charts").json()
    assert [one["word"] for one in listed] == ["women", "men"]
    chart = page.get("/api/computed-charts/women").json()
    assert (chart["id"], chart["status"]) == (None, "computed")
    assert chart["words"].startswith("Computed: ")
    assert cell(chart, "waist_girth", "92")["margin_text"].endswith(" cm")
    assert chart["doubts"] == []


def test_a_copy_stays_computed_until_a_figure_is_changed(page: TestClient, copied: dict[str, Any]) -> None:
    assert (copied["name"], copied["status"], copied["number"]) == ("My sizes", "computed", "C-101")
    changed = edited(page, copied, do="set-cell", size="92", key="waist_girth", text="82").json()
    assert changed["status"] == "typed"
    assert (
        changed["words"].partition(" (")[0].endswith("changed by hand")
        or "changed by hand" in changed["words"]
    )
    assert cell(changed, "waist_girth", "92")["margin_text"] == ""
    assert cell(changed, "waist_girth", "88")["margin_text"] != ""
    assert [one["name"] for one in page.get("/api/shelf").json()["charts"]] == ["My sizes"]


def test_cells_are_typed_in_any_unit_and_steps_follow(page: TestClient, copied: dict[str, Any]) -> None:
    changed = edited(page, copied, "in", do="set-cell", size="92", key="waist_girth", text="32 1/2").json()
    assert cell(changed, "waist_girth", "92")["text"] == '32 1/2"'
    again = page.get(f"/api/charts/{copied['id']}").json()
    before, value = cell(again, "waist_girth", "88")["text"], cell(again, "waist_girth", "92")["text"]
    assert value == "82.6 cm"  # 32.5 in = 825.5 mm exactly
    step = cell(again, "waist_girth", "92")["step_text"]
    assert float(step.removesuffix(" cm")) == pytest.approx(float(value[:-3]) - float(before[:-3]), abs=0.11)
    assert cell(again, "waist_girth", "76")["step_text"] == ""


def test_a_slip_is_asked_about_at_its_cell_and_no_other(page: TestClient, copied: dict[str, Any]) -> None:
    meant = cell(copied, "under_bust_girth", "110")["text"]
    typed = float(meant.removesuffix(" cm")) / 2.54  # in inches, of 25.4 mm each
    sent = {"do": "set-cell", "size": "110", "key": "under_bust_girth", "text": f"{typed:.2f}"}
    changed = edited(page, copied, **sent).json()
    (doubt,) = changed["doubts"]
    assert (doubt["level"], doubt["code"], doubt["sizes"]) == ("stop", "chart-cell-unit", ["110"])
    marked = [
        (row["key"], at) for row in changed["rows"] for at, one in enumerate(row["cells"]) if one["doubts"]
    ]
    assert marked == [("under_bust_girth", changed["labels"].index("110"))]
    assert doubt["expected_text"] == meant


def test_sizes_and_rows_come_and_go_and_all_is_undone(page: TestClient) -> None:
    chart = made(page, name="Mine")
    assert (chart["rows"], chart["labels"]) == ([], [])
    for label in ("S", "M"):
        chart = edited(page, chart, do="add-size", size=label).json()
    chart = edited(page, chart, do="add-row", key="bust_girth").json()
    for label, text in (("S", "84"), ("M", "92")):
        chart = edited(page, chart, do="set-cell", size=label, key="bust_girth", text=text).json()
    chart = edited(page, chart, do="interpolate-size", size="S/M", lower="S", upper="M").json()
    assert chart["labels"] == ["S", "S/M", "M"]
    assert cell(chart, "bust_girth", "S/M")["text"] == "88.0 cm"
    chart = edited(page, chart, do="rename-size", size="S/M", label="SM").json()
    chart = edited(page, chart, do="remove-size", size="SM").json()
    assert chart["labels"] == ["S", "M"]
    back = page.post(f"/api/charts/{chart['id']}/undo", json={"expected_version": chart["version"]}).json()
    assert back["labels"] == ["S", "SM", "M"]
    forth = page.post(f"/api/charts/{chart['id']}/redo", json={"expected_version": back["version"]}).json()
    assert forth["labels"] == ["S", "M"]
    assert edited(page, forth, do="remove-row", key="bust_girth").json()["rows"] == []


def test_what_a_chart_is_about_is_told(page: TestClient, copied: dict[str, Any]) -> None:
    chart = edited(page, copied, do="describe-chart", source="my own book").json()
    chart = edited(page, chart, do="set-chart-population", population=None).json()
    chart = edited(page, chart, do="set-main-measure", key="hip_girth").json()
    chart = edited(page, chart, do="rename-chart", name="Ours").json()
    assert (chart["source"], chart["population"], chart["main_measure"]) == ("my own book", None, "hip_girth")
    assert page.get("/api/shelf").json()["charts"][0]["name"] == "Ours"


@pytest.mark.parametrize(
    ("edit", "code"),
    [
        ({"do": "set-cell", "size": "92", "key": "waist_girth", "text": "wide"}, "number-text"),
        ({"do": "set-cell", "size": "92", "key": "waist_girth", "text": "9000"}, "measure-impossible"),
        ({"do": "set-cell", "size": "93", "key": "waist_girth", "text": "80"}, "chart-size-unknown"),
        ({"do": "add-size", "size": "92"}, "chart-label-twice"),
        ({"do": "add-size", "size": " "}, "chart-label-missing"),
        ({"do": "interpolate-size", "size": "x", "lower": "76", "upper": "92"}, "chart-not-neighbors"),
    ],
)
def test_edits_are_refused_in_words_and_change_nothing(
    page: TestClient, copied: dict[str, Any], edit: dict[str, Any], code: str
) -> None:
    answer = edited(page, copied, **edit)
    assert (answer.status_code, answer.json()["code"]) == (422, code)
    assert page.get(f"/api/charts/{copied['id']}").json()["version"] == copied["version"]


def test_an_old_version_and_another_kind_of_entry_are_refused(
    page: TestClient, copied: dict[str, Any], body: int
) -> None:
    assert edited(page, copied, do="rename-chart", name="One").status_code == 200
    late = edited(page, copied, do="rename-chart", name="Two")
    assert (late.status_code, late.json()["code"]) == (409, "book-conflict")
    other = page.get(f"/api/charts/{body}")
    assert (other.status_code, other.json()["code"]) == (422, "entry-not-chart")
