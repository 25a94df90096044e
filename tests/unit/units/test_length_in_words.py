"""Lengths within sentences."""

import pytest

from notchbook.units import LengthStyle, Unit, length_in_words


@pytest.mark.parametrize(
    ("mm", "unit", "words"),
    [
        (247.2, "cm", "24.7 cm"),
        (18.3, "cm", "1.8 cm"),
        (6.0, "cm", "6 mm"),
        (9.97, "cm", "1.0 cm"),
        (0.34, "cm", "0.3 mm"),
        (0.03, "cm", "0.03 mm"),
        (0.004, "cm", "0 mm"),
        (0.0, "cm", "0 mm"),
        (0.05, "in", "0.002 in"),
        (-6.0, "cm", "-6 mm"),
        (247.2, "mm", "247.2 mm"),
        (247.0, "mm", "247 mm"),
        (952.5, "in", '37 1/2"'),
        (6.35, "in", '1/4"'),
        (2.4, "in", '3/32"'),
        (0.4, "in", '1/64"'),
    ],
)
def test_no_finer_and_no_coarser_than_is_read(mm: float, unit: Unit, words: str) -> None:
    assert length_in_words(mm, LengthStyle(unit)) == words


def test_the_reader_s_own_signs() -> None:
    assert length_in_words(2.5, LengthStyle("cm", decimal_sign=",")) == "2,5 mm"
    assert length_in_words(6.35, LengthStyle("in", fraction_denominator=None)) == "0.250 in"
