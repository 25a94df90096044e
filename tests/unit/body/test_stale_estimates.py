"""Estimates that no longer follow are named; hers are left alone."""

from dataclasses import replace

from notchbook.body import Measure
from notchbook.body.estimating.estimating import with_estimates
from notchbook.body.estimating.stale import stale_estimates
from support.bodies import four_measures


def test_fresh_estimates_still_follow() -> None:
    assert stale_estimates(with_estimates(four_measures())) == ()


def test_a_measure_more_makes_those_stale_that_hang_on_it() -> None:
    filled = with_estimates(four_measures(), ["inside_leg", "shoulder_slope"])
    more = filled.with_value("outside_leg", 1100.0)
    (stale,) = stale_estimates(more)
    assert stale.key == "inside_leg"
    assert stale.stored == filled.values["inside_leg"]
    assert stale.now is not None
    assert stale.now.value > stale.stored.value
    assert stale_estimates(with_estimates(more, ["inside_leg"])) == ()


def test_her_own_estimate_is_hers() -> None:
    hers = four_measures().with_value("inside_leg", Measure(700.0, "estimated", 5.0, "from her jeans"))
    assert stale_estimates(hers) == ()


def test_without_a_population_nothing_follows_any_more() -> None:
    filled = with_estimates(four_measures(), ["inside_leg"])
    (stale,) = stale_estimates(replace(filled, population=None))
    assert (stale.key, stale.now) == ("inside_leg", None)


def test_another_population_makes_all_stale() -> None:
    filled = with_estimates(four_measures(), ["inside_leg", "neck_base_girth"])
    stale = stale_estimates(replace(filled, population="men"))
    assert [one.key for one in stale] == ["neck_base_girth", "inside_leg"]


def test_estimates_of_what_proves_to_be_a_child_follow_no_more() -> None:
    filled = with_estimates(four_measures(), ["inside_leg"])
    (stale,) = stale_estimates(filled.with_value("height", 1200.0))
    assert stale.now is None
