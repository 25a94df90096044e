"""Weights as they are typed. One pound is 0.45359237 kg exactly (international agreement of 1959)."""

from pathlib import Path

import pytest

from notchbook.body import read_measures
from notchbook.body.files.weight import parse_weight
from notchbook.errors import InputError


@pytest.mark.parametrize(
    ("text", "unit", "kilograms"),
    [
        ("62.5", "", 62.5),
        ("62.5 kg", "", 62.5),
        ("62.5kg", "kg", 62.5),
        ("100 lb", "", 45.359237),
        ("100 LBS", "", 45.359237),
        ("100", "lb", 45.359237),
        ("100 lbs", "lb", 45.359237),
    ],
)
def test_pounds_are_read_where_they_are_said(text: str, unit: str, kilograms: float) -> None:
    assert parse_weight(text, unit) == pytest.approx(kilograms, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "unit"), [("100 lb", "kg"), ("62 kg", "lb"), ("9 st", ""), ("lb", ""), ("", "")]
)
def test_what_does_not_read_is_refused(text: str, unit: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_weight(text, unit)
    assert caught.value.code.startswith("number-")


@pytest.mark.parametrize("weight", ["140 lb,", "140,lb"])
def test_a_file_in_inches_may_say_pounds(tmp_path: Path, weight: str) -> None:
    file = tmp_path / "client.csv"
    lines = ("measure,value,unit", "name,Invented,", "unit,in,", "height,66,in", f"weight,{weight}")
    file.write_text("\n".join(lines), encoding="utf-8")
    assert read_measures(file).value("weight") == pytest.approx(63.5029318)
