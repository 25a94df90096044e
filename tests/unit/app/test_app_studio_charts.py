"""Size charts in the studio; and the library tells bodies, forms, sizes and charts apart."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from notchbook.app.charts.chart_edits import SetChartCell
from notchbook.app.studio import ChartState, Studio
from notchbook.body import MeasureSet
from notchbook.body.charts.chart import SizeChart
from notchbook.errors import BookError, InputError

SIZES = tuple(
    replace(MeasureSet.from_mm("House", {"bust_girth": bust}), label_size=label)
    for label, bust in (("36", 840.0), ("38", 880.0))
)


@pytest.fixture
def studio(tmp_path: Path) -> Iterator[Studio]:
    opened = Studio.open(tmp_path / "studio.notchbook")
    yield opened
    opened.close()


@pytest.fixture
def chart(studio: Studio) -> ChartState:
    return studio.new_chart(SizeChart("House chart (invented)", SIZES))


def test_a_chart_is_kept_and_opened(studio: Studio, chart: ChartState, tmp_path: Path) -> None:
    assert (chart.number, chart.version, chart.can_undo) == ("C-101", 1, False)
    studio.close()
    again = Studio.open(tmp_path / "studio.notchbook")
    assert again.open_chart(chart.id).chart == chart.chart
    assert [entry.kind for entry in again.list_charts()] == ["chart"]
    again.close()


def test_an_edit_is_undone_and_redone(studio: Studio, chart: ChartState) -> None:
    edited = studio.edit_chart(chart.id, chart.version, SetChartCell("36", "bust_girth", "84.5", "cm"))
    assert edited.chart.sizes[0].value("bust_girth") == 845.0
    undone = studio.undo_chart(chart.id, edited.version)
    assert (undone.chart, undone.can_redo) == (chart.chart, True)
    assert studio.redo_chart(chart.id, undone.version).chart == edited.chart
    with pytest.raises(BookError) as refused:
        studio.edit_chart(chart.id, chart.version, SetChartCell("36", "bust_girth", "83", "cm"))
    assert refused.value.code == "book-conflict"


def test_a_renamed_chart_is_renamed_in_the_library_too(studio: Studio, chart: ChartState) -> None:
    class Renamed:
        def apply(self, chart: SizeChart) -> SizeChart:
            return replace(chart, name="House chart, spring")

    studio.edit_chart(chart.id, chart.version, Renamed())
    assert [entry.name for entry in studio.list_charts()] == ["House chart, spring"]


def test_what_is_no_chart_is_not_opened_as_one(studio: Studio, chart: ChartState) -> None:
    body = studio.new_body(MeasureSet("Client A"))
    with pytest.raises(InputError) as refused:
        studio.open_chart(body.id)
    assert refused.value.code == "entry-not-chart"
    with pytest.raises(InputError) as refused:
        studio.open_body(chart.id)
    assert refused.value.code == "entry-not-body"


def test_the_library_tells_apart_what_has_measures(studio: Studio, chart: ChartState) -> None:
    for kind in ("body", "form", "chart"):
        studio.new_body(MeasureSet(f"A {kind}", kind=kind))
    assert [(entry.name, entry.kind) for entry in studio.list_bodies()] == [
        ("A body", "body"),
        ("A form", "form"),
        ("A chart", "size"),
    ]
