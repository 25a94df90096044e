"""Lengths, angles and amounts survive being written and read, and no text breaks the readers."""

from collections.abc import Callable
from fractions import Fraction

from hypothesis import example, given
from hypothesis import strategies as st

from notchbook.errors import InputError
from notchbook.units import (
    Amount,
    LengthStyle,
    Term,
    format_degrees,
    parse_amount,
    parse_degrees,
    parse_length,
    parse_number,
)

KNOWN = {"bust": "bust_girth", "hip": "hip_girth", "hip_depth": "hip_depth"}
STYLES = st.builds(
    LengthStyle,
    st.sampled_from(["mm", "cm", "in"]),
    st.just("."),
    st.sampled_from([2, 4, 8, 16, 32, 64, None]),
)
COMMA_STYLES = st.builds(LengthStyle, st.sampled_from(["mm", "cm"]), st.just(","))
LENGTHS = st.floats(-90_000, 90_000)
NEAR_TEXT = st.text(alphabet="0123456789 /.,+-'\"e½⅜″xhipwast_depcmn()@°\n", max_size=30)


@given(LENGTHS, STYLES | COMMA_STYLES)
@example(25.4 * 15.5 / 16, LengthStyle("in"))
def test_a_written_length_reads_back_within_half_a_step(mm: float, style: LengthStyle) -> None:
    read = style.parse(style.text(mm), allow_negative=True)
    assert abs(read - mm) <= style.step / 2 + 1e-9


@given(LENGTHS, STYLES | COMMA_STYLES)
def test_writing_what_was_read_changes_nothing(mm: float, style: LengthStyle) -> None:
    text = style.text(mm)
    assert style.text(style.parse(text, allow_negative=True)) == text


@given(st.integers(0, 3000), st.sampled_from([2, 4, 8, 16]), st.data())
def test_all_ways_to_write_a_fraction_mean_the_same(whole: int, parts: int, data: st.DataObject) -> None:
    part = data.draw(st.integers(1, parts - 1))
    exact = float((whole + Fraction(part, parts)) * Fraction(254, 10))
    for text in (f'{whole} {part}/{parts}"', f"{whole}-{part}/{parts} in", f"{whole} {part} / {parts}''"):
        assert parse_length(text, None) == exact


@given(st.floats(-360, 360))
def test_degrees_read_back_within_half_a_step(degrees: float) -> None:
    assert abs(parse_degrees(format_degrees(degrees)) - degrees) <= 0.05 + 1e-9


READERS: list[Callable[[str], object]] = [
    lambda text: parse_length(text, "cm"),
    lambda text: parse_length(text, None, allow_negative=True),
    lambda text: parse_amount(text, "cm", KNOWN),
    parse_degrees,
    parse_number,
]


@given(st.text(max_size=60) | NEAR_TEXT)
@example("1e999")
@example("\ud800½")
@example("1" * 5000)
def test_no_text_brings_out_anything_but_a_number_or_a_refusal(text: str) -> None:
    for reader in READERS:
        try:
            reader(text)
        except InputError as refusal:
            assert refusal.text()
            assert refusal.next_step()


FACTORS = st.fractions(0, 100, max_denominator=1000).filter(lambda factor: factor > 0)
DECIMALS = st.integers(1, 10**7).map(lambda digits: Fraction(digits, 10**5))
SIGNS = st.sampled_from([1, -1])
MEASURE_TERMS = st.builds(
    lambda sign, factor, name: Term(sign * factor, measure=KNOWN[name], name=name),
    SIGNS,
    FACTORS | DECIMALS,
    st.sampled_from(sorted(KNOWN)),
)
PLAIN_TERMS = st.builds(
    lambda sign, size, unit: Term(sign * size, unit=unit),
    SIGNS,
    FACTORS | DECIMALS,
    st.sampled_from(["mm", "cm", "in"]),
)
AMOUNTS = st.lists(MEASURE_TERMS | PLAIN_TERMS, min_size=1, max_size=6).map(
    lambda terms: Amount(tuple(terms))
)


@given(AMOUNTS)
def test_the_canonical_text_of_an_amount_reads_back_exactly(amount: Amount) -> None:
    assert parse_amount(amount.text, None, KNOWN) == amount


@given(NEAR_TEXT)
def test_the_canonical_text_is_stable(text: str) -> None:
    try:
        amount = parse_amount(text, "cm", KNOWN)
    except InputError:
        return
    again = parse_amount(amount.text, None, KNOWN)
    assert again == amount
    assert again.text == amount.text


@given(st.floats(-90_000, 90_000))
def test_a_plain_amount_keeps_its_number_through_its_text(mm: float) -> None:
    amount = Amount.plain(mm)
    assert abs(amount.evaluate(lambda key: 0.0) - mm) <= 1e-11
    assert parse_amount(amount.text, None, KNOWN) == amount


@given(AMOUNTS, st.floats(100, 2000), st.floats(100, 2000))
def test_an_amount_is_the_sum_of_its_terms(amount: Amount, hip: float, other: float) -> None:
    values = {"hip_girth": hip, "bust_girth": other, "hip_depth": other}
    expected = sum(
        float(term.factor) * values[term.measure] if term.measure else term.mm for term in amount.terms
    )
    assert abs(amount.evaluate(values.__getitem__) - expected) <= 1e-6
