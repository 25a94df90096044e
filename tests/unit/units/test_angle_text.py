"""Reading and writing degrees."""

import math

import pytest

from notchbook.errors import InputError
from notchbook.units import format_degrees, parse_degrees


@pytest.mark.parametrize(
    ("text", "degrees"),
    [("24.3", 24.3), ("24,3 deg", 24.3), ("22 1/2°", 22.5), ("-3 degrees", -3.0), ("0", 0.0), ("360", 360.0)],
)
def test_degrees_are_understood(text: str, degrees: float) -> None:
    assert parse_degrees(text) == degrees


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "number-empty"),
        ("steep", "number-text"),
        ("24 cm", "angle-unit"),
        ("0.4 rad", "angle-unit"),
        ("24 30", "angle-unit"),
        ("1.2.3", "number-decimal-signs"),
        ("1e2", "number-exponent"),
        ("nan", "number-not-finite"),
        ("361", "angle-too-large"),
    ],
)
def test_degrees_are_refused(text: str, code: str) -> None:
    with pytest.raises(InputError) as refusal:
        parse_degrees(text)
    assert refusal.value.code == code


def test_negative_degrees_only_where_they_are_allowed() -> None:
    with pytest.raises(InputError, match="number-negative"):
        parse_degrees("-3", allow_negative=False)


def test_degrees_are_written() -> None:
    assert format_degrees(24.25) == "24.3°"
    assert format_degrees(-0.04) == "0.0°"
    assert format_degrees(24.25, 2, decimal_sign=",") == "24,25°"
    with pytest.raises(InputError):
        format_degrees(math.nan)
