"""The ease table: girths, then lengths; the pattern on the sew line, and what is left of it when sewn."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.app.drafting import draft
from notchbook.app.ease_rows import EaseRow, ease_table
from notchbook.pattern import Expectation
from notchbook.pattern.promised_length import promised_length, sewn_shares
from notchbook.units import LengthStyle
from support.odd_steps import register
from support.paired_blocks import LID, LID_EASE, TRAY, TRAY_HEIGHT, tray_body


@pytest.fixture(autouse=True)
def paired(monkeypatch: pytest.MonkeyPatch) -> None:
    """The tray and the lid are blocks until the test is over."""
    register(monkeypatch, TRAY, LID)


def rows() -> dict[str, EaseRow]:
    run = draft("lid", tray_body(), {"cloth": "knit", "tray.lowered": "15 mm"})
    return {row.name: row for row in ease_table(run)}


def test_girths_come_first_then_lengths() -> None:
    assert [(row.name, row.kind) for row in rows().values()] == [
        ("tray/bust_girth", "girth"),
        ("tray/height", "length"),
        ("lid/rim_length", "length"),
    ]


def test_a_girth_stands_whole() -> None:
    bust = rows()["tray/bust_girth"]
    assert (bust.body, bust.ease) == (900.0, 60.0)
    assert bust.pattern == pytest.approx(960.0)
    assert bust.finished == bust.pattern
    assert bust.usual == (40.0, 80.0)


def test_a_distance_between_points_is_measured_as_it_is_to_be_taken() -> None:
    assert rows()["tray/height"].pattern == pytest.approx(TRAY_HEIGHT + 15.0)
    run = draft("tray", tray_body())
    corner = ("tray.front/from_bottom", "tray.front/from_top")
    chained = replace(run.expectations[0], chains=(corner,))
    by_reach = {
        reach: promised_length(run.pattern, replace(chained, reach=reach))
        for reach in ("straight", "down", "across")
    }
    assert by_reach["across"] == pytest.approx(480.0)
    assert by_reach["down"] == pytest.approx(TRAY_HEIGHT)
    # Pythagoras, outside of the geometry of the house.
    assert by_reach["straight"] == pytest.approx((480.0**2 + TRAY_HEIGHT**2) ** 0.5)


def test_a_line_that_is_eased_is_finished_as_long_as_what_it_is_eased_into() -> None:
    rim = rows()["lid/rim_length"]
    assert rim.pattern == pytest.approx(TRAY_HEIGHT + 15.0 + LID_EASE)
    assert rim.finished == pytest.approx(TRAY_HEIGHT + 15.0)


def test_a_seam_without_ease_takes_nothing_off() -> None:
    run = draft("lid", tray_body(), {"cloth": "knit"})
    seam = next(iter(run.pattern.seams.values()))
    assert sewn_shares(run.pattern.with_seams(replace(seam, ease=0.0))) == {}
    turned = replace(seam, first=seam.second, second=seam.first, ease=-LID_EASE)
    assert sewn_shares(run.pattern.with_seams(turned)) == pytest.approx(sewn_shares(run.pattern))


def test_a_seam_that_has_lost_its_edge_is_left_out() -> None:
    run = draft("lid", tray_body(), {"cloth": "knit"})
    assert sewn_shares(run.pattern.with_pieces(without=("tray.front",))) == {}


def test_what_is_gone_is_none() -> None:
    run = draft("tray", tray_body())
    bare = run.pattern.with_pieces(without=("tray.front",))
    assert [promised_length(bare, promise) for promise in run.expectations] == [None, None]


def test_a_row_that_comes_from_no_measure_has_no_error() -> None:
    assert rows()["tray/height"].error is None
    assert rows()["tray/height"].measure == ""


def test_a_planted_misfit_is_told() -> None:
    row = rows()["tray/bust_girth"]
    assert row.miss == pytest.approx(0.0, abs=1e-9)
    assert replace(row, ease=60.2).miss == pytest.approx(0.2)
    assert replace(row, pattern=None).miss == 0.0


@given(body=st.floats(200.0, 1500.0), ease=st.floats(-40.0, 200.0))
def test_what_is_written_adds_up_in_inches(body: float, ease: float) -> None:
    """Sixteenths of an inch, added by Python's fractions: body + ease = pattern as they are written."""
    style = LengthStyle("in")
    row = EaseRow("a/b", "length", "", body, ease, body + ease, body + ease, None)
    sixteenths = [
        round(Fraction(style.nearest(mm)) / Fraction("25.4") * 16)
        for mm in (body, row.shown_ease(style), body + ease)
    ]
    assert sixteenths[0] + sixteenths[1] == sixteenths[2]


def test_a_promise_may_be_of_points_alone() -> None:
    run = draft("tray", tray_body())
    only = Expectation("x", "", (), 2, 0.0, 0.0, "", chains=(("tray.front/from_top", "tray.front/gone"),))
    assert promised_length(run.pattern, only) is None
