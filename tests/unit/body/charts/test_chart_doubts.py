"""What is asked about a size chart: a fault planted for each rule, and silence where nothing is wrong."""

from dataclasses import replace
from pathlib import Path

import pytest

from notchbook.body.charts import (
    ChartDoubt,
    SizeChart,
    check_chart,
    remove_size,
    rename_size,
    set_cell,
    set_row,
    shipped_chart,
)
from notchbook.units import LengthStyle
from support.charts import PUBLISHED, even_chart, published


def doubts(chart: SizeChart) -> dict[str, ChartDoubt]:
    """The doubts by their code, without holding the chart against people."""
    return {doubt.code: doubt for doubt in check_chart(chart, people=False)}


def scaled(chart: SizeChart, key: str, factor: float) -> SizeChart:
    """The chart with a row in another unit."""
    return set_row(chart, key, [value and value * factor for value in chart.row(key)])


def test_an_even_chart_is_fine() -> None:
    assert check_chart(even_chart()) == ()


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda path: path.stem)
def test_uneven_steps_of_published_charts_are_fine(path: Path) -> None:
    """ASTM D5585 and others step unevenly (tests/reference/charts/README.md): nothing is asked about them."""
    assert check_chart(published(path.stem), people=False) == ()


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda path: path.stem)
def test_every_size_taken_out_of_a_published_chart_is_missed(path: Path) -> None:
    chart = published(path.stem)
    for at, label in enumerate(chart.labels[1:-1], 1):
        found = doubts(remove_size(chart, label))
        assert "chart-size-missing" in found, label
        gap = found["chart-size-missing"]
        assert gap.sizes == (chart.labels[at - 1], chart.labels[at + 1])
        assert label in gap.problem.text()


def test_a_missing_size_is_seen_without_numbers_in_the_labels() -> None:
    chart = even_chart()
    for label, new in zip(chart.labels, "ABCDEFG", strict=True):
        chart = rename_size(chart, label, new)
    found = doubts(remove_size(chart, "D"))
    assert set(found) == {"chart-size-missing"}
    assert found["chart-size-missing"].sizes == ("C", "E")


def test_labels_that_leap_alone_are_no_missing_size() -> None:
    chart = even_chart()
    for label in ("42", "44", "46"):
        chart = rename_size(chart, label, str(int(label) + 2) + ".")
        chart = rename_size(chart, chart.labels[int((int(label) - 34) / 2)], str(int(label) + 100))
    assert "chart-size-missing" not in doubts(chart)


def test_a_row_in_another_unit() -> None:
    found = doubts(scaled(even_chart(), "waist_girth", 1 / 2.54))
    assert found["chart-row-unit"].keys == ("waist_girth",)
    assert found["chart-row-unit"].level == "stop"
    assert "inches where centimeters" in found["chart-row-unit"].problem.text()
    assert "measure-impossible" not in found


def test_a_size_in_another_unit() -> None:
    chart = even_chart()
    for key in chart.keys:
        value = chart.size("40").value(key)
        chart = set_cell(chart, "40", key, value * 2.54)
    found = doubts(chart)
    assert found["chart-size-unit"].sizes == ("40",)
    assert set(found) == {"chart-size-unit"}


def test_a_cell_in_another_unit_with_what_was_meant() -> None:
    chart = even_chart()
    found = doubts(set_cell(chart, "40", "hip_girth", chart.size("40").value("hip_girth") / 10))
    assert found["chart-cell-unit"].expected == pytest.approx(chart.size("40").value("hip_girth"))
    assert set(found) == {"chart-cell-unit"}


def test_a_whole_chart_in_another_unit() -> None:
    chart = even_chart()
    for key in chart.keys:
        chart = scaled(chart, key, 1 / 2.54)
    assert "chart-unit" in doubts(chart)


def test_the_main_row_in_another_unit_is_the_one_that_is_named() -> None:
    found = doubts(scaled(even_chart(), "bust_girth", 2.54))
    assert [doubt.keys for doubt in found.values() if doubt.code == "chart-row-unit"] == [("bust_girth",)]


@pytest.mark.parametrize("label", ["34", "40", "46"])
@pytest.mark.parametrize("off", [30.0, -30.0])
def test_a_value_that_breaks_its_run(label: str, off: float) -> None:
    chart = even_chart()
    right = chart.size(label).value("waist_girth")
    found = check_chart(set_cell(chart, label, "waist_girth", right + off), people=False)
    assert [doubt.code for doubt in found] == ["chart-cell-off-run"]
    assert (found[0].keys, found[0].sizes) == (("waist_girth",), (label,))
    assert found[0].expected == pytest.approx(right)


