"""A size chart as an object and as plain data."""

import json
import pickle
from dataclasses import replace
from typing import Any

import pytest

from notchbook.body import Measure, MeasureSet
from notchbook.body.charts import SizeChart, chart_from_data, chart_to_data
from notchbook.errors import InputError
from support.charts import even_chart


def data_of(**changes: Any) -> dict[str, Any]:
    """A small chart as data, in cm, with changes."""
    data: dict[str, Any] = {
        "format": "notchbook size chart",
        "format_version": 1,
        "name": "Small",
        "unit": "cm",
        "sizes": ["36", "38"],
        "measures": {"bust_girth": [84, "88,5"], "waist_girth": ["26 1/2 in", None]},
    }
    return {**data, **changes}


def test_units_fractions_and_empty_cells_are_read() -> None:
    chart = chart_from_data(data_of())
    assert chart.row("bust_girth") == (840.0, 885.0)
    assert chart.row("waist_girth") == (673.1, None)
    assert chart.labels == ("36", "38")
    assert chart.size("38").kind == "chart"


def test_data_comes_back_equal_and_is_json() -> None:
    chart = replace(even_chart(), margins={"36": {"hip_girth": 12.5}}, population="women", note="Own.")
    assert chart_from_data(json.loads(json.dumps(chart_to_data(chart)))) == chart
    assert pickle.loads(pickle.dumps(chart)) == chart
    assert hash(chart) == hash(chart_from_data(chart_to_data(chart)))


def test_an_empty_row_stays() -> None:
    chart = replace(even_chart(2), keys=("knee_girth",))
    assert chart.row("knee_girth") == (None, None)
    assert chart_from_data(chart_to_data(chart)).keys == chart.keys
    assert "knee_girth" in chart.keys


def test_a_lower_waist_goes_with_all_sizes() -> None:
    chart = chart_from_data(data_of(waist_level="lower", waist_drop=3))
    assert {size.drop_below_natural for size in chart.sizes} == {30.0}
    assert chart_from_data(chart_to_data(chart)) == chart


def test_a_size_is_a_chart_value_whatever_it_was_before() -> None:
    """A size is exact by agreement: readings, estimates and the name of a body are left behind."""
    taken = MeasureSet("Her", {"bust_girth": Measure(900.0, "estimated", 12.0)}, label_size="M", note="x")
    chart = SizeChart("Own", (taken,), population="women")
    size = chart.size("M")
    assert size.values["bust_girth"] == Measure(900.0, "chart")
    assert (size.name, size.kind, size.population) == ("Own, size M", "chart", "women")


def test_a_margin_without_its_value_is_dropped() -> None:
    chart = replace(even_chart(2), margins={"34": {"knee_girth": 5.0, "hip_girth": 6.0}, "99": {}})
    assert chart.margin("34", "hip_girth") == 6.0
    assert chart.margin("34", "knee_girth") is None
    assert dict(chart.margins).keys() == {"34"}


@pytest.mark.parametrize(
    ("data", "code"),
    [
        ([], "chart-not-a-chart"),
        (data_of(format="other"), "chart-not-a-chart"),
        (data_of(format_version=99), "chart-newer"),
        (data_of(format_version=True), "chart-newer"),
        (data_of(sizes=["36", "36"]), "chart-label-twice"),
        (data_of(sizes=["36", ""]), "chart-label-missing"),
        (data_of(sizes=["36"]), "chart-row-length"),
        (data_of(measures={"hip_depth@left": [20, 21]}), "chart-sides"),
        (data_of(measures={"bust": [20, 21]}), "measure-unknown"),
        (data_of(measures={"bust_girth": "84"}), "measures-shape"),
        (data_of(measures=[]), "measures-shape"),
        (data_of(sizes="36"), "measures-shape"),
        (data_of(unit="ells"), "length-unit-unknown"),
        (data_of(unit=""), "length-unit-missing"),
        (data_of(status="bought"), "measure-choice"),
        (data_of(population="cats"), "measure-choice"),
        (data_of(main_measure="girth"), "measure-unknown"),
        (data_of(price="12"), "field-unknown"),
        (data_of(name=""), "measures-name"),
    ],
)
def test_what_is_no_chart_is_refused(data: object, code: str) -> None:
    with pytest.raises(InputError) as refused:
        chart_from_data(data)
    assert refused.value.code == code
    assert refused.value.text()


def test_a_refused_cell_is_named() -> None:
    with pytest.raises(InputError) as refused:
        chart_from_data(data_of(measures={"bust_girth": [84, "eighty"]}))
    assert "bust_girth" in refused.value.text()
    assert "38" in refused.value.text()


def test_sizes_tied_at_different_waists_are_refused() -> None:
    low = MeasureSet("a", {}, "chart", "lower", 20.0, label_size="36")
    with pytest.raises(InputError, match="chart-waist-levels"):
        SizeChart("Mixed", (low, MeasureSet("b", {}, "chart", label_size="38")))


def test_sides_and_unknown_sizes_are_refused() -> None:
    crooked = MeasureSet("a", {"hip_depth@left": Measure(200.0)}, "chart", label_size="36")
    with pytest.raises(InputError, match="chart-sides"):
        SizeChart("Crooked", (crooked,))
    with pytest.raises(InputError, match="chart-size-unknown"):
        even_chart().size("35")
