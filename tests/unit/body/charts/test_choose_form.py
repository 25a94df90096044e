"""Choosing a form: one that was hardly measured is not held to need least."""

from notchbook.body import MeasureSet
from notchbook.body.charts import choose_form
from notchbook.body.charts.padding.choose_form import unknown_main_girths

CLIENT = MeasureSet.from_mm("Client", {"bust_girth": 980.0, "waist_girth": 770.0, "hip_girth": 1030.0})
KNOWN = MeasureSet.from_mm("Known", {"bust_girth": 910.0, "waist_girth": 710.0, "hip_girth": 965.0})
WAIST_ONLY = MeasureSet.from_mm("Waist only", {"waist_girth": 765.0})


def test_what_was_not_measured_on_a_form_is_no_work_saved() -> None:
    assert [plan.form for plan in choose_form((WAIST_ONLY, KNOWN), CLIENT)] == ["Known", "Waist only"]
    assert unknown_main_girths(WAIST_ONLY, CLIENT) == ("bust_girth", "hip_girth")


def test_what_nobody_measured_on_the_client_is_not_missed_on_the_form() -> None:
    client = MeasureSet.from_mm("Client", {"waist_girth": 770.0})
    assert unknown_main_girths(WAIST_ONLY, client) == ()
    assert [plan.form for plan in choose_form((KNOWN, WAIST_ONLY), client)] == ["Waist only", "Known"]


def test_a_form_that_is_too_large_stays_behind_one_that_was_hardly_measured() -> None:
    large = MeasureSet.from_mm("Large", {"bust_girth": 1010.0, "waist_girth": 800.0, "hip_girth": 1060.0})
    assert [plan.form for plan in choose_form((large, WAIST_ONLY), CLIENT)] == ["Waist only", "Large"]
