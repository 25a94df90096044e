"""Reading a stretch test as the hand writes it down."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.errors import InputError
from notchbook.units import parse_recovery, parse_stretch, stretch_needed


@pytest.mark.parametrize(
    ("text", "percent"),
    [
        # Worked figures of the trade (a fabric shop's and a blog's notes on the test: 10 to 14 in is 40 %,
        # 4 to 5 is 25, 4 to 7 is 75).
        ("10 in to 14 in", 40.0),
        ("4 to 5", 25.0),
        ('4" to 7"', 75.0),
        # The classes of a textbook, from memory: 5 in to 5 7/8, 6 1/4, 7 1/2 and 10.
        ("5 in to 5 7/8 in", 17.5),
        ("5 in to 6 1/4 in", 25.0),
        ("5 to 7 1/2 in", 50.0),
        ("5 to 10 in", 100.0),
        ("10 cm to 14 cm", 40.0),
        ("10 to 14 cm", 40.0),
        ("100 mm to 14 cm", 40.0),
        ("10,0 cm to 14,5 cm", 45.0),
        ("40 %", 40.0),
        ("40%", 40.0),
        ("37.5 percent", 37.5),
        ("0 %", 0.0),
        ("  10 CM  to 14 cm ", 40.0),
    ],
)
def test_a_test_is_read_as_what_the_cloth_gained_over_its_rest(text: str, percent: float) -> None:
    assert 100.0 * parse_stretch(text).stretch == pytest.approx(percent, abs=1e-9)


def test_the_third_length_tells_the_recovery() -> None:
    # ASTM D3107: recovery (B - C) / (B - A), here (14 - 10.4) / (14 - 10).
    found = parse_stretch("10 cm to 14 cm back to 10.4 cm")
    assert found.recovery == pytest.approx(0.9)
    assert parse_recovery("10 cm to 14 cm back to 10.4 cm") == pytest.approx(0.9)
    assert parse_recovery("95 %") == pytest.approx(0.95)
    assert parse_stretch("10 cm to 14 cm").recovery is None


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "number-empty"),
        ("40", "stretch-not-understood"),
        ("10 cm", "stretch-not-understood"),
        ("much", "stretch-not-understood"),
        ("10 cm to 8 cm", "stretch-shorter"),
        ("0 cm to 8 cm", "stretch-shorter"),
        ("10 cm to 14 yards", "length-unit-unknown"),
        ("10 cm to 1.4.2 cm", "number-decimal-signs"),
        ("ten to 14 cm", "number-text"),
        ("10 in to 14 m", "length-unit-unknown"),
        ("10 cm to 60 cm", "stretch-too-much"),
        ("10 mm to 14 cm", "stretch-too-much"),
        ("500 %", "stretch-too-much"),
        ("10 to 14 back to 9", "stretch-recovery-outside"),
        ("10 to 14 back to 15", "stretch-recovery-outside"),
        ("10 to 10 back to 10", "stretch-recovery-outside"),
        ("x" * 300, "number-too-long"),
    ],
)
def test_what_is_no_test_is_refused_with_its_reason(text: str, code: str) -> None:
    with pytest.raises(InputError) as refused:
        parse_stretch(text)
    assert refused.value.code == code
    assert refused.value.text()


@pytest.mark.parametrize("text", ["120 %", "10 cm to 14 cm"])
def test_a_recovery_is_a_share_of_the_stretch(text: str) -> None:
    with pytest.raises(InputError) as refused:
        parse_recovery(text)
    assert refused.value.code == "recovery-not-understood"


@given(
    rest=st.integers(20, 400),
    more=st.integers(0, 390),
    unit=st.sampled_from(["mm", "cm", "in"]),
)
def test_every_test_reads_as_its_ratio_and_reads_the_same_again(rest: int, more: int, unit: str) -> None:
    stretched = rest + rest * more // 100
    found = parse_stretch(f"{rest / 10} {unit} to {stretched / 10} {unit}")
    assert found.stretch == pytest.approx((stretched - rest) / rest, abs=1e-9)
    assert parse_stretch(found.text) == found


@given(text=st.text(max_size=30))
def test_no_text_gives_anything_but_a_test_or_a_refusal(text: str) -> None:
    try:
        found = parse_stretch(text)
    except InputError:
        return
    assert 0.0 <= found.stretch <= 4.0


def test_what_must_pass_tells_what_the_opening_must_give() -> None:
    assert stretch_needed(400.0, 560.0) == pytest.approx(0.4)
    assert stretch_needed(600.0, 560.0) == 0.0
