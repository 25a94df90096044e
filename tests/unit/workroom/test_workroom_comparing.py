"""Comparing over the wire: the nearest size, another body, the style; in the reader's unit."""

from typing import Any

import pytest
from fastapi.testclient import TestClient

from notchbook.app.studio import Studio
from notchbook.body import MeasureSet
from notchbook.body.charts import SizeChart

LABELS = ("8", "10", "12", "14")


def even_size(at: int) -> MeasureSet:
    """A size of an invented chart whose girths all step by 4 cm."""
    values = {"bust_girth": 800.0 + 40 * at, "waist_girth": 620.0 + 40 * at, "hip_girth": 880.0 + 40 * at}
    made = MeasureSet.from_mm(f"size {LABELS[at]}", values)
    return MeasureSet(made.name, made.values, kind="chart", label_size=LABELS[at])


@pytest.fixture
def chart(studio: Studio) -> int:
    return studio.new_chart(SizeChart("Even", tuple(map(even_size, range(4))))).id


def form_with(studio: Studio, label: str, **girths: float) -> int:
    """An invented form with these girths in mm and a label."""
    made = MeasureSet.from_mm("Invented form", girths)
    return studio.new_body(MeasureSet(made.name, made.values, kind="form", label_size=label)).id


def nearest(page: TestClient, body: int, chart: int | str, more: str = "") -> dict[str, Any]:
    return dict(page.get(f"/api/bodies/{body}/nearest?chart={chart}{more}").json())


def test_the_sentence_names_the_size_and_what_the_label_says(
    page: TestClient, studio: Studio, chart: int
) -> None:
    form = form_with(studio, "10", bust_girth=895, waist_girth=710, hip_girth=970)
    told = nearest(page, form, chart)
    assert told["sentence"] == "Nearest to size 12 overall (between 12 and 14). The label says 10."
    assert told["labels"] == list(LABELS)
    bust = next(line for line in told["lines"] if line["key"] == "bust_girth")
    assert bust["place"] == pytest.approx(2.375)
    assert bust["place_words"] == "between 12 and 14, nearer 12"
    assert (bust["difference_text"], bust["beyond"], bust["decides"]) == ("+1.5 cm", True, True)


def test_a_form_that_is_a_size_lies_on_it_in_any_unit(page: TestClient, studio: Studio, chart: int) -> None:
    form = form_with(studio, "", bust_girth=840, waist_girth=660, hip_girth=920)
    told = nearest(page, form, chart, "&unit=in")
    assert told["sentence"] == "Nearest to size 10 overall."
    assert [line["difference_text"] for line in told["lines"]] == ['0"'] * 3
    assert told["lines"][0]["value_text"] == '33 1/16"'


def test_measures_that_do_not_agree_are_told(page: TestClient, studio: Studio, chart: int) -> None:
    form = form_with(studio, "", bust_girth=800, waist_girth=740, hip_girth=1000)
    words = nearest(page, form, chart)["off_words"]
    assert "bust girth alone is nearest to 8" in words
    assert "alone to 14" in words
    assert "do not agree" not in nearest(page, form, chart, "&garment=skirt")["off_words"]


def test_what_lies_beyond_the_chart_is_said_to(page: TestClient, studio: Studio, chart: int) -> None:
    form = form_with(studio, "", bust_girth=700, waist_girth=520, hip_girth=780)
    told = nearest(page, form, chart)
    assert told["sentence"] == "Nearest to size 8 overall (below it: the chart ends there)."
    assert told["lines"][0]["place"] < 0
    assert {remark["code"] for remark in told["remarks"]} == {"chart-beyond"}


def test_a_computed_chart_is_found_by_its_word_and_says_whom_it_is_from(
    page: TestClient, studio: Studio
) -> None:
    form = form_with(studio, "", bust_girth=920, waist_girth=760)
    told = nearest(page, form, "women")
    assert told["chart_words"].startswith("Computed: ")
    assert "U.S. Army survey ANSUR II (2012), soldiers" in told["chart_words"]
    assert told["absent"] == ["hip girth"]
    assert any(line["margin_text"] for line in told["lines"])
    assert "not civilians" in told["caveat"]


