"""The ease table: girths, then lengths; the pattern on the sew line, and what is left of it when sewn."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notchbook.app.drafting import draft, trial_recipe
from notchbook.app.eases.ease_rows import EaseRow, ease_table
from notchbook.app.eases.ease_words import changed_words
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.styles import rack_style
from notchbook.body import set_from_data
from notchbook.pattern import Expectation
from notchbook.pattern.promised_length import promised_length, sewn_shares
from notchbook.recipe import add_step, replay
from notchbook.units import LengthStyle
from step_pictures import picture_row
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


STYLE = LengthStyle("cm")


def styled(operation: str) -> dict[str, EaseRow]:
    """The ease table after a step of the step pictures, by its last word."""
    row = picture_row(operation)
    assert row is not None
    body = set_from_data(BODY_OF_PICTURES)
    recipe = trial_recipe(row["block"], body, row.get("settings", {}))
    recipe = add_step(recipe, operation, row["parameters"], base=body)
    return {one.name.rpartition("/")[2]: one for one in ease_table(replay(recipe, body))}


def test_pleats_show_the_ease_that_is_there_now_and_lie_closed_when_finished() -> None:
    hip = styled("pleats")["hip_girth"]
    # Three knife pleats 3 cm deep on each half take 6 cm each: 36 cm round (closed form of the trade).
    assert hip.pattern == pytest.approx(hip.body + hip.ease + 360.0)
    assert hip.finished == pytest.approx(hip.body + hip.ease)
    assert hip.shown_ease(STYLE) == pytest.approx(50.0 + 360.0)
    assert hip.asked_ease(STYLE) == pytest.approx(50.0)
    assert hip.changed_by == ("Pleats",)
    assert changed_words(hip, STYLE) == "drafted with 5.0 cm of ease, changed by Pleats"


def test_what_a_step_left_alone_is_not_said_to_be_changed() -> None:
    table = styled("pleats")
    assert not table["waist_girth"].is_changed
    assert changed_words(table["waist_girth"], STYLE) == ""
    assert table["waist_girth"].changed_by == ()


def test_what_cannot_be_measured_says_why_and_which_step_took_it() -> None:
    neck = styled("cowl")["neck_base_girth"]
    assert (neck.pattern, neck.finished, neck.changed_by) == (None, None, ("Cowl neckline",))
    said = changed_words(neck, STYLE)
    assert said == "no longer to be measured: front, neck: it became the fold of a cowl (Cowl neckline)"


def test_a_length_of_no_measure_says_what_it_was_drafted_as() -> None:
    length = styled("curve_hem")["skirt_length"]
    assert changed_words(length, STYLE) == "drafted as 60.0 cm, changed by Curve hem"


def test_a_yoke_leaves_every_girth_and_length_to_be_measured() -> None:
    assert [row.name for row in styled("cut_style_line").values() if row.is_changed] == []


def test_a_step_of_one_side_is_named_where_it_changes_the_whole() -> None:
    row = picture_row("reshape_edge")
    assert row is not None
    body = set_from_data(BODY_OF_PICTURES)
    recipe = trial_recipe("skirt", body)
    both = replay(add_step(recipe, "reshape_edge", row["parameters"], base=body), body)
    left = replay(add_step(recipe, "reshape_edge", row["parameters"], base=body, side="left"), body)
    (changed,) = [one for one in ease_table(left) if one.is_changed]
    assert (changed.name, changed.changed_by) == ("skirt/hip_girth", ("Reshape edge",))
    assert changed.miss == pytest.approx(ease_table(both)[1].miss / 2.0, abs=1e-6)


def test_a_yoke_brought_forward_leaves_the_scye_depth_as_it_was() -> None:
    """Down the back over one seam, not round over the shoulder, where the front lies turned about."""
    whole = rack_style("S-204").recipe
    body = set_from_data(BODY_OF_PICTURES)
    depths = []
    for count in (2, len(whole.steps)):
        rows = ease_table(replay(replace(whole, steps=whole.steps[:count]), body))
        depths.append(next(row.pattern for row in rows if row.name == "torso/scye_depth"))
    assert depths[1] == pytest.approx(depths[0], abs=0.01)
