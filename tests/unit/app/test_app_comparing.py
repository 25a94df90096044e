"""Files, charts and sizes by the words of a command, and a style against a client."""

from dataclasses import replace
from pathlib import Path

import pytest

from house import ROOT
from notchbook.app.comparing.measures import compare_style, read_chart_named, read_set_named, read_side
from notchbook.app.demo import DEMO_FULLER_CLIENT, DEMO_MORE_FORMS, demo_form, demo_more_forms, demo_recipe
from notchbook.app.drafting import completed, draft
from notchbook.body import MeasureSet, read_measures, set_from_data, write_measures
from notchbook.body.charts import SizeChart, nearest_size, shipped_chart, write_chart
from notchbook.errors import InputError
from notchbook.pattern import sewn_length
from notchbook.recipe import replay
from support.charts import even_chart

EXAMPLES = ROOT / "examples" / "measures"


def test_the_words_of_a_command(tmp_path: Path) -> None:
    chart, body = tmp_path / "even.csv", tmp_path / "body.json"
    write_chart(even_chart(), chart)
    write_measures(demo_form(), body)
    assert read_side(str(body)) == demo_form()
    assert isinstance(read_side(str(chart)), SizeChart)
    assert read_side("women") == shipped_chart("women")
    assert read_side("men:100") == shipped_chart("men").size("100")
    assert read_side(f"{chart}:38") == read_chart_named(str(chart)).size("38")
    assert read_set_named("women:92").label_size == "92"


@pytest.mark.parametrize(
    ("word", "code"),
    [
        ("women:91", "chart-size-unknown"),
        ("nowhere.json", "measures-file-missing"),
        ("nowhere.csv:36", "measures-file-kind"),
    ],
)
def test_a_word_that_is_nothing_is_refused(word: str, code: str) -> None:
    with pytest.raises(InputError) as refused:
        read_side(word)
    assert refused.value.code == code


def test_a_whole_chart_and_an_unknown_chart_are_refused() -> None:
    with pytest.raises(InputError, match="chart-not-a-set"):
        read_set_named("women")
    with pytest.raises(InputError, match="chart-unknown"):
        read_chart_named("ladies")


def test_a_style_against_its_own_body_has_its_own_ease() -> None:
    run = draft("skirt", demo_form())
    compared = compare_style(run, demo_form())
    assert compared.measures.differing == ()
    for girth in compared.girths:
        assert girth.client_ease == girth.body_ease == pytest.approx(girth.wanted_ease, abs=0.01)


def test_a_style_against_a_client() -> None:
    """A client 40 mm fuller in the hip has 40 mm less ease; the pattern is the same."""
    run = draft("skirt", demo_form(), {"hip_ease": "6 cm"})
    client = demo_form().with_value("hip_girth", demo_form().value("hip_girth") + 40.0)
    compared = compare_style(run, replace(client, name="Client"))
    hip = next(girth for girth in compared.girths if girth.measure == "hip_girth")
    assert hip.client_ease == pytest.approx(20.0, abs=0.01)
    assert [row.key for row in compared.measures.differing] == ["hip_girth"]
    assert hip.usual is not None
    assert hip.short_by == pytest.approx(hip.usual[0] - 20.0, abs=0.01)
    assert compared.too_tight == (hip,)


def test_the_finished_girth_is_measured_on_the_pieces() -> None:
    """The waist as sewn, front and back twice, by the pattern's own sewn lengths."""
    run = completed(replay(demo_recipe(demo_form()), demo_form()))
    compared = compare_style(run, demo_form())
    waist = next(girth for girth in compared.girths if girth.measure == "waist_girth")
    sewn = 2 * sum(sewn_length(run.pattern, f"skirt.{half}/waist") for half in ("front", "back"))
    assert waist.finished == pytest.approx(sewn, abs=0.01)


def test_only_measures_that_the_style_reads_are_compared() -> None:
    client = demo_form().with_value("bust_girth", 900.0)
    compared = compare_style(draft("skirt", demo_form().with_value("bust_girth", 800.0)), client)
    assert "bust_girth" not in {row.key for row in compared.measures.rows}


def test_a_client_without_a_measure_is_told() -> None:
    client = MeasureSet.from_mm("Client", {"waist_girth": 700.0})
    compared = compare_style(draft("skirt", demo_form()), client)
    assert "hip_girth" in compared.measures.only_first
    hip = next(girth for girth in compared.girths if girth.measure == "hip_girth")
    assert (hip.client, hip.client_ease, hip.short_by) == (None, None, 0.0)


def test_the_demonstration_and_the_examples_are_the_same_bodies() -> None:
    for data in (*DEMO_MORE_FORMS, DEMO_FULLER_CLIENT):
        name = str(data["name"]).lower().replace(" ", "_").replace(".", "")
        assert read_measures(EXAMPLES / f"{name}.json") == set_from_data(data)
        assert "Invented" in str(data["note"])


def test_the_labels_of_the_demonstration_lie() -> None:
    """None of the three forms is what its label says, by the class of its bust (letters of EN 13402-3, from
    memory; a 40 is a bust of 92, a 12 of ASTM D5585-11e1 one of 98 cm)."""
    twelve, forty, medium = demo_more_forms()
    assert twelve.value("bust_girth") < 38.75 * 25.4 - 100
    assert forty.value("bust_girth") < 920.0
    assert nearest_size(medium, shipped_chart("women"), "top").size == "100"
