"""`notchbook measures chart`: showing a size chart, and writing it to a file that she can edit."""

import json
from pathlib import Path

import pytest

from house import ROOT
from notchbook.body.charts import SizeChart, read_chart, shipped_chart, write_chart
from support.charts import even_chart
from support.command import typed


def test_the_charts_of_the_program_are_listed() -> None:
    ended = typed("measures", "chart")
    assert ended.code == 0
    assert "women" in ended.out
    assert "men" in ended.out
    assert "not civilians" in ended.out
    data = json.loads(typed("measures", "chart", "--json").out)
    assert [one["word"] for one in data["charts"]] == ["women", "men"]


def test_a_chart_is_shown_whole_with_its_source() -> None:
    ended = typed("measures", "chart", "women")
    assert "not a civilian population" in ended.out
    assert "Not the chart of any maker" in ended.out
    rows = [line.split() for line in ended.out.splitlines()]
    busts = [f"{float(label):.1f}" for label in shipped_chart("women").labels]
    assert [row[2:] for row in rows if row[:2] == ["bust", "girth"]] == [busts[:6], busts[6:]]


def test_a_chart_without_sizes_is_shown(tmp_path: Path) -> None:
    write_chart(SizeChart("New"), tmp_path / "new.json")
    ended = typed("measures", "chart", tmp_path / "new.json")
    assert (ended.code, "New: 0 sizes" in ended.out) == (0, True)


def test_inches_are_shown_in_several_tables_and_no_cell_is_broken() -> None:
    out = typed("measures", "chart", "women", "--unit", "in").out
    assert out.count("bust girth") >= 2
    assert max(map(len, out.partition("\nChart:")[0].splitlines()[3:])) <= 110
    assert "29 15/16" in out  # 760 mm are 29.92 in.


def test_her_own_file_is_shown_too(tmp_path: Path) -> None:
    write_chart(even_chart(), tmp_path / "even.csv")
    ended = typed("measures", "chart", tmp_path / "even.csv", "--unit", "cm")
    assert "back waist length" in ended.out
    data = json.loads(typed("measures", "chart", tmp_path / "even.csv", "--json").out)
    assert data["chart"]["sizes"] == list(even_chart().labels)


@pytest.mark.parametrize("name", ["chart.csv", "chart.json"])
def test_a_chart_is_written_to_be_edited_and_reads_back_equal(name: str, tmp_path: Path) -> None:
    ended = typed("measures", "chart", "women", "--out", tmp_path / name, "--unit", "cm")
    assert ended.code == 0
    assert read_chart(tmp_path / name) == shipped_chart("women")
    assert "status" in ended.out
    if name.endswith("csv"):
        text = (tmp_path / name).read_text(encoding="utf-8")
        assert "\nunit,cm" in text
        assert "\nbust_girth,76," in text


def test_what_she_has_edited_is_not_written_over(tmp_path: Path) -> None:
    place = tmp_path / "mine.csv"
    place.write_text("hers", encoding="utf-8")
    ended = typed("measures", "chart", "women", "--out", place)
    assert ended.code == 2
    assert "[chart-file-exists]" in ended.err
    assert place.read_text(encoding="utf-8") == "hers"


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("ladies",), "chart-unknown"),
        (("women", "--out", "chart.xls"), "measures-file-kind"),
        (("--out", "chart.csv"), "chart-which"),
        ((ROOT / "examples" / "measures" / "rosa_l.json",), "chart-not-a-chart"),
    ],
)
def test_bad_words_are_refused_with_a_code(
    words: tuple[str, ...], code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    ended = typed("measures", "chart", *words)
    assert (ended.code, f"[{code}]" in ended.err) == (2, True)
    assert not list(tmp_path.iterdir())
