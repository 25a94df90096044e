"""The look at the measures of a lower body: planted errors are named, and clean bodies are left alone.

The bodies are invented, near the middle of the population of women and men (body/population).
"""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from notchbook.blocks.lower_measures import (
    LOWER_KEYS,
    LowerDisagreement,
    LowerMeasures,
    contradiction_notes,
    look_at_lower,
)
from notchbook.blocks.lower_measures.agreement_table import asks_from, limit
from notchbook.body import measure_table
from notchbook.pattern import Finding, Severity

TAKEN = {
    "height": 1680.0,
    "waist_girth": 760.0,
    "hip_girth": 1000.0,
    "hip_depth": 205.0,
    "standing_rise": 262.0,
    "inside_leg": 780.0,
    "thigh_girth": 602.0,
    "crotch_length": 722.0,
}
CLEAN = LowerMeasures(TAKEN, population="women")
NAVEL = 46.0
"""mm from the natural waist down to the navel of women (computed from ANSUR II)."""


def taken(**more: float) -> LowerMeasures:
    return replace(CLEAN, taken=TAKEN | more)


def named(measures: LowerMeasures) -> LowerDisagreement:
    """The only disagreement."""
    (found,) = look_at_lower(measures)
    return found


def notes(measures: LowerMeasures) -> tuple[Finding, ...]:
    return tuple(contradiction_notes(look_at_lower(measures), measures.population))


def test_of_a_clean_body_nothing_is_said() -> None:
    assert look_at_lower(CLEAN) == ()
    assert notes(CLEAN) == ()


def test_a_crotch_length_from_the_navel_is_told_by_its_rise() -> None:
    """It is shorter in front and behind; the explaining value lies near the true one."""
    one = named(taken(crotch_length=TAKEN["crotch_length"] - 2.0 * NAVEL))
    assert (one.kind, one.key, one.second) == ("other-waist", "crotch_length", "standing_rise")
    assert one.explaining == pytest.approx(TAKEN["crotch_length"], abs=20.0)
    assert one.lower


def test_a_rise_that_is_wrong_is_held_for_the_wrong_one_by_height_and_legs() -> None:
    one = named(taken(standing_rise=190.0))
    assert (one.kind, one.key) == ("crotch", "standing_rise")
    assert one.explaining > 235.0


@pytest.mark.parametrize("key", ["sitting_rise", "outside_leg"])
def test_another_way_to_the_rise_is_the_partner(key: str) -> None:
    values = {name: value for name, value in TAKEN.items() if name != "standing_rise"}
    values[key] = 273.0 if key == "sitting_rise" else 1042.0
    clean = replace(CLEAN, taken=values)
    assert look_at_lower(clean) == ()
    found = look_at_lower(replace(clean, taken=values | {"crotch_length": 600.0}))
    assert key in {one.second for one in found}


def test_without_a_rise_nothing_is_said_of_the_crotch() -> None:
    values = {name: value for name, value in TAKEN.items() if name != "standing_rise"}
    assert look_at_lower(replace(CLEAN, taken=values | {"crotch_length": 600.0})) == ()


def test_a_thigh_taken_too_low_is_held_against_the_hip() -> None:
    one = named(taken(thigh_girth=500.0))
    assert (one.kind, one.key, one.second) == ("thigh", "thigh_girth", "hip_girth")
    assert one.explaining == pytest.approx(TAKEN["thigh_girth"], abs=15.0)


def test_far_off_is_a_stop_until_it_was_read_again() -> None:
    far = taken(crotch_length=560.0)
    (note,) = notes(far)
    assert note.severity is Severity.STOP
    again = replace(far, sure=frozenset({"crotch_length"}))
    (note,) = notes(again)
    assert note.severity is Severity.LOOK
    assert note.contradiction is not None
    assert note.contradiction.read_again == "standing_rise"


def test_a_little_off_is_a_look() -> None:
    (note,) = notes(taken(crotch_length=TAKEN["crotch_length"] + 75.0))
    assert note.severity is Severity.LOOK


def test_two_parts_that_do_not_make_the_whole_are_named() -> None:
    one = named(taken(front_crotch_length=325.0, back_crotch_length=430.0))
    assert (one.kind, one.given, one.explaining) == ("parts", 722.0, 755.0)
    assert look_at_lower(taken(front_crotch_length=325.0, back_crotch_length=410.0)) == ()


# ------------------------------------------------------------------ without a population


def unknown(**more: float) -> LowerMeasures:
    return LowerMeasures(TAKEN | more)


def test_arithmetic_alone_rules_out_a_crotch_shorter_than_twice_the_rise() -> None:
    one = named(unknown(crotch_length=500.0))
    assert (one.kind, one.deviations) == ("ruled-out", None)
    assert one.explaining == pytest.approx(2.0 * TAKEN["standing_rise"])


def test_arithmetic_alone_rules_out_a_thigh_as_large_as_the_hip() -> None:
    one = named(unknown(thigh_girth=980.0))
    assert one.explaining == pytest.approx(0.8 * TAKEN["hip_girth"])


def test_a_child_is_judged_by_arithmetic() -> None:
    child = LowerMeasures(
        {"height": 1160.0, "hip_girth": 640.0, "standing_rise": 195.0, "crotch_length": 480.0},
        population="women",
        is_child=True,
    )
    assert look_at_lower(child) == ()
    short = replace(child, taken={**child.taken, "crotch_length": 300.0})
    assert named(short).kind == "ruled-out"


@given(ratio=st.floats(1.0, 6.0))
@settings(max_examples=30, deadline=None)
def test_the_nearest_value_that_passes_passes(ratio: float) -> None:
    found = look_at_lower(unknown(crotch_length=ratio * TAKEN["standing_rise"]))
    within = limit("crotch_of_rise")
    assert bool(found) != (ratio in within) or abs(ratio - within.least) < 1e-9
    for one in found:
        assert look_at_lower(unknown(crotch_length=one.explaining + (1e-6 if ratio < 2.0 else -1e-6))) == ()


# ------------------------------------------------------------------ the tables


def test_every_measure_that_is_read_is_one_of_the_book() -> None:
    assert set(LOWER_KEYS) <= set(measure_table())


def test_a_thigh_is_asked_about_later_than_a_crotch_and_stops_come_last() -> None:
    assert asks_from("crotch") < asks_from("thigh") < asks_from("stop")
