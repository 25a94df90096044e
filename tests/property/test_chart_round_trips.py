"""Any chart comes back equal from its data and its files; no garbage gives anything but words."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from notchbook.body import MeasureSet, measure_table
from notchbook.body.charts import (
    SizeChart,
    chart_csv,
    chart_from_csv,
    chart_from_data,
    chart_to_data,
    check_chart,
)
from notchbook.body.charts.chart_files import chart_json
from notchbook.body.files.read_json import json_data
from notchbook.errors import NotchbookError

labels = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), min_size=1, max_size=12).map(
    lambda text: " ".join(text.split())
)
keys = st.sampled_from(tuple(measure_table()))
values = st.integers(0, 89_000).map(lambda thousandths: thousandths / 1000)
"""Degrees go up to 90, and what is read as degrees is read as any other number."""


@st.composite
def charts(draw: st.DrawFn) -> SizeChart:
    """A chart of up to six sizes with any rows, cells left empty and margins among them."""
    names = draw(st.lists(labels.filter(bool), unique_by=str.lower, max_size=6))
    rows = draw(st.lists(keys, unique=True, max_size=6))
    sizes = [
        MeasureSet.from_mm(
            name or "x", draw(st.dictionaries(st.sampled_from(rows), values)) if rows else {}, "chart"
        )
        for name in names
    ]
    labeled = tuple(
        MeasureSet(size.name, size.values, "chart", label_size=name)
        for size, name in zip(sizes, names, strict=True)
    )
    margins = {
        size.label_size: {key: draw(values) for key in size.values if draw(st.booleans())} for size in labeled
    }
    return SizeChart("Any chart", labeled, keys=tuple(rows), margins=margins)


@given(charts())
def test_data_and_json_give_an_equal_chart(chart: SizeChart) -> None:
    assert chart_from_data(chart_to_data(chart)) == chart
    assert chart_from_data(json_data(chart_json(chart))) == chart


@given(charts())
def test_csv_gives_an_equal_chart(chart: SizeChart) -> None:
    first = chart.labels[0].lower() if chart.labels else ""
    if chart.sizes and "measure" not in chart.labels and first != "value":
        assert chart_from_csv(chart_csv(chart)) == chart


@given(charts())
def test_looking_a_chart_over_never_fails(chart: SizeChart) -> None:
    for doubt in check_chart(chart):
        assert doubt.problem.text()
        assert doubt.problem.next_step()


cells = st.one_of(st.none(), st.text(max_size=8), st.floats(), st.integers(), st.booleans(), st.just([]))
garbage = st.fixed_dictionaries(
    {"format": st.sampled_from(["notchbook size chart", "other"]), "format_version": cells},
    optional={
        "name": cells,
        "unit": st.sampled_from(["cm", "mm", "in", "x"]),
        "sizes": st.one_of(cells, st.lists(cells, max_size=3)),
        "measures": st.one_of(cells, st.dictionaries(keys, st.lists(cells, max_size=3), max_size=3)),
        "margins": st.one_of(cells, st.dictionaries(keys, st.lists(cells, max_size=3), max_size=3)),
        "population": cells,
        "waist_drop": cells,
    },
)


@given(garbage)
def test_garbage_is_refused_in_words_or_read(data: dict[str, Any]) -> None:
    try:
        chart = chart_from_data(data, "Default")
    except NotchbookError as error:
        assert error.text()
    else:
        assert isinstance(chart, SizeChart)


@given(st.text(max_size=200))
def test_any_text_is_refused_in_words_or_read(text: str) -> None:
    for given_text in (text, f"measure,36,38\nunit,cm\n{text}"):
        try:
            chart = chart_from_csv(given_text, "Default")
        except NotchbookError as error:
            assert error.text()
        else:
            assert isinstance(chart, SizeChart)
