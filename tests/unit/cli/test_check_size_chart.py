"""`notchbook measures check` of a size chart."""

import json
from pathlib import Path

import pytest

from notchbook.body.charts import set_cell, shipped_chart, write_chart
from support.charts import even_chart
from support.command import typed


@pytest.fixture
def chart(tmp_path: Path) -> Path:
    """A chart with one value that breaks its run, as a file."""
    path = tmp_path / "chart.csv"
    write_chart(set_cell(even_chart(), "40", "waist_girth", 680.0), path)
    return path


def test_a_chart_is_looked_over(chart: Path) -> None:
    ended = typed("measures", "check", chart)
    assert ended.code == 1
    assert "Waist girth of size 40 (68.0 cm) breaks the run" in ended.out
    assert "Not held against people" in ended.out


def test_in_inches_and_for_programs(chart: Path) -> None:
    assert '26 3/4"' in typed("measures", "check", chart, "--unit", "in").out
    data = json.loads(typed("measures", "check", chart, "--json").out)
    assert data["kind"] == "size_chart"
    assert [(doubt["code"], doubt["sizes"]) for doubt in data["doubts"]] == [("chart-cell-off-run", ["40"])]
    assert data["doubts"][0]["expected"] == pytest.approx(760.0)


def test_a_chart_that_is_fine_ends_with_0(tmp_path: Path) -> None:
    write_chart(shipped_chart("women"), tmp_path / "women.json")
    ended = typed("measures", "check", tmp_path / "women.json")
    assert ended.code == 0
    assert "Nothing to look at again." in ended.out


def test_a_population_may_be_named(chart: Path) -> None:
    data = json.loads(typed("measures", "check", chart, "--population", "women", "--json").out)
    assert data["population"] == "women"


def test_a_broken_chart_is_refused(tmp_path: Path) -> None:
    (tmp_path / "chart.csv").write_text("measure,36,38\nunit,cm\nbust_girth,84,x\n")
    ended = typed("measures", "check", tmp_path / "chart.csv")
    assert ended.code == 2
    assert "line 3" in ended.err
