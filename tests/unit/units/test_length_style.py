"""Writing lengths in the reader's unit."""

import math

import pytest

from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit, format_length


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [
        (953.0, "cm", "95.3 cm"),
        (952.5, "cm", "95.3 cm"),
        (952.49, "cm", "95.2 cm"),
        (-952.5, "cm", "-95.3 cm"),
        (0.04, "cm", "0.0 cm"),
        (-0.04, "cm", "0.0 cm"),
        (953.0, "mm", "953.0 mm"),
        (952.5, "in", '37 1/2"'),
        (9.525, "in", '3/8"'),
        (25.4, "in", '1"'),
        (0.0, "in", '0"'),
        (-0.5, "in", '0"'),
        (25.39, "in", '1"'),
        (-63.5, "in", '-2 1/2"'),
        # 15/16 and a half step more: the carry goes into the next inch.
        (25.4 * (15.5 / 16) + 1e-9, "in", '1"'),
        (25.4 * (15.5 / 16) - 1e-9, "in", '15/16"'),
    ],
)
def test_a_length_is_written(mm: float, unit: Unit, text: str) -> None:
    assert format_length(mm, unit) == text


def test_decimals_and_decimal_sign_are_the_readers() -> None:
    assert format_length(953.24, "cm", 2) == "95.32 cm"
    assert format_length(953.24, "mm", 0) == "953 mm"
    assert format_length(953.24, "cm", decimal_sign=",") == "95,3 cm"
    assert format_length(952.5, "in", 2) == "37.50 in"
    assert format_length(952.5, "in", fraction_denominator=None) == "37.500 in"
    assert LengthStyle("cm", ",").text(953.24) == "95,3 cm"
    assert LengthStyle("in", fraction_denominator=8).text(953.9) == '37 1/2"'
    assert LengthStyle("in", fraction_denominator=32).text(25.4 / 32) == '1/32"'


def test_the_step_of_a_style() -> None:
    assert LengthStyle("cm").step == 1.0
    assert LengthStyle("mm").step == 0.1
    assert LengthStyle("in").step == 25.4 / 16
    assert LengthStyle("in", fraction_denominator=None).step == pytest.approx(0.0254)


def test_a_style_reads_a_bare_number_in_its_unit() -> None:
    assert LengthStyle("in").parse("37 1/2") == 952.5
    assert LengthStyle("cm").parse("95,3") == 953.0
    with pytest.raises(InputError):
        LengthStyle("cm").parse("-1")


def test_what_cannot_be_written_is_refused() -> None:
    for mm in (math.nan, math.inf, -math.inf):
        with pytest.raises(InputError, match="number-not-finite"):
            format_length(mm, "cm")
    with pytest.raises(InputError, match="fraction-denominator"):
        LengthStyle("in", fraction_denominator=10)
    with pytest.raises(InputError, match="fraction-denominator"):
        format_length(1.0, "in", fraction_denominator=0)
    for precision in (-1, 7):
        with pytest.raises(InputError, match="length-precision"):
            format_length(1.0, "cm", precision)
