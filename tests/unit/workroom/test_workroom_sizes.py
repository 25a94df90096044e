"""A style checked in every size of a chart over the wire: progress, the table, stopping, refusals."""

import time
from dataclasses import replace
from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.checked_by_size import CheckedSize
from notchbook.app.studio import Studio
from notchbook.body.charts import SizeChart, remove_size, shipped_chart
from notchbook.checks import Report
from notchbook.errors import InputError
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Recipe
from notchbook.workroom.answers.sizes import MARK, sizes_answer
from notchbook.workroom.reader import Reader
from notchbook.workroom.size_jobs import SizeJob, SizeJobs


def chart_of(*labels: str) -> SizeChart:
    """The computed chart of women with these sizes alone."""
    chart = replace(shipped_chart("women"), name="Few sizes")
    for label in chart.labels:
        chart = chart if label in labels else remove_size(chart, label)
    return chart


def ended(page: TestClient, job: dict[str, Any]) -> dict[str, Any]:
    until = time.monotonic() + 30.0
    while job["state"] == "running" and time.monotonic() < until:
        time.sleep(0.02)
        job = page.get(f"/api/size-checks/{job['id']}").json()
    return job


def test_every_size_is_checked_and_the_last_is_told(page: TestClient, studio: Studio, style: int) -> None:
    chart = studio.new_chart(chart_of("88", "92")).id
    job = page.post(f"/api/styles/{style}/sizes", json={"chart": chart}).json()
    assert (job["version"], job["labels"], job["chart"]) == (1, ["88", "92"], "Few sizes")
    job = ended(page, job)
    assert job["state"] == "done"
    assert [(size["label"], size["standing"]) for size in job["sizes"]] == [("88", "right"), ("92", "right")]
    assert job["rows"] == []


def test_what_cannot_be_checked_is_refused_in_words(page: TestClient, studio: Studio, style: int) -> None:
    empty = studio.new_chart(SizeChart("No sizes")).id
    asked: tuple[tuple[dict[str, Any], str], ...] = (
        ({}, "size-check-no-chart"),
        ({"chart": empty}, "size-check-no-sizes"),
        ({"chart": style}, "entry-not-chart"),
        ({"computed": "elves"}, "workroom-request"),
    )
    for sent, code in asked:
        answer = page.post(f"/api/styles/{style}/sizes", json=sent)
        assert (answer.status_code, answer.json()["code"]) == (422, code)
    answer = page.get("/api/size-checks/99")
    assert answer.json()["code"] == "size-check-unknown"


def test_a_stopped_check_keeps_what_it_has(page: TestClient, style: int) -> None:
    job = page.post(f"/api/styles/{style}/sizes", json={"computed": "women"}).json()
    page.post(f"/api/size-checks/{job['id']}/stop")
    job = ended(page, job)
    assert job["state"] == "stopped" and len(job["sizes"]) < len(job["labels"])


def test_a_size_that_lacks_measures_says_so_in_its_column(
    page: TestClient, studio: Studio, style: int
) -> None:
    sizes = (replace(one, values={"bust_girth": one.values["bust_girth"]}) for one in chart_of("88").sizes)
    chart = studio.new_chart(SizeChart("Bust alone", tuple(sizes))).id
    job = ended(page, page.post(f"/api/styles/{style}/sizes", json={"chart": chart}).json())
    assert {size["standing"] for size in job["sizes"]} == {"not drafted"}
    (row,) = job["rows"]
    assert row["code"] == "measure-missing" and row["cells"][0]["text"] == "not drafted"


def finding(code: str, grade: Severity, measured: float | None, wanted: float | None = None) -> Finding:
    words = f"{code} found."
    return Finding("seam_walks", code, grade, words, where="a/b", measured=measured, wanted=wanted)


def checked(name: str, *found: Finding) -> CheckedSize:
    return CheckedSize(name, Report(findings=found, passed=()), None)


@pytest.fixture
def mixed() -> SizeJob:
    """Three sizes of planted findings and a refused one; a fifth was not reached."""
    odd = finding("odd", Severity.LOOK, None)
    return SizeJob(
        7,
        1,
        Recipe("planted"),
        chart_of("76", "80", "84", "88", "92"),
        checked=(
            checked("76", finding("too-long", Severity.LOOK, 105.0, 100.0)),
            checked("80", finding("too-long", Severity.STOP, 108.0, 100.0), odd),
            checked("84", finding("said", Severity.NOTE, 3.0)),
            CheckedSize("88", None, InputError("size-check-no-chart")),
        ),
    )


def test_sizes_stand_across_and_findings_down_with_the_worst(mixed: SizeJob) -> None:
    answer = sizes_answer(mixed, Reader("cm"))
    assert [size.standing for size in answer.sizes] == ["look", "wrong", "right", "not drafted"]
    rows = {row.code: row for row in answer.rows}
    assert list(rows) == [
        "size-check-no-chart",
        "too-long",
        "odd",
    ]  # what stops comes first, notes not at all
    long = rows["too-long"]
    assert (long.worst, long.stops) == ("0.80 cm", True)
    assert [cell and cell.text for cell in long.cells] == ["0.50 cm", "0.80 cm", None, None]
    assert (rows["odd"].worst, rows["odd"].cells[1] and rows["odd"].cells[1].text) == ("", MARK)


def test_too_long_and_too_short_are_two_rows_each_in_its_own_words(mixed: SizeJob) -> None:
    """A cell is read with the words of its row: 2 mm under "too long" must not be 2 mm too short."""
    short = replace(finding("too-long", Severity.LOOK, 98.0, 100.0), message="It is too short.")
    mixed.checked = (*mixed.checked, checked("92", short))
    rows = [row for row in sizes_answer(mixed, Reader("cm")).rows if row.code == "too-long"]
    assert [[cell and cell.text for cell in row.cells] for row in rows] == [
        ["0.50 cm", "0.80 cm", None, None, None],
        [None, None, None, None, "0.20 cm"],
    ]
    assert [row.said for row in rows] == ["too-long found.", "It is too short."]


def run_out(job: SizeJob) -> SizeJob:
    until = time.monotonic() + 10.0
    while job.state == "running" and time.monotonic() < until:
        time.sleep(0.005)
    return job


def test_only_the_last_checks_are_remembered() -> None:
    jobs, recipe = SizeJobs(), Recipe("r")
    started = [run_out(jobs.start(recipe, 1, SizeChart("None"))) for _ in range(12)]
    assert jobs.find(started[-1].id) is started[-1]
    with pytest.raises(InputError) as refused:
        jobs.find(started[0].id)
    assert refused.value.code == "size-check-unknown"


def test_a_fault_is_told_and_not_swallowed(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("notchbook.workroom.size_jobs.checked_by_size", broken)
    job = run_out(SizeJobs().start(Recipe("r"), 1, chart_of("88")))
    assert job.state == "refused" and job.error is not None and job.error.code == "workroom-fault"
