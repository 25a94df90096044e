"""Filling in for a draft: what it needs and can use, with the reason where nothing is known."""

from dataclasses import replace

import pytest

from notchbook.app.bodies.filling_estimates import fill, fill_for_draft
from notchbook.app.drafting import draft
from notchbook.app.needs.of_steps import needs_of_block
from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.recipe import MeasureNeeds, estimated_reads
from support.bodies import four_measures


def test_a_skirt_can_be_drafted_from_four_measures() -> None:
    filled = fill_for_draft(four_measures(), "skirt")
    assert filled.keys == ("hip_depth",)
    run = draft("skirt", filled.measures)
    assert list(estimated_reads(run)) == ["hip_depth"]


def test_nothing_is_filled_where_nothing_is_missing() -> None:
    full = four_measures(hip_depth=205.0)
    assert fill(full, MeasureNeeds(("hip_depth",), ("waist_girth",))).estimates is None
    assert fill(four_measures(None, hip_depth=205.0), MeasureNeeds(("hip_depth",))).keys == ()


def test_what_is_needed_and_not_known_is_refused_with_its_reason() -> None:
    with pytest.raises(InputError) as caught:
        fill(four_measures(), MeasureNeeds(("armscye_girth",)))
    assert caught.value.code == "estimate-not-known"
    helpful = fill(four_measures(), MeasureNeeds((), ("armscye_girth",)))
    assert helpful.keys == ()
    assert helpful.estimates is not None
    assert [one.key for one in helpful.estimates.left_out] == ["armscye_girth"]


def test_without_a_population_it_is_asked_for() -> None:
    with pytest.raises(InputError) as caught:
        fill_for_draft(four_measures(None), "skirt")
    assert caught.value.code == "estimate-no-population"


def test_an_outside_leg_is_never_estimated_beside_a_measured_height_of_the_waist() -> None:
    """Their difference places the waist at the center: a ± of 4 cm would tear it up or down by as much."""
    beside = four_measures(front_waist_to_floor=1070.0)
    assert "outside_leg" not in fill(beside, needs_of_block("skirt")).keys
    assert "outside_leg" in fill(four_measures(), needs_of_block("skirt")).keys
    alone = draft("skirt", fill_for_draft(four_measures(), "skirt").measures)
    drawn = draft("skirt", fill_for_draft(beside, "skirt").measures)
    assert {name: edge.path for name, edge in drawn.pattern.edges.items()} == {
        name: edge.path for name, edge in alone.pattern.edges.items()
    }


def test_a_form_is_filled_with_a_caution() -> None:
    form: MeasureSet = replace(four_measures(), kind="form")
    filled = fill_for_draft(form, "skirt")
    assert filled.estimates is not None
    assert [one.code for one in filled.estimates.cautions] == ["estimate-of-no-body"]
