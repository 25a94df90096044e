"""Readings typed where a value stands, and refusals in the unit of the file."""

from pathlib import Path

import pytest

from notchbook.body import read_bodies, read_measures
from notchbook.errors import InputError


def one_body(folder: Path, *lines: str) -> Path:
    path = folder / "client.csv"
    path.write_text("\n".join(("measure,value", "name,A", *lines)), encoding="utf-8")
    return path


def test_readings_in_place_of_the_value_are_readings(tmp_path: Path) -> None:
    body = read_measures(one_body(tmp_path, "unit,cm", "bust_girth,92 & 94.5", "waist_girth,74"))
    assert body.get("bust_girth").readings == (920.0, 945.0)
    assert body.value("bust_girth") == 932.5
    inches = read_measures(one_body(tmp_path, "unit,in", "bust_girth,36 1/2 & 37"))
    assert inches.get("bust_girth").readings == pytest.approx((927.1, 939.8))


def test_a_bodies_file_takes_them_in_its_plain_column(tmp_path: Path) -> None:
    path = tmp_path / "bodies.csv"
    path.write_text("id,unit,bust_girth,waist_girth\na,cm,92 & 94.5,74\n", encoding="utf-8")
    (row,) = read_bodies(path)
    assert row.measures is not None
    assert row.measures.get("bust_girth").readings == (920.0, 945.0)


def test_a_second_row_with_an_id_keeps_it(tmp_path: Path) -> None:
    path = tmp_path / "bodies.csv"
    path.write_text("id,unit,bust_girth\na,cm,92\na,cm,93\n,cm,94\n", encoding="utf-8")
    assert [row.id for row in read_bodies(path)] == ["a", "a", ""]


@pytest.mark.parametrize(
    ("lines", "code", "words"),
    [
        (("unit,cm", "waist_drop,3", "bust_girth,92"), "waist-level", "a drop of 3.0 cm"),
        (("unit,in", "waist_drop,1 1/2", "bust_girth,36"), "waist-level", 'a drop of 1 1/2"'),
        (("unit,cm", "bust_girth,2.05"), "measure-impossible", "of 2.05 cm is"),
        (("unit,cm", "bust_girth,0"), "measure-zero", "Leave it empty"),
    ],
)
def test_a_refusal_speaks_in_the_unit_of_the_file(
    tmp_path: Path, lines: tuple[str, ...], code: str, words: str
) -> None:
    with pytest.raises(InputError) as refused:
        read_measures(one_body(tmp_path, *lines))
    assert refused.value.code == code
    assert words in str(refused.value)
    assert " mm" not in str(refused.value)


def test_a_value_beside_other_readings_is_told_in_the_unit_of_the_file(tmp_path: Path) -> None:
    path = tmp_path / "client.csv"
    path.write_text("measure,value,readings\nname,A,\nunit,cm,\nbust_girth,95,92 & 94\n", encoding="utf-8")
    with pytest.raises(InputError, match=r"The value \(95\.0 cm\)"):
        read_measures(path)
