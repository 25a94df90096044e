"""Changing a size chart, and the same as data of an edit."""

from dataclasses import replace

import pytest

from notchbook.app.charts.chart_edits import (
    AddChartSize,
    ChartEdit,
    DescribeChart,
    InterpolateChartSize,
    RemoveChartRow,
    RemoveChartSize,
    RenameChart,
    RenameChartSize,
    SetChartCell,
    SetChartPopulation,
    SetChartRow,
    SetMainMeasure,
)
from notchbook.body.charts import SizeChart, interpolate_size, shipped_chart
from notchbook.errors import InputError
from support.charts import even_chart


def test_a_cell_is_set_as_typed_and_emptied() -> None:
    chart = SetChartCell("36", "bust_girth", "33 1/2", "in").apply(even_chart())
    assert chart.row("bust_girth")[1] == pytest.approx(850.9)
    assert SetChartCell("36", "bust_girth", " ", "in").apply(chart).row("bust_girth")[1] is None


def test_a_changed_computed_chart_says_so() -> None:
    """No figure that was typed may pass for a computed one, and its margin belongs to the old value."""
    computed = shipped_chart("women")
    changed = SetChartCell("92", "waist_girth", "76", "cm").apply(computed)
    assert changed.status == "typed"
    assert changed.source.endswith("changed by hand")
    assert changed.margin("92", "waist_girth") is None
    assert changed.margin("96", "waist_girth") == computed.margin("96", "waist_girth")
    assert SetChartCell("96", "waist_girth", "80", "cm").apply(changed).source.count("changed by hand") == 1


def test_a_size_between_two_is_read_off_the_line() -> None:
    chart = InterpolateChartSize("37", "36", "38").apply(even_chart())
    assert chart.labels[1:4] == ("36", "37", "38")
    assert chart.size("37").value("bust_girth") == 860.0
    quarter = interpolate_size(even_chart(), "x", "36", "38", 0.25)
    assert quarter.size("x").value("hip_girth") == 935.0 + 0.25 * 35.0


def test_interpolating_gives_back_a_size_of_an_even_chart() -> None:
    chart = RemoveChartSize("40").apply(even_chart())
    again = InterpolateChartSize("40", "38", "42").apply(chart)
    assert again.sizes == even_chart().sizes


def test_sizes_come_go_and_change_their_label() -> None:
    chart = AddChartSize("32", "cm", before="34", texts={"bust_girth": "76", "hip_girth": ""}).apply(
        even_chart()
    )
    assert chart.labels[:2] == ("32", "34")
    assert chart.row("bust_girth")[0] == 760.0
    assert chart.row("hip_girth")[0] is None
    assert AddChartSize("48", "cm").apply(chart).labels[-1] == "48"
    renamed = RenameChartSize("36", "S").apply(replace(even_chart(), margins={"36": {"hip_girth": 9.0}}))
    assert renamed.labels[1] == "S"
    assert renamed.margin("S", "hip_girth") == 9.0


def test_the_first_size_of_an_empty_chart() -> None:
    chart = AddChartSize("M", "cm", texts={"bust_girth": "92"}).apply(SizeChart("New"))
    assert chart.row("bust_girth") == (920.0,)


def test_rows_come_and_go() -> None:
    chart = SetChartRow("knee_girth", "cm").apply(even_chart(2))
    assert chart.row("knee_girth") == (None, None)
    chart = SetChartRow("knee_girth", "cm", ("36", "")).apply(chart)
    assert chart.row("knee_girth") == (360.0, None)
    assert "knee_girth" not in RemoveChartRow("knee_girth").apply(chart).keys


def test_words_of_a_chart() -> None:
    chart = RenameChart("Mine").apply(even_chart())
    chart = DescribeChart(source="own table", note="for the spring").apply(chart)
    chart = SetMainMeasure("hip_girth").apply(SetChartPopulation("women").apply(chart))
    assert (chart.name, chart.source, chart.grade, chart.note) == ("Mine", "own table", "", "for the spring")
    assert {size.population for size in chart.sizes} == {"women"}
    assert chart.main_measure == "hip_girth"
    assert SetChartPopulation("").apply(chart).population is None


@pytest.mark.parametrize(
    ("edit", "code"),
    [
        (SetChartCell("99", "bust_girth", "84", "cm"), "chart-size-unknown"),
        (SetChartCell("36", "bust_girth", "8", "cm"), "measure-impossible"),
        (SetChartCell("36", "bust_girth", "many", "cm"), "number-text"),
        (SetChartCell("36", "hip_depth@left", "20", "cm"), "chart-sides"),
        (AddChartSize("36", "cm"), "chart-label-twice"),
        (AddChartSize(" ", "cm"), "chart-label-missing"),
        (InterpolateChartSize("37", "36", "40"), "chart-not-neighbors"),
        (InterpolateChartSize("37", "38", "36"), "chart-not-neighbors"),
        (InterpolateChartSize("37", "36", "38", 1.0), "chart-share"),
        (RenameChartSize("36", ""), "chart-label-missing"),
        (RenameChartSize("36", "38"), "chart-label-twice"),
        (SetChartRow("bust_girth", "cm", ("84",)), "chart-row-length"),
        (SetChartRow("bust", "cm", ("84",)), "measure-unknown"),
        (SetChartPopulation("cats"), "measure-choice"),
        (RenameChart(" "), "measures-name"),
    ],
)
def test_what_cannot_be_done_is_refused(edit: ChartEdit, code: str) -> None:
    with pytest.raises(InputError) as refused:
        edit.apply(even_chart())
    assert refused.value.code == code
