"""Reading many bodies: a bad line never stops the others."""

from pathlib import Path

import pytest

from notchbook.body import read_bodies
from notchbook.errors import InputError

EXAMPLES = Path(__file__).parents[3] / "examples" / "measures"


def bodies_file(folder: Path, content: str) -> Path:
    path = folder / "bodies.csv"
    path.write_bytes(content.encode("utf-8"))
    return path


def test_the_example_is_read_in_three_units() -> None:
    rows = list(read_bodies(EXAMPLES / "bodies.csv"))
    assert [row.error for row in rows] == [None] * 4
    waists = [row.measures.value("waist_girth") for row in rows if row.measures]
    assert waists == [645.0, 740.0, 908.05, 810.0]
    last = rows[3].measures
    assert last is not None
    assert last.sides_differ()
    assert "nvented" in last.note


BAD_LINES = [
    ("b,cm,7,98", "measure-impossible", ("line 3", "waist_girth", "70.0 cm")),
    ("b,,74,98", "length-unit-missing", ("line 3", "waist_girth")),
    ("b,ells,74,98", "length-unit-unknown", ("line 3", "ells")),
    ("b,cm,seventy,98", "number-text", ("line 3", "seventy")),
    ("b,cm,nan,98", "number-not-finite", ("line 3",)),
    ("b,cm,74,-98", "number-negative", ("hip_girth",)),
    ("b,cm,100,65", "hip-too-small", ("line 3",)),
    ("b,cm,74,98,12", "measures-csv-cells", ("line 3",)),
    ('"b,cm,74,98', "measures-csv-quotes", ("line 3",)),
    (",cm,74,98", "bodies-id-missing", ("line 3",)),
    ("a,cm,74,98", "bodies-id-twice", ("line 3", "a")),
]


@pytest.mark.parametrize(("line", "code", "words"), BAD_LINES)
def test_a_bad_line_is_told_and_the_rest_is_read(
    line: str, code: str, words: tuple[str, ...], tmp_path: Path
) -> None:
    path = bodies_file(tmp_path, f"id,unit,waist_girth,hip_girth\na,cm,74,98\n{line}\nc,cm,75,99\n")
    first, bad, last = read_bodies(path)
    assert first.measures is not None
    assert first.measures.name == "a"
    assert last.measures is not None
    assert (last.line, last.id) == (4, "c")
    assert bad.measures is None
    assert bad.error is not None
    assert bad.error.code == code
    assert "bodies.csv" in bad.error.text()
    for word in words:
        assert word in str(bad.error)


@pytest.mark.parametrize(
    ("header", "code"),
    [
        ("id,unit,waist,hip_girth", "measure-unknown"),
        ("unit,waist_girth", "measures-csv-columns"),
        ("id,unit", "measures-csv-columns"),
        ("id,unit,hip_girth,hip_girth", "measures-csv-header"),
        ("id,unit,height@left", "measure-not-sided"),
    ],
)
def test_a_bad_header_is_refused_before_any_line(header: str, code: str, tmp_path: Path) -> None:
    path = bodies_file(tmp_path, header + "\na,cm,74,98\n")
    with pytest.raises(InputError) as refusal:
        read_bodies(path)
    assert refusal.value.code == code
    assert "bodies.csv" in str(refusal.value)


def test_a_missing_file_is_refused_at_once(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="measures-file-missing"):
        read_bodies(tmp_path / "none.csv")


def test_an_empty_cell_is_a_measure_that_was_not_taken(tmp_path: Path) -> None:
    path = bodies_file(tmp_path, "id,unit,waist_girth,hip_girth,status\na,cm,74,,chart\n")
    (row,) = read_bodies(path)
    assert row.measures is not None
    assert not row.measures.has("hip_girth")
    assert row.measures.get("waist_girth").status == "chart"


def test_a_header_alone_gives_no_rows(tmp_path: Path) -> None:
    assert list(read_bodies(bodies_file(tmp_path, "id,unit,waist_girth\n"))) == []
