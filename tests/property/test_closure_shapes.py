"""Rows of buttons, bent bands and mitered corners for any sizes: closed forms, without a draft."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.errors import StepRefused
from notchbook.style.button_loops import loop_length
from notchbook.style.closures.button_places import (
    ButtonRoom,
    button_places,
    number_apart,
    number_from_level,
    usual_above_level,
    usual_number,
)
from notchbook.style.closures.curved_band import bend_of, bent
from notchbook.style.closures.strip import plain_strip

SIZES = st.floats(20.0, 900.0)


@given(first=st.floats(5.0, 60.0), more=SIZES, level=st.floats(0.0, 1.0), number=st.integers(1, 20))
def test_a_row_lies_within_its_room_evenly_from_the_first(
    first: float, more: float, level: float, number: int
) -> None:
    room = ButtonRoom(first, first + more, first + level * more)
    laid = button_places(room, number, None, usual_above_level(room, 90.0))
    assert len(laid.places) == number
    assert laid.places[0] == pytest.approx(first)
    assert laid.places[-1] <= room.last + 1e-6
    gaps = [two - one for one, two in zip(laid.places, laid.places[1:], strict=False)]
    assert gaps == pytest.approx([laid.spacing] * len(gaps), abs=1e-6)
    assert laid.off_level == pytest.approx(min(abs(one - (room.level or 0.0)) for one in laid.places))


@given(first=st.floats(5.0, 60.0), more=st.floats(150.0, 900.0), share=st.floats(0.3, 0.9))
def test_what_is_counted_on_the_base_fits_it_and_a_size_a_tenth_longer_to_the_level(
    first: float, more: float, share: float
) -> None:
    room = ButtonRoom(first, first + more, first + share * more)
    above = usual_above_level(room, 90.0)
    if above is None:
        return
    number = number_from_level(room, above)
    assert button_places(room, number, None, above).off_level < 1e-6
    longer = ButtonRoom(first, first + more, first + min(1.1 * share, 1.0) * more)
    if number > above + 1:
        assert button_places(longer, number, None, above).off_level < 1e-6


@given(room=SIZES, spacing=st.floats(15.0, 150.0))
def test_a_given_spacing_is_kept_or_refused(room: float, spacing: float) -> None:
    length = ButtonRoom(10.0, 10.0 + room)
    number = number_apart(length, spacing)
    assert button_places(length, number, spacing, None).places[-1] <= length.last + 1e-6
    with pytest.raises(StepRefused, match="past the last place"):
        button_places(length, usual_number(length, spacing) + 2, spacing, None)


@given(lower=st.floats(300.0, 1200.0), share=st.floats(0.85, 1.15), depth=st.floats(25.0, 90.0))
def test_a_bent_band_has_both_lengths_and_its_depth(lower: float, share: float, depth: float) -> None:
    upper = share * lower
    if abs(math.degrees((lower - upper) / depth)) > 290.0:
        return
    piece = bent(plain_strip("test.band", "Band", (lower, depth), folded=False), bend_of(lower, upper, depth))
    length = {edge.name.rsplit("/", 1)[1]: edge.length for edge in piece.outline}
    assert length["lower"] == pytest.approx(lower, abs=0.02)
    assert length["upper"] == pytest.approx(upper, abs=0.02)
    assert (length["left_end"], length["right_end"]) == pytest.approx((depth, depth), rel=1e-4)
    assert abs(piece.sew_line.area()) == pytest.approx(depth * (lower + upper) / 2.0, rel=1e-4)


@given(button=st.floats(4.0, 40.0), thickness=st.floats(1.0, 40.0), cord=st.floats(1.0, 8.0))
def test_a_loop_is_never_too_short_for_its_button(button: float, thickness: float, cord: float) -> None:
    assert loop_length(button, thickness, cord) - 2.0 * cord + button >= 2.0 * (button + thickness) - 1e-9
