"""`notchbook measures list` and `notchbook measures sheet`."""

import json
from pathlib import Path

import pypdfium2
import pytest

from notchbook.app.demo import demo_client
from notchbook.body import measure_table, write_measures
from support.command import typed


def test_list_shows_every_measure_with_its_level_and_clause() -> None:
    ended = typed("measures", "list")
    assert ended.code == 0
    lines = ended.out.splitlines()
    for entry in measure_table().values():
        line = next(line for line in lines if line.split()[:2] == [str(entry.number), entry.key])
        assert entry.level in line
        assert (entry.iso or "") in line
        assert f"{entry.iso}?" in line if entry.iso_doubtful else "?" not in line
    assert "notchbook measures sheet" in ended.out


def test_list_in_json_has_the_whole_table() -> None:
    told = json.loads(typed("measures", "list", "--json").out)["measures"]
    assert [one["key"] for one in told] == list(measure_table())
    for one in told:
        entry = measure_table()[one["key"]]
        assert one["how"] == entry.how
        assert one["twice"] is entry.twice
        assert one["repeat"] == entry.repeat
        assert tuple(one["landmarks"]) == entry.landmarks


def test_one_measure_is_shown_whole() -> None:
    ended = typed("measures", "list", "waist_girth")
    assert ended.code == 0
    for said in (
        "Waist girth",
        "twice, the tape off between",
        "1.0 cm",
        "5.3.10",
        "56.0 cm",
        "natural waist:",
    ):
        assert said in ended.out, said
    inches = typed("measures", "list", "hip_depth", "--unit", "in").out
    for said in ('3/16"', "hip_depth@left", "-1 mm for each mm", "figure     side"):
        assert said in inches, said
    assert "degrees" not in inches
    assert "not drawn" in typed("measures", "list", "weight").out
    assert "5.1.1 (second-hand, doubtful)" in typed("measures", "list", "height").out


def test_one_measure_in_json() -> None:
    told = json.loads(typed("measures", "list", "shoulder_slope", "--json").out)
    assert told["measure"]["unit"] == "deg"
    assert "measures" not in told


def test_an_unknown_measure_is_refused_with_the_nearest() -> None:
    ended = typed("measures", "list", "hipdepth")
    assert ended.code == 2
    assert "hip_depth" in ended.err
    assert ended.out == ""


def test_a_blank_sheet_has_a_name_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    ended = typed("measures", "sheet")
    assert ended.code == 0
    assert "blank" in ended.out
    assert "women" in ended.out
    assert (tmp_path / "measure-sheet.pdf").read_bytes().startswith(b"%PDF")


def test_a_filled_sheet(tmp_path: Path) -> None:
    write_measures(demo_client(), tmp_path / "client.json")
    target = tmp_path / "client.pdf"
    words = ("measures", "sheet", str(tmp_path / "client.json"), "-o", str(target))
    told = json.loads(typed(*words, "--population", "men", "--paper", "letter", "--json").out)
    assert told == {
        "ok": True,
        "file": str(target),
        "paper": "letter",
        "population": "men",
        "filled": True,
    }
    document = pypdfium2.PdfDocument(target)
    assert document[0].get_size() == pytest.approx((612, 792))
    assert demo_client().name in document[0].get_textpage().get_text_range()


def test_a_short_sheet_for_a_block(tmp_path: Path) -> None:
    target = tmp_path / "skirt.pdf"
    told = json.loads(typed("measures", "sheet", "--for", "skirt", "-o", str(target), "--json").out)
    assert told["for"] == "skirt"
    (page,) = pypdfium2.PdfDocument(target)
    words = page.get_textpage().get_text_range()
    assert "Hip depth" in words
    assert "Shoulder length" not in words


def test_men_are_asked_in_mens_words(tmp_path: Path) -> None:
    told = json.loads(typed("measures", "list", "bust_girth", "--json").out)["measure"]
    assert (told["label"], told["label_men"]) == ("Bust girth", "Chest girth")
    assert "Chest girth" in typed("measures", "list", "bust_girth").out
    assert "not asked for" in typed("measures", "list", "under_bust_girth").out
    assert "a dress form has none" in typed("measures", "list", "inside_leg").out


@pytest.mark.parametrize(
    "words",
    [
        ("nothing.json",),
        ("--for", "gown"),
        ("--paper", "a3"),
        ("--population", "children"),
        ("--out", "no/such/sheet.pdf"),
    ],
)
def test_what_is_refused_writes_nothing(
    words: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    ended = typed("measures", "sheet", *words)
    assert ended.code == 2
    assert "Traceback" not in ended.err + ended.out
    assert list(tmp_path.iterdir()) == []
