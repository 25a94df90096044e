"""Reading and writing the measures of one body."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

from notchbook.body import Measure, MeasureSet, read_measures, set_from_data, set_to_data, write_measures
from notchbook.errors import InputError, OutputError

EXAMPLES = Path(__file__).parents[3] / "examples" / "measures"
BAD: dict[str, dict[str, Any]] = tomllib.loads(
    (Path(__file__).parent / "bad_measure_files.toml").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("name", BAD)
def test_a_bad_file_is_refused_with_its_code_and_place(name: str, tmp_path: Path) -> None:
    case = BAD[name]
    path = tmp_path / f"{name}.{case['ending']}"
    path.write_bytes(bytes.fromhex(case["hex"]) if "hex" in case else case["text"].encode("utf-8"))
    with pytest.raises(InputError) as refusal:
        read_measures(path)
    assert refusal.value.code == case["code"]
    words = str(refusal.value)
    for word in case["words"]:
        assert word in words
    assert path.name in words
    assert str(tmp_path) not in words


def test_a_missing_file_a_folder_and_an_odd_name(tmp_path: Path) -> None:
    (tmp_path / "folder.csv").mkdir()
    for path, code in (
        (tmp_path / "none.csv", "measures-file-missing"),
        (tmp_path / "folder.csv", "measures-file-is-folder"),
        (tmp_path, "measures-file-is-folder"),
        (tmp_path / "a\0b.csv", "measures-file-unreadable"),
        (tmp_path / ("x" * 300 + ".csv"), "measures-file-unreadable"),
    ):
        with pytest.raises(InputError) as refusal:
            read_measures(path)
        assert refusal.value.code == code
        assert refusal.value.text()


def test_a_file_that_is_too_large_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "large.csv"
    path.write_bytes(b"measure,value,unit\nhip_girth,98,cm\n" + b"\n" * 5_000_000)
    with pytest.raises(InputError, match="measures-file-too-large"):
        read_measures(path)


@pytest.mark.parametrize("content", ["[" * 200_000, '{"a":' * 200_000, "[" + "9" * 5000 + "]"])
def test_files_made_to_harm_are_refused(content: str, tmp_path: Path) -> None:
    path = tmp_path / "harm.json"
    path.write_text(content)
    with pytest.raises(InputError) as refusal:
        read_measures(path)
    assert refusal.value.code in {"measures-json-endless", "measures-json-broken"}


def test_a_number_of_many_digits_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "many.json"
    path.write_text('{"name": "A", "unit": "cm", "measures": {"hip_girth": ' + "9" * 4000 + "}}")
    with pytest.raises(InputError, match="number-too-long"):
        read_measures(path)


EXPECTED = {"height": 1680.0, "waist_girth": 749.3, "hip_girth": 985.0}
SAME = [
    ("comma.csv", "measure,value,unit\nname,A,\nheight,168,cm\nwaist_girth,29 1/2,in\nhip_girth,98.5,cm\n"),
    ("semi.csv", "measure;value;unit\nname;A\nheight;168;cm\nwaist_girth;29½;in\nhip_girth;98,5;cm\n"),
    ("tab.tsv", 'measure\tvalue\nname\tA\nunit\tcm\nheight\t168\nwaist_girth\t29 1/2"\nhip_girth\t98,5\n'),
    ("quote.csv", 'measure,value\nname,A\nunit,cm\nheight,168\nwaist_girth,29 1/2"\nhip_girth,"98,5"\n'),
    ("order.csv", "unit,VALUE,measure\ncm,98.5,Hip_Girth\ncm,168,height\nin,29.5,waist_girth\n,A,name\n"),
    (
        "crlf.csv",
        "measure,value\r\n\r\nname,A\r\nunit,mm\r\nheight,1680\r\nwaist_girth,749.3\r\nhip_girth,985\r\n",
    ),
    (
        "mark.csv",
        "\ufeffmeasure,value,,\nname,A,,\nunit,mm,,\nheight,1680,,\nwaist_girth,749.3\nhip_girth,985\n",
    ),
    (
        "one.json",
        '{"name": "A", "unit": "cm",'
        ' "measures": {"height": 168, "waist_girth": "29 1/2 in", "hip_girth": 98.5}}',
    ),
    (
        "two.json",
        '\ufeff{"name": "A", "measures": {"height": {"value": 168, "unit": "cm"},'
        ' "waist_girth": {"value": "29,5", "unit": "in"}, "hip_girth": "985 mm"}}',
    ),
]


@pytest.mark.parametrize(("name", "content"), SAME)
def test_the_same_body_in_many_writings(name: str, content: str, tmp_path: Path) -> None:
    path = tmp_path / name
    path.write_bytes(content.encode("utf-8"))
    assert read_measures(path) == MeasureSet.from_mm("A", EXPECTED)


def test_without_a_name_the_files_name_is_taken(tmp_path: Path) -> None:
    path = tmp_path / "Form B.csv"
    path.write_text("measure,value,unit\nhip_girth,98,cm\n")
    assert read_measures(str(path)).name == "Form B"


def test_angles_and_weights_have_their_own_unit(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_text("measure,value,unit\nunit,in,\nshoulder_slope,22.5,deg\nweight,62 kg,\n")
    measures = read_measures(path)
    assert measures.value("shoulder_slope") == 22.5
    assert measures.value("weight") == 62.0


FULL = MeasureSet(
    'Inés, the "second"',
    {
        "hip_girth": Measure(1000.125, "chart"),
        "waist_girth": Measure(749.3, "estimated", 12.5, "from bust and hip", "studio", "ask; again, soon"),
        "hip_depth": Measure(205),
        "hip_depth@left": Measure(190.00000000000003, note="higher"),
        "shoulder_slope": Measure(22.5),
        "weight": Measure(61.7),
    },
    kind="form",
    waist_level="lower",
    waist_drop=35.5,
    rise_method="sitting",
    note="Invented.",
)


@pytest.mark.parametrize("ending", ["json", "csv"])
def test_what_is_written_reads_back_equal(ending: str, tmp_path: Path) -> None:
    path = tmp_path / f"full.{ending}"
    write_measures(FULL, path)
    assert read_measures(path) == FULL
    first = path.read_bytes()
    write_measures(read_measures(path), path)
    assert path.read_bytes() == first
    assert [item.name for item in tmp_path.iterdir()] == [path.name]


def test_data_is_plain_and_reads_back_equal() -> None:
    data = set_to_data(FULL)
    assert json.loads(json.dumps(data)) == data
    assert set_from_data(data) == FULL
    assert data["measures"]["hip_depth"] == 205


@pytest.mark.parametrize(
    "data", [None, [], "text", {"measures": 3}, {"name": "A", "measures": {"hip_girth": []}}]
)
def test_data_that_is_no_set_is_refused_in_words(data: object) -> None:
    with pytest.raises(InputError) as refusal:
        set_from_data(data)
    assert refusal.value.text()


def test_a_file_that_cannot_be_written_leaves_nothing_behind(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="measures-file-not-written"):
        write_measures(FULL, tmp_path / "none" / "a.json")
    (tmp_path / "folder.json").mkdir()
    with pytest.raises(OutputError, match="measures-file-not-written"):
        write_measures(FULL, tmp_path / "folder.json")
    with pytest.raises(InputError, match="measures-file-kind"):
        write_measures(FULL, tmp_path / "a.xyz")
    assert [item.name for item in tmp_path.iterdir()] == ["folder.json"]


@pytest.mark.parametrize("name", ["form_a.json", "marta_v.csv", "ines_k.json"])
def test_the_examples_are_read_and_say_that_they_are_invented(name: str) -> None:
    measures = read_measures(EXAMPLES / name)
    measures.require(("height", "waist_girth", "hip_girth", "hip_depth"))
    assert "nvented" in measures.note


def test_the_examples_in_inches_and_with_sides() -> None:
    assert read_measures(EXAMPLES / "marta_v.csv").value("hip_girth") == 39.375 * 25.4
    ines = read_measures(EXAMPLES / "ines_k.json")
    assert ines.sides_differ(["hip_depth"])
    assert (ines.value("hip_depth", "left"), ines.value("hip_depth", "right")) == (190.0, 205.0)