def test_the_size_that_goes_over_is_told_beside_the_nearest(
    page: TestClient, studio: Studio, chart: int
) -> None:
    form = form_with(studio, "", waist_girth=660, hip_girth=985)
    told = nearest(page, form, chart, "&garment=skirt")
    assert (told["size"], told["goes_over"]) == ("12", "14")
    assert told["goes_over_words"] == (
        "goes over the hip: size 14 (nearest by all is 12, 2.5 cm too small at the hip)"
    )


@pytest.mark.parametrize(
    ("word", "status", "code"),
    [("nobody", 422, "chart-unknown"), ("٣", 422, "chart-unknown"), ("99", 404, "book-document-missing")],
)
def test_an_unknown_chart_is_refused(page: TestClient, body: int, word: str, status: int, code: str) -> None:
    answer = page.get(f"/api/bodies/{body}/nearest?chart={word}")
    assert (answer.status_code, answer.json()["code"]) == (status, code)


def test_a_body_without_the_girths_that_decide_is_refused(
    page: TestClient, studio: Studio, chart: int
) -> None:
    only_height = studio.new_body(MeasureSet.from_mm("Invented", {"height": 1680.0})).id
    answer = page.get(f"/api/bodies/{only_height}/nearest?chart={chart}")
    assert (answer.status_code, answer.json()["code"]) == (422, "chart-nothing-to-compare")


def test_two_bodies_side_by_side(page: TestClient, studio: Studio) -> None:
    first = form_with(studio, "", bust_girth=900, waist_girth=700, hip_girth=960)
    second = form_with(studio, "", bust_girth=960, waist_girth=702, height=1700)
    told = page.get(f"/api/bodies/{first}/against-body/{second}").json()
    lines = {line["key"]: line for line in told["lines"]}
    assert (lines["bust_girth"]["difference_text"], lines["bust_girth"]["beyond"]) == ("+6.0 cm", True)
    assert lines["waist_girth"]["beyond"] is False
    assert (lines["bust_girth"]["drawn"], lines["waist_girth"]["drawn"]) == (1.0, pytest.approx(2 / 60))
    assert (
        told["sentence"]
        == "1 of 2 measures differ by more than two readings may; most of all bust girth +6.0 cm."
    )
    assert (told["only_first"], told["only_second"]) == (["hip girth"], ["height"])
    wide = form_with(studio, "", bust_girth=960, waist_girth=755, hip_girth=1025)
    said = page.get(f"/api/bodies/{first}/against-body/{wide}").json()["sentence"]
    assert said.endswith("most of all hip girth +6.5 cm."), "the largest, whatever a tape may err by there"
    same = page.get(f"/api/bodies/{first}/against-body/{first}").json()
    assert same["sentence"].startswith("All 3 measures of both agree")


def test_a_client_against_the_style_on_the_table(page: TestClient, studio: Studio, style: int) -> None:
    client = form_with(studio, "", waist_girth=740, hip_girth=975)
    told = page.get(f"/api/bodies/{client}/against-style/{style}").json()
    girths = {girth["label"]: girth for girth in told["girths"]}
    waist, hip = girths["Waist girth"], girths["Hip girth"]
    # Finished is body + ease: 70.5 + 1.5 cm, as the demonstration drafts it; on the client 74 - 72 = 2 lack.
    assert (waist["finished_text"], waist["client_ease_text"]) == ("72.0 cm", "-2.0 cm")
    assert waist["short_text"]
    assert told["sentence"].startswith("Too tight for Invented form as drafted: waist girth ")
    assert hip["body_ease_text"] == "+5.0 cm"
    assert not waist["over_text"]
    slim = form_with(studio, "", waist_girth=600, hip_girth=968)
    waist, hip = page.get(f"/api/bodies/{slim}/against-style/{style}").json()["girths"]
    # 72 cm finished on 60 cm is 12 cm of ease; the page tells what lies above the usual range it shows.
    most = float(waist["usual_text"].split(" to ")[1].removesuffix(" cm"))
    assert waist["over_text"] == f"{12.0 - most:.1f} cm"
    assert not hip["over_text"]
    own = page.get(f"/api/bodies/{studio.list_bodies()[0].id}/against-style/{style}").json()
    assert not any(girth["short_text"] for girth in own["girths"])
