"""Filling in and refreshing estimates as edits; what she types over an estimate was measured."""

from dataclasses import replace

import pytest

from notchbook.app.bodies.body_edits import FillEstimates, NoteMeasure, RefreshEstimates, SetMeasure
from notchbook.body import Measure
from notchbook.body.estimate_method import is_own_estimate
from notchbook.body.estimating.stale import stale_estimates
from notchbook.errors import InputError
from support.bodies import four_measures


def test_missing_measures_are_filled_in() -> None:
    filled = FillEstimates(("hip_depth", "inside_leg")).apply(four_measures())
    assert set(filled.values) == {*four_measures().values, "hip_depth", "inside_leg"}
    assert filled.values["hip_depth"].status == "estimated"
    every = FillEstimates().apply(four_measures())
    assert len(every.values) > 30
    assert "forward_shoulder" not in every.values


def test_a_named_measure_that_is_not_known_is_refused_with_its_reason() -> None:
    with pytest.raises(InputError) as caught:
        FillEstimates(("hip_depth", "forward_shoulder")).apply(four_measures())
    assert caught.value.code == "estimate-not-known"
    with pytest.raises(InputError) as caught:
        FillEstimates(("height",)).apply(four_measures())
    assert caught.value.code == "estimate-not-needed"


def test_stale_estimates_are_refreshed_when_she_asks() -> None:
    filled = FillEstimates(("hip_depth", "inside_leg")).apply(four_measures())
    more = SetMeasure("outside_leg", "112", "cm").apply(filled)
    stale = {one.key for one in stale_estimates(more)}
    assert more.values["inside_leg"] == filled.values["inside_leg"]
    assert "inside_leg" in stale
    one = RefreshEstimates(("inside_leg",)).apply(more)
    assert one.value("inside_leg") > filled.value("inside_leg")
    assert stale_estimates(RefreshEstimates().apply(more)) == ()


def test_an_estimate_that_still_follows_is_not_refreshed() -> None:
    filled = FillEstimates(("hip_depth",)).apply(four_measures())
    with pytest.raises(InputError) as caught:
        RefreshEstimates(("hip_depth",)).apply(filled)
    assert caught.value.code == "estimate-not-stale"
    assert RefreshEstimates().apply(filled) == filled


def test_an_estimate_of_which_nothing_is_known_any_more_is_taken_out() -> None:
    filled = FillEstimates(("hip_depth",)).apply(four_measures())
    assert "hip_depth" not in RefreshEstimates().apply(replace(filled, population=None)).values


def test_what_she_types_over_an_estimate_was_measured() -> None:
    filled = FillEstimates(("hip_depth",)).apply(four_measures())
    measured = SetMeasure("hip_depth", "21", "cm").apply(filled).values["hip_depth"]
    assert (measured.status, measured.error, measured.method) == ("measured", None, "")
    hers = four_measures().with_value("hip_depth", Measure(200.0, "estimated", 10.0))
    assert SetMeasure("hip_depth", "21", "cm").apply(hers).values["hip_depth"].status == "estimated"


def test_an_error_of_her_own_makes_the_estimate_hers() -> None:
    filled = FillEstimates(("hip_depth",)).apply(four_measures())
    known = filled.values["hip_depth"]
    assert known.error is not None
    noted = NoteMeasure("hip_depth", "mm", "ask again", f"{known.error:g}").apply(filled)
    assert is_own_estimate(noted.values["hip_depth"])
    hers = NoteMeasure("hip_depth", "cm", "she is sure", "± 0.5").apply(filled)
    assert not is_own_estimate(hers.values["hip_depth"])
    taken = NoteMeasure("hip_depth", "cm", "the tape agrees").apply(filled).values["hip_depth"]
    assert (taken.status, taken.method) == ("measured", "")
