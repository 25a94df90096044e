"""The size charts that come with the program."""

from itertools import pairwise
from typing import get_args

import pytest

import make_charts
from notchbook.body import MeasureSet, PopulationName
from notchbook.body.charts import SizeChart, check_chart, shipped_chart, size_classes
from notchbook.body.population import population

NAMES = get_args(PopulationName)


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_chart_is_what_would_be_computed_now(name: PopulationName) -> None:
    assert make_charts.out_of_date() == [], "run tools/make_charts.py"
    assert shipped_chart(name) == make_charts.computed_chart(name)


def test_an_old_chart_is_found(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setitem(make_charts.HEIGHTS, "women", 1600.0)
    assert make_charts.main(["--check"]) == 1
    assert "women.json" in capsys.readouterr().out


@pytest.mark.parametrize("name", NAMES)
def test_the_sizes_are_the_classes_of_the_standard(name: PopulationName) -> None:
    """Women 76 to 104 by 4, then 110 to 128 by 6; men 84 to 120 by 4, then 126 to 144 by 6 (EN 13402-3,
    second-hand and from memory)."""
    ends = {"women": ((76, 104), (110, 128)), "men": ((84, 120), (126, 144))}[name]
    wanted = [*range(ends[0][0], ends[0][1] + 1, 4), *range(ends[1][0], ends[1][1] + 1, 6)]
    chart = shipped_chart(name)
    assert [int(label) for label in chart.labels] == wanted
    assert chart.row("bust_girth") == tuple(10.0 * center for center in wanted)
    assert [one.label for one in size_classes(name, "bust_girth")] == list(chart.labels)


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_chart_says_what_it_is(name: PopulationName) -> None:
    chart = shipped_chart(name)
    assert chart.status == "computed"
    assert "computed" in chart.grade
    for words in ("ANSUR II", "not a civilian population", "height", "natural waist"):
        assert words in chart.source
    assert "Not the chart of any maker" in chart.note
    assert check_chart(chart) == ()


@pytest.mark.parametrize("name", NAMES)
def test_every_value_is_the_mean_at_bust_and_height_with_its_margin(name: PopulationName) -> None:
    chart, people = shipped_chart(name), population(name)
    label = chart.labels[5]
    size = chart.size(label)
    given = MeasureSet.from_mm(
        "given", {"height": size.value("height"), "bust_girth": size.value("bust_girth")}, "chart"
    )
    for key in ("waist_girth", "hip_girth", "back_waist_length", "inside_leg"):
        expected = people.expect(key, given)
        assert expected is not None
        assert size.value(key) == round(expected.value)
        assert chart.margin(label, key) == round(expected.half_width())
    assert chart.margin(label, "bust_girth") is None


def grows_by_much(chart: SizeChart, key: str) -> bool:
    """Whether each size is larger than the one before by a centimeter."""
    row = [value for value in chart.row(key) if value is not None]
    return all(after - before > 10.0 for before, after in pairwise(row))


@pytest.mark.parametrize("name", NAMES)
def test_girths_follow_the_bust_and_lengths_hardly(name: PopulationName) -> None:
    """Lengths are not foretold by girths: that is why a chart states its height (ANSUR II, computed: at one
    height the bust explains next to nothing of shoulder and inside leg)."""
    chart = shipped_chart(name)
    assert grows_by_much(chart, "waist_girth")
    assert grows_by_much(chart, "hip_girth")
    assert not grows_by_much(chart, "inside_leg")
    assert not grows_by_much(chart, "shoulder_length")
