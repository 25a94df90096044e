"""Size charts in files."""

from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from notchbook.body import read_measures
from notchbook.body.charts import chart_csv, chart_from_csv, holds_chart, read_chart, write_chart
from notchbook.errors import InputError, OutputError
from notchbook.units import Unit
from support.charts import PUBLISHED, even_chart

CHART = replace(
    even_chart(3),
    population="women",
    caveat="Short arms; look at the sleeve.",
    note='A "quoted" note, with commas',
    margins={"36": {"hip_girth": 25.4}},
)


@pytest.mark.parametrize("name", ["chart.json", "chart.csv"])
def test_a_chart_comes_back_equal_from_its_file(name: str, tmp_path: Path) -> None:
    write_chart(CHART, tmp_path / name)
    assert read_chart(tmp_path / name) == CHART
    assert holds_chart(tmp_path / name)


@pytest.mark.parametrize("unit", get_args(Unit))
def test_csv_in_every_unit_reads_back(unit: Unit) -> None:
    back = chart_from_csv(chart_csv(CHART, unit))
    for key in CHART.keys:
        assert back.row(key) == pytest.approx(CHART.row(key), abs=1e-4)
    assert back.margin("36", "hip_girth") == pytest.approx(25.4, abs=1e-4)
    assert (back.name, back.note, back.population) == (CHART.name, CHART.note, "women")


def test_labels_keep_their_capitals() -> None:
    chart = chart_from_csv("measure;S;XL\nunit;cm\nbust_girth;84,5;104\n", "Letters")
    assert chart.labels == ("S", "XL")
    assert chart.row("bust_girth") == (845.0, 1040.0)
    assert chart.name == "Letters"


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda path: path.stem)
def test_published_charts_are_read_whole(path: Path) -> None:
    chart = read_chart(path)
    assert all(value for key in chart.keys for value in chart.row(key))


def test_other_files_are_no_charts(tmp_path: Path) -> None:
    body = tmp_path / "body.csv"
    body.write_text("measure,value\nunit,cm\nbust_girth,90\n")
    many = tmp_path / "many.csv"
    many.write_text("id,unit,bust_girth\na,cm,90\n")
    assert not holds_chart(body)
    assert not holds_chart(many)
    assert read_measures(body).value("bust_girth") == 900.0
    with pytest.raises(InputError, match="chart-not-a-chart"):
        read_chart(many)


@pytest.mark.parametrize(
    ("text", "code", "place"),
    [
        ("measure,36,36\nunit,cm\n", "measures-csv-header", ""),
        ("measure\nunit\n", "chart-not-a-chart", ""),
        ("measure,36,38\nunit,cm\nbust_girth,84,88\nbust_girth,84,88\n", "measure-duplicate", "line 4"),
        ("measure,36,38\nunit,cm\nunit,in\n", "measure-duplicate", "line 3"),
        ("measure,36,38\nunit,cm\nbust_girth,84,88,92\n", "measures-csv-cells", "line 3"),
        ("measure,36,38\nbust_girth,84,88\n", "length-unit-missing", "line 2"),
        ("measure,36,38\nunit,cm\nbust_girth,84,-8\n", "number-negative", "line 3"),
    ],
)
def test_a_refused_file_is_told_where(text: str, code: str, place: str, tmp_path: Path) -> None:
    path = tmp_path / "wrong.csv"
    path.write_text(text)
    with pytest.raises(InputError) as refused:
        read_chart(path)
    assert refused.value.code == code
    assert "wrong.csv" in refused.value.text()
    assert place in refused.value.text()


def test_another_ending_and_a_missing_folder_are_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="measures-file-kind"):
        write_chart(CHART, tmp_path / "chart.xls")
    with pytest.raises(InputError, match="measures-file-kind"):
        read_chart(tmp_path / "chart.pdf")
    with pytest.raises(OutputError, match="measures-file-not-written"):
        write_chart(CHART, tmp_path / "nowhere" / "chart.json")
    assert not list(tmp_path.iterdir())
