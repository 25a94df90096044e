"""Reading lengths: what is understood, and what is refused with which code."""

import pytest
from scipy import constants

from notchbook.errors import InputError
from notchbook.units import Unit, parse_length, parse_number, unit_named, written_unit

UNDERSTOOD = [
    ('37 1/2"', 952.5),
    ('37-1/2"', 952.5),
    ("37½″", 952.5),
    ("37 ½ in", 952.5),
    ("37.5 in", 952.5),
    ("37,5 inches", 952.5),
    ("37''", 939.8),
    ("⅜ in.", 9.525),
    ("3/8 in", 9.525),
    ("3⁄8 in", 9.525),
    ("95,3 cm", 953.0),
    ("95.3cm", 953.0),
    ("953 mm", 953.0),
    ("\u00a0953\u2009MM ", 953.0),
    ("+12 mm", 12.0),
    ("12", 120.0),
    (".5", 5.0),
    ("0,125 cm", 1.25),
    ("1.234 cm", 12.34),
    ("1234 mm", 1234.0),
    ("100 cm", 1000.0),
    ("0", 0.0),
]


@pytest.mark.parametrize(("text", "mm"), UNDERSTOOD)
def test_a_length_is_understood(text: str, mm: float) -> None:
    assert parse_length(text, "cm") == mm


# A foot is 12 in, an inch 25.4 mm: international yard and pound agreement of 1959.
FEET = [
    ("5'6\"", 66),
    ("5'6", 66),
    ("5′6″", 66),
    ("5'6''", 66),
    ("5' 6 1/2\"", 66.5),
    ("5' 6½\"", 66.5),
    ("5'-6\"", 66),
    ("5ft 6in", 66),
    ("5ft6in.", 66),
    ("5 ft. 6 in.", 66),
    ("5 feet 6 inches", 66),
    ("5 Feet, 6.5 inches", 66.5),
    ("5 ft", 60),
    ("1 foot", 12),
    ("5.5 ft", 66),
    ("0' 11 3/4\"", 11.75),
]


@pytest.mark.parametrize(("text", "inches"), FEET)
def test_feet_and_inches_are_understood_whatever_the_default(text: str, inches: float) -> None:
    assert parse_length(text, "cm") == pytest.approx(inches * 25.4, rel=1e-12)
    assert written_unit(text) == "in"


def test_a_foot_is_that_of_scipy() -> None:
    # Outside: scipy.constants, after the international foot of 1959.
    assert parse_length("1 ft", "mm") == pytest.approx(constants.foot * 1000, rel=1e-15)
    assert parse_length("-1 ft", "mm", allow_negative=True) == pytest.approx(-304.8)


REFUSED = [
    ("", "number-empty"),
    ("  \t ", "number-empty"),
    ("about 95", "number-text"),
    ("9O", "length-unit-unknown"),
    ("95 cm?", "number-text"),
    ("१२", "number-text"),
    ("=A1", "number-text"),
    ("3/4/5", "number-text"),
    ("--3", "number-text"),
    ("37 - 1/2", "number-text"),
    ("95..3", "number-decimal-signs"),
    ("95.", "number-decimal-signs"),
    ("1,234", "number-decimal-signs"),
    ("1,234 mm", "number-decimal-signs"),
    ("1.234,5", "number-decimal-signs"),
    ("1 234", "number-decimal-signs"),
    ("1_234", "number-decimal-signs"),
    ("1 000 000", "number-decimal-signs"),
    ("-3 cm", "number-negative"),
    ("−3 cm", "number-negative"),
    ("nan", "number-not-finite"),
    ("NaN cm", "number-not-finite"),
    ("-inf", "number-not-finite"),
    ("Infinity", "number-not-finite"),
    ("1e999", "number-exponent"),
    ("9.5e1 cm", "number-exponent"),
    ("1/0", "number-zero-denominator"),
    ("37 1/0 in", "number-zero-denominator"),
    ("37 5/4 in", "number-fraction"),
    ("37 4/4 in", "number-fraction"),
    ("1/1001 in", "number-fraction"),
    ("9" * 21, "number-too-long"),
    ("9" * 201, "number-too-long"),
    ("10001 cm", "length-too-large"),
    ("3940 in", "length-too-large"),
    ("1 cm 5 mm", "length-unit-mixed"),
    ("3 in and 2 cm", "length-unit-mixed"),
    ("1'234", "length-feet"),
    ("5' 12\"", "length-feet"),
    ("5 ft 14 in", "length-feet"),
    ("5.5' 6\"", "length-feet"),
    ("5' 6' 7", "length-feet"),
    ("5' 6 cm", "length-feet"),
    ("6 in 5 ft", "length-feet"),
    ("5 feets", "length-unit-unknown"),
    ("5' 6 5/4", "number-fraction"),
    ("400 ft", "length-too-large"),
    ("-5 ft", "number-negative"),
    ("1 m", "length-unit-unknown"),
    ("2 yd.", "length-unit-unknown"),
]


@pytest.mark.parametrize(("text", "code"), REFUSED)
def test_a_length_is_refused_with_its_code_and_words(text: str, code: str) -> None:
    with pytest.raises(InputError) as refusal:
        parse_length(text, "cm")
    assert refusal.value.code == code
    assert len(refusal.value.text()) > 10
    assert refusal.value.next_step()


def test_a_bare_number_without_a_default_unit_is_refused() -> None:
    with pytest.raises(InputError) as refusal:
        parse_length("95", None)
    assert refusal.value.code == "length-unit-missing"
    assert parse_length("95 cm", None) == 950.0


def test_negative_lengths_only_where_they_are_allowed() -> None:
    assert parse_length("-1/2 in", "cm", allow_negative=True) == -12.7
    assert parse_length("-0", "cm") == 0.0


def test_the_limit_is_the_limit() -> None:
    assert parse_length("100000 mm", "mm") == 100_000.0
    with pytest.raises(InputError):
        parse_length("100000.1 mm", "mm")


def test_the_refusal_repeats_what_was_typed_shortened_and_printable() -> None:
    with pytest.raises(InputError) as refusal:
        parse_length("abc\x00\ud800" + "x" * 100, "cm")
    words = refusal.value.text()
    assert "abc\\x00\\ud800" in words
    assert len(words) < 120
    assert words.isprintable()


def test_an_inch_is_that_of_scipy() -> None:
    # Outside: scipy.constants, after the international inch of 1959.
    assert parse_length("1 in", "mm") == pytest.approx(constants.inch * 1000, rel=1e-15)


@pytest.mark.parametrize(("word", "unit"), [("cm", "cm"), ("Inches", "in"), ('"', "in"), (" MM. ", "mm")])
def test_a_unit_by_its_word(word: str, unit: Unit) -> None:
    assert unit_named(word) == unit


def test_the_unit_that_a_text_names() -> None:
    assert written_unit('37 1/2"') == "in"
    assert written_unit("37") is None


def test_plain_numbers() -> None:
    assert parse_number("62,5") == 62.5
    assert parse_number("-1/2", allow_negative=True) == -0.5
    for text, code in (("-1", "number-negative"), ("62 kg", "number-text"), ("1e3", "number-exponent")):
        with pytest.raises(InputError) as refusal:
            parse_number(text)
        assert refusal.value.code == code
