"""What a bodice looked at of a body, so that it is drafted anew when that changes."""

from dataclasses import replace

import pytest

from notchbook.blocks.bodice_pieces.bodice_measures import bodice_measures
from notchbook.blocks.bodice_pieces.parameters import BodiceParameters
from notchbook.body import Measure, MeasureSet, Side
from notchbook.recipe import Recipe, StepContext, add_step, replay
from support.bodice_bodies import MAN, body


def guessed(value: float) -> Measure:
    return Measure(value, "estimated", 15.0)


def man() -> MeasureSet:
    """A man whose front length was estimated on both sides, as was his scye depth."""
    measures = body(MAN, "men")
    for key, left, right in (("front_waist_length", 452.0, 448.0), ("scye_depth", 226.0, 224.0)):
        measures = measures.with_value(key, guessed(left), "left").with_value(key, guessed(right), "right")
    return measures


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("key", ["front_waist_length", "center_front_length", "scye_depth", "shoulder_slope"])
def test_what_it_did_not_use_it_looked_at(key: str, side: Side) -> None:
    context = StepContext(man(), "bodice", "bodice-1")
    bodice_measures(context, BodiceParameters(), side)
    assert (key, side) in context.reads


def test_an_estimate_of_the_front_is_not_drafted_from() -> None:
    context = StepContext(man(), "bodice", "bodice-1")
    drafted = bodice_measures(context, BodiceParameters(), "left")
    assert drafted.given.front_length is None
    assert "front_waist_length" not in drafted.body


@pytest.mark.parametrize("key", ["front_waist_length", "scye_depth"])
def test_an_estimate_that_becomes_measured_is_drafted_from(key: str) -> None:
    """On one side only, and at the same value: the mean of both sides stays an estimate."""
    before = man()
    first = replay(add_step(Recipe("Bodice"), "bodice", {}, base=before), before)
    value = before.get(key, "left").value
    after = before.with_value(key, replace(before.get(key, "left"), status="measured", error=None), "left")
    assert after.get(key, "left").value == value
    again = replay(first.recipe, after, previous=first)
    fresh = replay(first.recipe, after)
    assert again.pattern == fresh.pattern
    assert again.notes == fresh.notes
    assert again.expectations == fresh.expectations