def test_two_broken_values_in_a_row_are_both_named() -> None:
    chart = set_cell(set_cell(even_chart(9), "38", "hip_girth", 1000.0), "46", "hip_girth", 1050.0)
    found = check_chart(chart, people=False)
    named = {doubt.sizes for doubt in found if doubt.code == "chart-cell-off-run"}
    assert named == {("38",), ("46",)}


def test_a_small_slip_within_the_tape_is_not_asked_about() -> None:
    chart = even_chart()
    assert doubts(set_cell(chart, "40", "waist_girth", chart.size("40").value("waist_girth") + 7)) == {}


def test_a_row_that_stands_still_or_falls() -> None:
    chart = set_row(even_chart(), "hip_girth", [900, 910, 910, 920, 930, 940, 950])
    assert doubts(chart)["chart-row-falls"].sizes == ("36", "38")
    backward = set_row(even_chart(), "hip_girth", [1110 - 35 * at for at in range(7)])
    assert doubts(backward)["chart-row-falls"].sizes == even_chart().labels


def test_lengths_may_fall_and_small_girths_stand_still() -> None:
    chart = set_row(even_chart(), "inside_leg", [800 - at for at in range(7)])
    chart = set_row(chart, "head_girth", [560, 560, 562, 562, 564, 564, 566])
    assert doubts(chart) == {}


def test_labels_out_of_order() -> None:
    chart = rename_size(even_chart(), "40", "60")
    assert doubts(chart)["chart-labels-fall"].sizes == ("60", "42")
    letters = SizeChart("L", tuple(replace(size) for size in even_chart(3).sizes))
    for old, new in (("34", "M"), ("36", "S"), ("38", "2XL")):
        letters = rename_size(letters, old, new)
    assert doubts(letters)["chart-labels-fall"].sizes == ("M", "S")


def test_labels_of_double_zero_and_letters_are_in_order() -> None:
    assert "chart-labels-fall" not in doubts(published("astm_straight"))
    letters = even_chart(7)
    for old, new in zip(letters.labels, ("XXS", "XS", "S", "M", "L", "XL", "2XL"), strict=True):
        letters = rename_size(letters, old, new)
    assert doubts(letters) == {}


def test_an_impossible_value_stops() -> None:
    chart = set_row(even_chart(3), "neck_girth", [900, 910, 920])
    found = [doubt for doubt in check_chart(chart, LengthStyle("in")) if doubt.level == "stop"]
    assert found
    assert {doubt.keys for doubt in found} == {("neck_girth",)}


def test_a_row_that_is_another_measure_is_unlike_people() -> None:
    """An ankle row that is the calf's: it runs well, and only people tell that it is none.

    Without the size 128, whose calf is a value that no ankle has and stops the look at people.
    """
    chart = replace(remove_size(shipped_chart("women"), "128"), status="typed", margins={})
    assert check_chart(chart) == ()
    wrong = set_row(chart, "ankle_girth", chart.row("calf_girth"))
    assert "chart-proportion" not in doubts(wrong)
    found = {doubt.code: doubt for doubt in check_chart(wrong)}
    assert ("ankle_girth",) in {
        doubt.keys for doubt in check_chart(wrong) if doubt.code == "chart-proportion"
    }
    assert "ANSUR" in found["chart-proportion"].problem.text()
    assert check_chart(replace(wrong, population=None)) == ()


def test_an_empty_chart_and_empty_rows_are_fine() -> None:
    assert check_chart(SizeChart("New")) == ()
    assert check_chart(replace(even_chart(), keys=("knee_girth",))) == ()


def test_depths_that_differ_by_as_much_as_a_unit_are_let_be() -> None:
    chart = set_row(even_chart(), "belly_depth", [40.0, 42.0, 44.0, 46.0, 48.0, 50.0, 52.0])
    assert doubts(set_row(chart, "forward_shoulder", [4.0] * 7)) == {}


def test_a_chart_for_children_is_not_taken_for_one_in_inches() -> None:
    """Heights 92, 98, 104 with chest, waist and hip of a common children's chart (read on a page about
    sizes, the middle of its ranges), inside leg from common practice."""
    rows = {
        "height": [920.0, 980.0, 1040.0],
        "bust_girth": [540.0, 550.0, 560.0],
        "waist_girth": [510.0, 520.0, 530.0],
        "hip_girth": [545.0, 565.0, 585.0],
        "inside_leg": [380.0, 415.0, 450.0],
    }
    chart = even_chart(3, 92)
    for key in chart.keys:
        chart = set_row(chart, key, [None] * 3)
    for key, row in rows.items():
        chart = set_row(chart, key, row)
    assert check_chart(chart) == ()
